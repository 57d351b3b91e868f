import type { SheetPile } from './heap.ts';
import type { PrepareRow } from './prepare.ts';
import type { MorningSheet } from './sheet.ts';

/** For which passages, where the title does not say it. */
export const forWords = ({ title, passages }: MorningSheet): string =>
  passages === title || passages === '' ? '' : `for ${passages}`;
/** How a pigment is prepared, and from what. */
export const rowWords = ({ act, lot }: PrepareRow): string =>
  [act, lot].filter((words) => words !== '').join(' · ');
/** Under every pile, before the blanks that are filled by hand. */
export const laidWords = ({ laid, lots, instead }: SheetPile): string =>
  [`${laid}.`, instead ?? '', lots === '' ? '' : `Lots ${lots};`].filter(Boolean).join(' ');
/** What is written by hand beside the dab of the accepted pile. */
export const blanksOf = ({ lots }: SheetPile): readonly string[] =>
  lots === '' ? ['lots', 'date'] : ['date'];
export const GUIDE_WORDS =
  ' Small figures are cm³ of each. The printed square is a guide, not for matching: dab the accepted pile beside it.';
