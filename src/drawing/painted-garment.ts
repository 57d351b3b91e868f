import type { ClothPart, ClothShapeInput, ClothShapes } from './cloth-and-heap-shapes.ts';
import type { Detail, DrawnLadder, Hang } from './drawn-ladder.ts';
import { ladderColourAt, type ToneShape } from './tone-shapes.ts';

/** A garment to draw; sizes in drawing units. */
export interface GarmentDrawingInput {
  readonly ladder: DrawnLadder;
  readonly seed: number;
  readonly hang?: Hang | undefined;
  readonly trim?: DrawnLadder | undefined;
  readonly lining?: DrawnLadder | undefined;
  readonly detail?: Detail | undefined;
  readonly width: number;
  readonly height: number;
}

/** A garment's shapes, with the colour of each mass. */
export interface PaintedGarment {
  readonly pegs: ClothShapes['pegs'];
  readonly shadow: string;
  readonly layers: readonly {
    readonly part: ClothPart;
    readonly masses: readonly ToneShape[];
    /** Path data of the parts out of reach, for fill rule even-odd; empty if none. */
    readonly hatch: string;
  }[];
  /** Colour at a place on the ladder of a part: a step's own, or a mixture of two neighbours. */
  readonly colour: (part: ClothPart, place: number) => string;
}

/**
 * The data that determines the shapes. Colours are left out, so that a row of variants needs only
 * one cloth.
 */
export const clothShapeInput = ({
  ladder,
  seed,
  hang,
  trim,
  lining,
  detail,
  width,
  height,
}: GarmentDrawingInput): ClothShapeInput => ({
  seed,
  hang,
  detail: detail ?? 'plain',
  width,
  height,
  shares: ladder.map(({ share }) => share),
  band: (trim ?? lining) ? Math.min(15, 0.04 * Math.min(width * 1.4, height)) : 0,
});

/** Paints a garment's shapes, and hatches what is out of reach. */
export function paintShapes(
  { ladder, trim, lining }: GarmentDrawingInput,
  { pegs, shadow, layers }: ClothShapes,
): PaintedGarment {
  const ladders = { face: ladder, lining: lining ?? ladder, edge: trim ?? lining ?? ladder };
  return {
    pegs,
    shadow,
    layers: layers.map(({ part, masses, lines }) => ({
      part,
      masses,
      hatch: ladders[part]
        .map(({ reachable }, k) => (reachable ? '' : `${lines[k] ?? ''}${lines[k + 1] ?? ''}`))
        .join(''),
    })),
    colour: (part, place) => ladderColourAt(ladders[part], place),
  };
}
