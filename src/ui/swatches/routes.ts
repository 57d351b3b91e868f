import { go, hrefOf } from '../route.ts';

/** Within the shelf's own address; no entry of a stock is called so. */
export const SWATCHES = 'swatches';

export type Page = 'new' | 'card' | 'read' | 'fit' | 'curves' | 'pile';

export const hrefTo = (page?: Page, ...id: readonly string[]): string =>
  hrefOf('book', 'shelf', SWATCHES, ...(page === undefined ? [] : [page]), ...id);

export const goTo = (page?: Page, ...id: readonly string[]): void =>
  go('book', 'shelf', SWATCHES, ...(page === undefined ? [] : [page]), ...id);
