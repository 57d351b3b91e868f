import type { SheetPile } from './heap.ts';
import type { PrepareRow } from './prepare.ts';

/** How a pigment is prepared, and from what. */
export const rowWords = ({ act, lot }: PrepareRow): string =>
  [act, lot].filter((words) => words !== '').join(' · ');
/** Under every pile, before the blank for its date. */
export const laidWords = ({ laid, lots, instead }: SheetPile): string =>
  `${laid}. ${instead === null ? '' : `${instead} `}Lots ${lots};`;
export const GUIDE_WORDS =
  ' Small figures are cm³ of each. The printed square is a guide, not for matching: dab the accepted pile beside it.';
