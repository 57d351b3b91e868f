import { type Reflectance, spectrum } from '../../../colour/grid.ts';
import { labOf } from '../../../colour/lab.ts';
import { opaque, type Paint } from '../../../optics/opaque.ts';
import { addSurface } from '../../../optics/surface.ts';
import { masstone } from '../../../pigment/masstone.ts';
import { curveOfEntry } from '../../../pigment/mixing-shelf.ts';
import { ownPaint, STARTER_WHITE } from '../../../pigment/starter-shelf.ts';
import type { Stock } from '../../../pigment/stock.ts';
import type { Stroke } from '../../components/BrushedPaint.tsx';
import { cssColourOf } from '../../state/screen-colour.ts';
import { shelfTexts } from '../../texts/shelf-texts.ts';

/** The white used for tints: the studio's white, or lead white while none is marked. */
function whiteOf(stock: Stock): Paint {
  const entry = stock.entries.find(({ id }) => id === stock.white);
  return (entry && curveOfEntry(stock, entry)) ?? ownPaint(STARTER_WHITE)!.paint;
}

/**
 * Masstone and tints of a paint as strokes to draw. A paint lighter than L* 88 counts as white and
 * has no tints.
 * @param tints parts of white to one part of the paint
 */
export function strokesOf(stock: Stock, paint: Paint | null, tints: readonly number[]): Stroke[] {
  if (paint === null) return [];
  const { surface } = stock;
  const white = whiteOf(stock);
  const lab = masstone(paint, surface);
  const strokes: Stroke[] = [{ hex: cssColourOf(lab), words: shelfTexts.masstone }];
  if (lab[0] > 88) return strokes;
  for (const parts of tints) {
    const R: Reflectance = opaque([1, parts], [paint, white], spectrum());
    strokes.push({
      hex: cssColourOf(labOf(addSurface(R, surface))),
      words: shelfTexts.toWhite(parts),
    });
  }
  return strokes;
}
