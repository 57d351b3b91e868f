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
interface Shapes {
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
function keeping<T>(most: number) {
  const kept = new Map<string, T>();
  return (key: string, make: () => T): T => {
    const known = kept.get(key);
    if (known !== undefined) return known;
    const made = make();
    if (kept.size >= most) kept.delete(kept.keys().next().value ?? '');
    kept.set(key, made);
    return made;
  };
}

const hungBefore = keeping<Hung>(24);
const shapedBefore = keeping<Shapes>(24);

/**
 * Paints a garment. Folds depend on seed and size, and the shapes of its tones on shares and reach
 * besides; none of it on colour, so that a row of variants costs one cloth.
 */
export function paint(garment: Garment): Painted {
  const { ladder, trim, lining, seed, hang: how, width, height } = garment;
  const detail = garment.detail ?? 'plain';
  const edge = trim ?? lining;
  const band = edge ? Math.min(15, 0.04 * Math.min(width * 1.4, height)) : 0;
  const fold = [seed, how, detail, width, height, band].join(' ');
  const reach = [ladder, lining, edge].map((each) =>
    each?.map(({ reachable }) => (reachable ? 1 : 0)).join(''),
  );
  const shares = ladder.map(({ share }) => share);
  const shapes = shapedBefore([fold, ...shares, ...reach].join(' '), () =>
    shape(
      hungBefore(fold, () => hang(seed, how, detail, band, { width, height })),
      { face: ladder, lining: lining ?? ladder, edge },
      detail,
    ),
  );
  const ladders = { face: ladder, lining: lining ?? ladder, edge: edge ?? ladder };
  return { ...shapes, colour: (part, place) => colourAt(ladders[part], place) };
}

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
