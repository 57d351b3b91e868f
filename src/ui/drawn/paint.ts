import type { Detail, DrawnLadder, Hang } from './drawn.ts';
import { colourAt, type Mass } from './mass.ts';
import { type ClothShapes, clothShapes, type Fall, type Part } from './shapes.ts';
import { type Answered, answered } from './shaping.ts';

export interface Garment {
  readonly ladder: DrawnLadder;
  readonly seed: number;
  readonly hang?: Hang | undefined;
  readonly trim?: DrawnLadder | undefined;
  readonly lining?: DrawnLadder | undefined;
  readonly detail?: Detail | undefined;
  readonly width: number;
  readonly height: number;
}

/** The shapes with their colours: a step's own, or a mixture of two neighbouring ones. */
export interface Painted {
  readonly pegs: ClothShapes['pegs'];
  readonly shadow: string;
  readonly layers: readonly {
    readonly part: Part;
    readonly masses: readonly Mass[];
    /** What is out of reach, path data for fill rule even-odd, or nothing. */
    readonly hatch: string;
  }[];
  readonly colour: (part: Part, place: number) => string;
}

/** What the shapes depend on: not on colour, so that a row of variants costs one cloth. */
const fallOf = ({ ladder, seed, hang, trim, lining, detail, width, height }: Garment): Fall => ({
  seed,
  hang,
  detail: detail ?? 'plain',
  width,
  height,
  shares: ladder.map(({ share }) => share),
  band: (trim ?? lining) ? Math.min(15, 0.04 * Math.min(width * 1.4, height)) : 0,
});

/** The shapes of garments: at once where they are known, else worked out aside. */
export const cloths: Answered<Garment, ClothShapes> = answered(
  'cloth',
  60,
  (garment: Garment) => fallOf(garment),
  clothShapes,
);

/** Paints a garment; what is out of reach is hatched over it. */
export function paint(garment: Garment): Painted {
  const { ladder, trim, lining } = garment;
  const ladders = { face: ladder, lining: lining ?? ladder, edge: trim ?? lining ?? ladder };
  const { pegs, shadow, layers } = cloths.of(garment);
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
    colour: (part, place) => colourAt(ladders[part], place),
  };
}
