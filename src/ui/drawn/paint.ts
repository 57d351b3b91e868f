import type { Detail, DrawnLadder, Hang } from './drawn.ts';
import { type Hung, hang } from './hang.ts';
import { keeping } from './kept.ts';
import { colourAt, type Mass, massesOf, unreachedOf } from './mass.ts';
import { borderOf, outline } from './path.ts';
import type { Piece } from './piece.ts';
import { type Tone, toneOf } from './tone.ts';

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
  readonly piece: Piece;
  readonly tone: Tone;
}

/** A garment's shapes from back to front, in tenths of a unit, before they are coloured. */
interface Shapes {
  readonly pegs: Hung['pegs'];
  /** Everything the cloth covers, for its shadow on the wall. */
  readonly shadow: string;
  readonly layers: readonly Layer[];
}

/** The shapes with their colours: a step's own, or a mixture of two neighbouring ones. */
export interface Painted {
  readonly pegs: Hung['pegs'];
  readonly shadow: string;
  readonly layers: readonly {
    readonly part: Part;
    readonly masses: readonly Mass[];
    /** What is out of reach, path data for fill rule even-odd, or nothing. */
    readonly hatch: string;
  }[];
  readonly colour: (part: Part, place: number) => string;
}

const hungBefore = keeping<Hung>(24);
const shapedBefore = keeping<Shapes>(24);
const hatchedBefore = keeping<readonly string[]>(24);

/** The band of a trim, or of a lining turned over, in units. */
const bandOf = ({ trim, lining, width, height }: Garment): number =>
  (trim ?? lining) ? Math.min(15, 0.04 * Math.min(width * 1.4, height)) : 0;

const detailOf = ({ detail }: Garment): Detail => detail ?? 'plain';

const foldName = (garment: Garment): string =>
  [
    garment.seed,
    garment.hang,
    detailOf(garment),
    garment.width,
    garment.height,
    bandOf(garment),
    garment.lining !== undefined,
  ].join(' ');

const shapeName = (garment: Garment): string =>
  [foldName(garment), ...garment.ladder.map(({ share }) => share)].join(' ');

/** Whether only colours are left to be worked out. */
export const isShaped = (garment: Garment): boolean => shapedBefore.has(shapeName(garment));

/**
 * Paints a garment. Folds depend on seed and size, and the shapes of its tones on shares besides; none
 * of it on colour, so that a row of variants costs one cloth. What is out of reach is hatched over it.
 */
export function paint(garment: Garment): Painted {
  const { ladder, trim, lining, seed, hang: how, width, height } = garment;
  const detail = detailOf(garment);
  const edge = trim ?? lining;
  const ladders = { face: ladder, lining: lining ?? ladder, edge: edge ?? ladder };
  const name = shapeName(garment);
  const shapes = shapedBefore.of(name, () =>
    shape(
      hungBefore.of(foldName(garment), () =>
        hang(seed, how, detail, bandOf(garment), { width, height }),
      ),
      { ladder, hasEdge: edge !== undefined },
      detail,
    ),
  );
  const reach = Object.values(ladders).map((each) =>
    each.map(({ reachable }) => (reachable ? 1 : 0)).join(''),
  );
  const hatches = hatchedBefore.of([name, ...reach].join(' '), () =>
    shapes.layers.map(({ part, piece, tone }) =>
      unreachedOf(piece, ladders[part], tone, FINE[detail].slack),
    ),
  );
  return {
    pegs: shapes.pegs,
    shadow: shapes.shadow,
    layers: shapes.layers.map(({ part, masses }, at) => ({
      part,
      masses,
      hatch: hatches[at] ?? '',
    })),
    colour: (part, place) => colourAt(ladders[part], place),
  };
}

function shape(
  hung: Hung,
  { ladder, hasEdge }: { readonly ladder: DrawnLadder; readonly hasEdge: boolean },
  detail: Detail,
): Shapes {
  const { perStep, slack } = FINE[detail];
  const seen = hung.lengths.flatMap(({ pieces }) => pieces.filter((p) => p.side !== 'wrong'));
  const tone = toneOf(seen, ladder);
  const layers: Layer[] = [];
  let shadow = '';
  const lay = (part: Part, piece: Piece) => {
    if (part === 'edge' && !hasEdge) return;
    const shade = piece.side === 'wrong' ? (light: number) => Math.min(5, tone(light) + 1) : tone;
    layers.push({ part, masses: massesOf(piece, shade, perStep, slack), piece, tone: shade });
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
