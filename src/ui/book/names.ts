import type { Card } from '../../book/card.ts';
import { shelf } from '../studio.ts';
import { KIND_WORDS, sayBook } from '../words/book.ts';

/** The displayed name of an entry. */
export const nameOfCard = ({ name, kind }: Pick<Card, 'name' | 'kind'>): string =>
  name || sayBook.nameless(KIND_WORDS[kind]);

/**
 * The displayed name of a pigment: its label on the shelf, otherwise its id with spaces for hyphens
 * and underscores.
 */
export const pigmentWords = (pigment: string): string =>
  shelf.value.paints.find((paint) => paint.pigment === pigment)?.label ??
  pigment.replaceAll(/[_-]+/g, ' ');
