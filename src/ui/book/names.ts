import type { Card } from '../../book/card.ts';
import { shelf } from '../studio.ts';
import { KIND_WORDS, sayBook } from '../words/book.ts';

/** What an entry is called on the screen. */
export const nameOfCard = ({ name, kind }: Pick<Card, 'name' | 'kind'>): string =>
  name || sayBook.nameless(KIND_WORDS[kind]);

/** A pigment in words: its label on the shelf, or its own name with the joints taken out. */
export const pigmentWords = (pigment: string): string =>
  shelf.value.paints.find((paint) => paint.pigment === pigment)?.label ??
  pigment.replaceAll(/[_-]+/g, ' ');
