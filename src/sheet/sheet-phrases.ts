import type { MorningSheet } from './morning-sheet.ts';
import type { PrepareRow } from './preparations.ts';
import type { SheetPile } from './sheet-pile.ts';

/** Names the passages if the title does not. */
export const forWords = ({ title, passages }: MorningSheet): string =>
  passages === title || passages === '' ? '' : `for ${passages}`;
/** How a pigment is prepared, and from which lot. */
export const rowWords = ({ act, lot }: PrepareRow): string =>
  [act, lot].filter((words) => words !== '').join(' · ');
/** The line under a pile, before the blanks. */
export const laidWords = ({ laid, lots, instead }: SheetPile): string =>
  [`${laid}.`, instead ?? '', lots === '' ? '' : `Lots ${lots};`].filter(Boolean).join(' ');
/** The blanks to fill in by hand beside the dab of the accepted pile. */
export const blanksOf = ({ lots }: SheetPile): readonly string[] =>
  lots === '' ? ['lots', 'date'] : ['date'];
export const GUIDE_WORDS =
  ' Small figures are cm³ of each. The printed square is a guide, not for matching: dab the accepted pile beside it.';
