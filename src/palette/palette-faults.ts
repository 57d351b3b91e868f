import type { StockFault } from '../pigment/validate-stock.ts';

/** Why a day's request cannot be planned. `pile` is the pile's name. */
export type PaletteFault =
  | { readonly code: 'day-broken' }
  | { readonly code: 'day-form'; readonly where: string; readonly wants: string }
  | { readonly code: 'day-newer'; readonly version: number }
  | { readonly code: 'day-stock'; readonly row: number; readonly fault: StockFault }
  | { readonly code: 'day-date'; readonly date: string }
  | { readonly code: 'day-empty' }
  | { readonly code: 'palettes-many'; readonly count: number }
  | { readonly code: 'pile-twice'; readonly pile: string }
  | { readonly code: 'area-none'; readonly pile: string }
  | { readonly code: 'area-huge'; readonly pile: string; readonly cm2: number }
  | { readonly code: 'area-share'; readonly pile: string; readonly share: number }
  | { readonly code: 'canvas-missing'; readonly pile: string; readonly passage: string }
  | { readonly code: 'canvas-size'; readonly passage: string }
  | { readonly code: 'film-not-a-thickness'; readonly pile: string; readonly um: number }
  | { readonly code: 'film-huge'; readonly pile: string; readonly um: number }
  | { readonly code: 'coats'; readonly pile: string; readonly coats: number }
  | { readonly code: 'allowance'; readonly pile: string; readonly which: Allowance }
  | { readonly code: 'parts'; readonly pile: string }
  | { readonly code: 'letdown-missing'; readonly pile: string; readonly pigment: string }
  | { readonly code: 'layer-date'; readonly passage: string; readonly date: string };
export type Allowance = 'tooth' | 'waste' | 'heap' | 'oil';

/** Largest area of one pile, cm2: a wall of 10 by 10 metres. */
export const MOST_CM2 = 1_000_000;
/** Thickest film, micrometres: one centimetre. */
export const MOST_UM = 10_000;
export const MOST_COATS = 20;
export const MOST_PALETTES = 3;
