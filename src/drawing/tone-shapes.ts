import { contours } from './contour-lines.ts';
import type { DrawnLadder } from './drawn-ladder.ts';
import { blendLight } from './light-blend.ts';
import { borderOf, outline, pathOf } from './polygon-path.ts';
import type { LitGrid, ToneMap } from './tone-map.ts';

/** Distance that tones keep from an edge, drawing units. */
const EDGE_INSET = 0.7;

/** A flat shape of one tone. */
export interface ToneShape {
  /** Path data in tenths of a unit. */
  readonly d: string;
  /** Place on the ladder, 0 (highlight) … 5 (deepest fold); different for each mass of a piece. */
  readonly place: number;
}

/** Colour at a place on the ladder: neighbouring steps mixed in linear light, clamped to 0…5. */
export function ladderColourAt(ladder: DrawnLadder, asked: number): string {
  const place = Math.min(5, Math.max(0, asked));
  const low = Math.floor(place);
  const from = ladder[low]?.hex ?? '#808080';
  return blendLight(from, ladder[Math.min(5, low + 1)]?.hex ?? from, place - low);
}

/**
 * Shapes of a piece of cloth by tone, in painting order: the whole piece in the mean tone of its
 * long edges, then every darker tone, then every lighter one, in steps small enough to look
 * continuous. Starting with the tone of the edges avoids a rim of another tone there.
 *
 * @param perStep tones between two neighbouring steps
 * @param slack tolerance of the lines, drawing units
 */
export function toneShapesOf(
  sheet: LitGrid,
  tone: ToneMap,
  perStep: number,
  slack: number,
): ToneShape[] {
  const places = sheet.light.map((light) => tone(light) * perStep);
  const least = places.reduce((low, place) => Math.min(low, place), 5 * perStep);
  const most = places.reduce((high, place) => Math.max(high, place), 0);
  let edge = 0;
  for (let j = 0; j < sheet.rows; j++) {
    edge += places[j * sheet.columns] ?? 0;
    edge += places[(j + 1) * sheet.columns - 1] ?? 0;
  }
  const ground = Math.floor(edge / (2 * sheet.rows));
  const masses: ToneShape[] = [];
  const lay = (d: string, level: number) => {
    if (d) masses.push({ d, place: (level + 0.5) / perStep });
  };
  const border = borderOf(sheet, slack);
  const drawn = { ...sheet, x: sheet.x.slice(), y: sheet.y.slice(), kept: border.slice() };
  const near = (level: number) => insetEdges(sheet, drawn, border, places, level);
  near(ground);
  lay(outline(drawn, drawn.kept), ground);
  for (let level = ground + 1; level < most; level++) {
    near(level);
    lay(pathOf(contours(drawn, places, level, drawn.kept), slack), level);
  }
  const turned = places.map((place) => -place);
  for (let level = ground - 1; level + 1 > least; level--) {
    near(level);
    lay(pathOf(contours(drawn, turned, -(level + 1), drawn.kept), slack), level);
  }
  return masses;
}

/**
 * Moves the edge of a tone slightly inward wherever tones closer to the visible one will cover it.
 * Antialiasing mixes a little of every tone that shares an edge into its pixels, and many darker
 * ones would draw a line along a light fold. Overwrites `drawn`.
 */
function insetEdges(
  sheet: LitGrid,
  drawn: { readonly x: Float64Array; readonly y: Float64Array; readonly kept: Uint8Array },
  border: Uint8Array,
  places: Float64Array,
  level: number,
): void {
  const { columns, rows, x, y } = sheet;
  const inward = Math.min(3, columns - 1);
  drawn.kept.set(border);
  for (const side of [0, 1]) {
    let before: boolean | undefined;
    for (let j = 0; j < rows; j++) {
      const edge = j * columns + (side === 0 ? 0 : columns - 1);
      const inner = edge + (side === 0 ? inward : -inward);
      const ex = x[edge] ?? 0;
      const ey = y[edge] ?? 0;
      const far = Math.abs((places[edge] ?? 0) - level - 0.5) > 1.6;
      const dx = (x[inner] ?? 0) - ex;
      const dy = (y[inner] ?? 0) - ey;
      const part = far ? Math.min(0.5, EDGE_INSET / (Math.hypot(dx, dy) || 1)) : 0;
      drawn.x[edge] = ex + dx * part;
      drawn.y[edge] = ey + dy * part;
      // Where the line steps inward from the edge, both points must stay.
      if (before !== undefined && before !== far) {
        drawn.kept[edge] = 1;
        drawn.kept[edge - columns] = 1;
      }
      before = far;
    }
  }
}
