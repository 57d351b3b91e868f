import type { NumberFormat } from '../number-format.ts';
import {
  type Allowance,
  MOST_COATS,
  MOST_PALETTES,
  type PaletteFault,
} from '../palette/palette-faults.ts';
import { stockFaultWords } from './stock-faults.ts';

/** The sentence for a fault: what is wrong, then what to do. */
export function paletteFaultWords(fault: PaletteFault, number: NumberFormat): string {
  switch (fault.code) {
    case 'day-broken':
      return "This file is damaged or was cut short: its JSON cannot be read. Write the day's passages again.";
    case 'day-form':
      return `This is not a day's passages: ${fault.where === '' ? 'it' : `“${fault.where}”`} ${fault.wants}.`;
    case 'day-newer':
      return `This day was written by a newer Kingcup (form ${fault.version}): bring this one up to date, then read it again.`;
    case 'day-stock':
      return `Line ${fault.row} of the stock: ${stockFaultWords(fault.fault, number)}`;
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
      return `“${fault.pile}” would cover ${number(fault.cm2 / 10_000, 0, 6)} square metres, more than a wall of ten by ten: look whether centimetres were meant.`;
    case 'area-share':
      return `“${fault.pile}” covers ${number(fault.share, 0, 6)} of the canvas: a share lies above 0 and reaches at most 1.`;
    case 'canvas-missing':
      return `“${fault.pile}” covers a share of the canvas, but “${fault.passage}” does not say how large the canvas is: give its width and height.`;
    case 'canvas-size':
      return `The canvas of “${fault.passage}” has no size: width and height are centimetres above 0.`;
    case 'film-not-a-thickness':
      return `“${fault.pile}” is laid ${number(fault.um, 0, 6)} micrometres thick: a film is thicker than 0.`;
    case 'film-huge':
      return `“${fault.pile}” would be laid ${number(fault.um / 1000, 0, 6)} millimetres thick: look whether micrometres were meant. Impasto ends at about 3 millimetres.`;
    case 'coats':
      return `“${fault.pile}” is laid in ${number(fault.coats, 0, 6)} coats: coats are a whole number from 1 to ${MOST_COATS}.`;
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

const ALLOWANCE = {
  tooth: 'The allowance for the tooth of the ground',
  waste: 'The allowance for waste',
  heap: 'The least heap',
  oil: 'The oil to stir in',
} as const satisfies Record<Allowance, string>;
