import type { Piece } from './cloth-pieces.ts';
import { contours } from './contour-lines.ts';
import type { Detail, Hang } from './drawn-ladder.ts';
import { hangGarment } from './hanging-cloth.ts';
import { heapSurface } from './paint-heap.ts';
import { borderOf, outline, pathOf } from './polygon-path.ts';
import { type LitGrid, type ToneMap, toneMapOf } from './tone-map.ts';
import { type ToneShape, toneShapesOf } from './tone-shapes.ts';

/** Tones for each step and tolerance of the lines (drawing units), for each level of detail. */
const SHAPE_DETAIL = {
  fine: { perStep: 7, slack: 0.15 },
  plain: { perStep: 4, slack: 0.22 },
  small: { perStep: 3, slack: 0.3 },
} as const;

/** The data that determines the shapes of a hanging cloth: everything but colour and reach. */
export interface ClothShapeInput {
  readonly seed: number;
  readonly hang: Hang | undefined;
  readonly detail: Detail;
  readonly width: number;
  readonly height: number;
  /** Share of each step of the ladder, lightest first. */
  readonly shares: readonly number[];
  /** Width of the band along the edge, drawing units; 0 for none. */
  readonly band: number;
}

/** The data that determines the shapes of a heap of paint. */
export interface HeapShapeInput {
  readonly seed: number;
  readonly radius: number;
  /** Share of each tone, lightest first. */
  readonly shares: readonly number[];
}

/** The ladder that colours a layer of a garment. */
export type ClothPart = 'face' | 'lining' | 'edge';

/** One piece of cloth, or of its band, as shapes. */
interface ClothLayer {
  readonly part: ClothPart;
  readonly masses: readonly ToneShape[];
  /** Seven paths: step k of the ladder lies between lines k and k + 1. */
  readonly lines: readonly string[];
}

/**
 * A garment's shapes from back to front, before they are coloured: pegs in drawing units, paths in
 * tenths of one.
 */
export interface ClothShapes {
  readonly pegs: readonly { readonly x: number; readonly y: number }[];
  /** Path data of everything that the cloth covers, for its shadow on the wall. */
  readonly shadow: string;
  readonly layers: readonly ClothLayer[];
}

/** The shapes of a heap, in tenths of a drawing unit. */
export interface HeapShapes {
  readonly masses: readonly ToneShape[];
  /** Path data of its outline, for its shadow. */
  readonly base: string;
}

/**
 * Hangs a cloth and computes the shapes of its tones. A pure function of cloneable data, so a
 * worker can run it.
 */
export function clothShapes(fall: ClothShapeInput): ClothShapes {
  const { seed, detail, band: broad, width, height, shares } = fall;
  const { perStep, slack } = SHAPE_DETAIL[detail];
  const hung = hangGarment(seed, fall.hang, detail, broad, { width, height });
  const seen = hung.lengths.flatMap(({ pieces }) => pieces.filter((p) => p.side !== 'wrong'));
  const tone = toneMapOf(seen, shares);
  const layers: ClothLayer[] = [];
  let shadow = '';
  const lay = (part: ClothPart, piece: Piece) => {
    if (part === 'edge' && broad === 0) return;
    const shade = piece.side === 'wrong' ? (light: number) => Math.min(5, tone(light) + 1) : tone;
    layers.push({
      part,
      masses: toneShapesOf(piece, shade, perStep, slack),
      lines: stepContours(piece, shade, slack),
    });
  };
  for (const { pieces, band, rim } of hung.lengths) {
    for (const piece of pieces) {
      shadow += outline(piece, borderOf(piece, slack * 2));
      lay(piece.side === 'wrong' ? 'lining' : 'face', piece);
      const over = band.find(({ side, which }) => side === piece.side && which === piece.which);
      if (over) lay('edge', over);
    }
    if (rim) lay('edge', rim);
  }
  return { pegs: hung.pegs.map(({ x, y }) => ({ x, y })), shadow, layers };
}

/** Contour lines between the steps of the ladder on a piece of cloth. */
function stepContours(sheet: LitGrid, tone: ToneMap, slack: number): string[] {
  const places = sheet.light.map(tone);
  return Array.from({ length: 7 }, (_, step) => pathOf(contours(sheet, places, step - 0.5), slack));
}

/** Shapes a heap of paint and computes the shapes of its tones. */
export function heapShapes({ seed, radius, shares }: HeapShapeInput): HeapShapes {
  const fine = radius >= 22;
  const shape = heapSurface(seed, fine ? 37 : 25);
  const sheet = {
    ...shape,
    x: shape.x.map((v) => v * radius),
    y: shape.y.map((v) => v * radius),
  };
  return {
    masses: toneShapesOf(sheet, toneMapOf([sheet], shares, 1), fine ? 6 : 4, 0.12),
    base: outline(sheet, borderOf(sheet, 0.12)),
  };
}
