import type { EntrySummary } from '../../../book/schema/entry-summary.ts';
import { shelf } from '../../state/studio.ts';
import { bookTexts, KIND_WORDS } from '../../texts/book-texts.ts';

/** The displayed name of an entry. */
export const nameOfCard = ({ name, kind }: Pick<EntrySummary, 'name' | 'kind'>): string =>
  name || bookTexts.nameless(KIND_WORDS[kind]);

/**
 * The displayed name of a pigment: its label on the shelf, otherwise its id with spaces for hyphens
 * and underscores.
 */
export const pigmentWords = (pigment: string): string =>
  shelf.value.paints.find((paint) => paint.pigment === pigment)?.label ??
  pigment.replaceAll(/[_-]+/g, ' ');
