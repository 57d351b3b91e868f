import { type StockFault, stockFaultWords } from '../pigment/validate-stock.ts';

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

const ALLOWANCE = {
  tooth: 'The allowance for the tooth of the ground',
  waste: 'The allowance for waste',
  heap: 'The least heap',
  oil: 'The oil to stir in',
} as const satisfies Record<Allowance, string>;

/** The sentence for a fault: what is wrong, then what to do. */
export function paletteFaultWords(fault: PaletteFault): string {
  switch (fault.code) {
    case 'day-broken':
      return "This file is damaged or was cut short: its JSON cannot be read. Write the day's passages again.";
    case 'day-form':
      return `This is not a day's passages: ${fault.where === '' ? 'it' : `“${fault.where}”`} ${fault.wants}.`;
    case 'day-newer':
      return `This day was written by a newer Kingcup (form ${fault.version}): bring this one up to date, then read it again.`;
    case 'day-stock':
      return `Line ${fault.row} of the stock: ${stockFaultWords(fault.fault)}`;
    case 'day-date':
      return `“${fault.date}” is not a day: write it as 2026-05-14.`;
    case 'day-empty':
      return 'No passage asks for paint: choose one, and give it at least one pile.';
    case 'palettes-many':
      return `${fault.count} palettes are asked for; a day carries ${MOST_PALETTES} at most. Put passages together, or leave some for tomorrow.`;
    case 'pile-twice':
      return `Two piles of one palette are called “${fault.pile}”: give each a name of its own.`;
    case 'area-none':
      return `“${fault.pile}” has no area to cover: give square centimetres, or a share of the canvas, above 0.`;
    case 'area-huge':
      return `“${fault.pile}” would cover ${fault.cm2 / 10_000} square metres, more than a wall of ten by ten: look whether centimetres were meant.`;
    case 'area-share':
      return `“${fault.pile}” covers ${fault.share} of the canvas: a share lies above 0 and reaches at most 1.`;
    case 'canvas-missing':
      return `“${fault.pile}” covers a share of the canvas, but “${fault.passage}” does not say how large the canvas is: give its width and height.`;
    case 'canvas-size':
      return `The canvas of “${fault.passage}” has no size: width and height are centimetres above 0.`;
    case 'film-not-a-thickness':
      return `“${fault.pile}” is laid ${fault.um} micrometres thick: a film is thicker than 0.`;
    case 'film-huge':
      return `“${fault.pile}” would be laid ${fault.um / 1000} millimetres thick: look whether micrometres were meant. Impasto ends at about 3 millimetres.`;
    case 'coats':
      return `“${fault.pile}” is laid in ${fault.coats} coats: coats are a whole number from 1 to ${MOST_COATS}.`;
    case 'allowance':
      return `${ALLOWANCE[fault.which]} of “${fault.pile}” cannot be right: it is 0 or more, ${fault.which === 'heap' ? 'in cubic centimetres up to 100' : 'as a share up to 5'}.`;
    case 'parts':
      return `“${fault.pile}” has no mixture that can be made: give at least one pigment, each with parts above 0.`;
    case 'letdown-missing':
      return `“${fault.pile}” takes ${fault.pigment} from a let-down pile that is not described: say how many parts of which white.`;
    case 'layer-date':
      return `A coat of “${fault.passage}” is dated “${fault.date}”: it is an ISO day no later than the day being planned.`;
  }
}
