import { go, hrefOf } from '../../state/route.ts';

/** Segment of the shelf's address; no entry of a stock has this id. */
export const SWATCHES = 'swatches';

type Page = 'new' | 'card' | 'read' | 'fit' | 'curves' | 'pile';

/** Address of a calibration page. */
export const hrefTo = (page?: Page, ...id: readonly string[]): string =>
  hrefOf('book', 'shelf', SWATCHES, ...(page === undefined ? [] : [page]), ...id);

export const goTo = (page?: Page, ...id: readonly string[]): void =>
  go('book', 'shelf', SWATCHES, ...(page === undefined ? [] : [page]), ...id);
