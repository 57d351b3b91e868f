import { drawPalette, type Laid, paletteWords, pilesOf } from '../../palette/drawing.ts';
import type { Markup } from '../../palette/markup.ts';
import type { Day, PalettePlan } from '../../palette/plan.ts';
import { layPalette } from './seats.ts';

/** On its column of paper the words of the drawing are then as large as the text. */
export const BOARD_PX = 440;

/** The palette as a drawing for paper. @param width px */
export function boardOf(palette: PalettePlan, { rules }: Day, width: number): Markup {
  const piles = pilesOf(palette);
  const { pigments, mixed } = piles;
  const laid: Laid = layPalette(pigments, mixed, rules.shape, rules.hand, width, 'as given');
  return drawPalette(laid, piles, paletteWords(palette, rules));
}
