import type { Detail, DrawnLadder, Hang } from './drawn.ts';
import { type Hung, hang } from './hang.ts';
import { colourAt, type Mass, massesOf, unreachedOf } from './mass.ts';
import { borderOf, outline } from './path.ts';
import type { Piece } from './piece.ts';
import { toneOf } from './tone.ts';

const FINE = {
  fine: { perStep: 7, slack: 0.15 },
  plain: { perStep: 4, slack: 0.22 },
  small: { perStep: 3, slack: 0.3 },
} as const;

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

/** Which of a garment's ladders colours a layer. */
type Part = 'face' | 'lining' | 'edge';

interface Layer {
  readonly part: Part;
  readonly masses: readonly Mass[];
  /** What is out of reach, path data for fill rule even-odd, or nothing. */
  readonly hatch: string;
}

/** A garment's shapes from back to front, in tenths of a unit, before they are coloured. */
export interface Shapes {
  readonly pegs: Hung['pegs'];
  /** Everything the cloth covers, for its shadow on the wall. */
  readonly shadow: string;
  readonly layers: readonly Layer[];
}

/** The shapes with their colours: a step's hex, or a mixture of two neighbouring ones. */
export interface Painted extends Shapes {
  readonly colour: (part: Part, place: number) => string;
}

/** Keeps what was last worked out, up to `most` answers. */
class Keeping<T> {
  readonly #kept = new Map<string, T>();
  readonly #most: number;

  constructor(most: number) {
    this.#most = most;
  }

  known(key: string): T | undefined {
    return this.#kept.get(key);
  }

  keep(key: string, made: T): T {
    if (this.#kept.size >= this.#most) this.#kept.delete(this.#kept.keys().next().value ?? '');
    this.#kept.set(key, made);
    return made;
  }
}

const hungBefore = new Keeping<Hung>(24);
const shapedBefore = new Keeping<Shapes>(64);

const detailOf = ({ detail = 'plain' }: Garment): Detail => detail;

/** Width of a trim or turned-back edge. */
const bandOf = ({ trim, lining, width, height }: Garment): number =>
  trim || lining ? Math.min(15, 0.04 * Math.min(width * 1.4, height)) : 0;

const foldKey = (garment: Garment): string => {
  const { seed, hang: how, width, height } = garment;
  return [seed, how, detailOf(garment), width, height, bandOf(garment)].join(' ');
};

/** What a garment's shapes depend on: folds on seed and size, tones on shares and reach, nothing on colour. */
export function shapesKey(garment: Garment): string {
  const { ladder, trim, lining } = garment;
  const reach = [ladder, lining, trim ?? lining].map((each) =>
    each?.map(({ reachable }) => (reachable ? 1 : 0)).join(''),
  );
  return [foldKey(garment), ...ladder.map(({ share }) => share), ...reach].join(' ');
}

/** Shapes that are known already. */
export const knownShapes = (key: string): Shapes | undefined => shapedBefore.known(key);
/** Keeps shapes that were worked out elsewhere. */
export const keepShapes = (key: string, shapes: Shapes): Shapes => shapedBefore.keep(key, shapes);

/** A garment's shapes, worked out here and now unless they are known: some milliseconds, cold ten times that. */
export function shapesOf(garment: Garment): Shapes {
  const key = shapesKey(garment);
  return knownShapes(key) ?? keepShapes(key, made(garment));
}

function made(garment: Garment): Shapes {
  const { ladder, trim, lining, seed, hang: how, width, height } = garment;
  const fold = foldKey(garment);
  const detail = detailOf(garment);
  const hung =
    hungBefore.known(fold) ??
    hungBefore.keep(fold, hang(seed, how, detail, bandOf(garment), { width, height }));
  return shape(hung, { face: ladder, lining: lining ?? ladder, edge: trim ?? lining }, detail);
}

/** The colours of a garment's parts. */
export function coloursOf({ ladder, trim, lining }: Garment): Painted['colour'] {
  const ladders = { face: ladder, lining: lining ?? ladder, edge: trim ?? lining ?? ladder };
  return (part, place) => colourAt(ladders[part], place);
}

/**
 * Paints a garment. Folds depend on seed and size, and the shapes of its tones on shares and reach
 * besides; none of it on colour, so that a row of variants costs one cloth.
 */
export const paint = (garment: Garment): Painted => ({
  ...shapesOf(garment),
  colour: coloursOf(garment),
});

function shape(
  hung: Hung,
  ladders: {
    readonly face: DrawnLadder;
    readonly lining: DrawnLadder;
    readonly edge: DrawnLadder | undefined;
  },
  detail: Detail,
): Shapes {
  const { perStep, slack } = FINE[detail];
  const seen = hung.lengths.flatMap(({ pieces }) => pieces.filter((p) => p.side !== 'wrong'));
  const tone = toneOf(seen, ladders.face);
  const layers: Layer[] = [];
  let shadow = '';
  const lay = (part: Part, piece: Piece) => {
    const ladder = ladders[part];
    if (!ladder) return;
    const shade = piece.side === 'wrong' ? (light: number) => Math.min(5, tone(light) + 1) : tone;
    layers.push({
      part,
      masses: massesOf(piece, shade, perStep, slack),
      hatch: unreachedOf(piece, ladder, shade, slack),
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
  return { pegs: hung.pegs, shadow, layers };
}
