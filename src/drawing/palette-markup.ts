import type { Markup } from '../markup.ts';
import type { Day, PalettePlan } from '../palette/day-plan.ts';
import { layOutPalette } from './palette-layout.ts';
import { drawPalette, type PaletteLayout, paletteWords, pilesOf } from './palette-svg.ts';

/** Width of the drawing, px, at which its labels are as large as the text of the printed column. */
const SHEET_PX = 370;
/** Height over width of a board on paper, before rows of mixtures make it taller. */
const SHEET_RATIO = 0.92;

/** The palette as a drawing, with a key for names that do not fit. @param width px */
export function paletteMarkup(palette: PalettePlan, { rules }: Day, width: number): Markup {
  const piles = pilesOf(palette);
  return drawPalette(layOutPiles(piles, rules, width), piles, paletteWords(palette, rules));
}

/** The palette for its morning sheet, whose lists serve as the key. */
export function sheetPaletteMarkup(palette: PalettePlan, { rules }: Day): Markup {
  const piles = pilesOf(palette);
  const laid = layOutPiles(piles, rules, SHEET_PX, SHEET_RATIO);
  return drawPalette(laid, piles, paletteWords(palette, rules), true);
}

const layOutPiles = (
  { pigments, mixed }: ReturnType<typeof pilesOf>,
  { shape, hand }: Day['rules'],
  width: number,
  ratio?: number,
): PaletteLayout => layOutPalette(pigments, mixed, shape, hand, width, 'as given', ratio);
