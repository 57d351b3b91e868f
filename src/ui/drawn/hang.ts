import type { Detail, Hang } from './drawn.ts';
import { between, type Chance, chance } from './seed.ts';
import { edgeOf, type Piece, piecesOf, type Section, type Weave, weave } from './weave.ts';

/** Drawing units of one cloth. */
export const CLOTH = { width: 300, height: 400 } as const;

/** One length of cloth of a garment, from back to front. */
export interface Length {
  readonly pieces: readonly Piece[];
  /** The turned-back or trimmed band along its edge, painted over it piece by piece. */
  readonly band: readonly Piece[];
  /** The same along a swag's lower edge, painted over the whole length. */
  readonly rim?: Piece | undefined;
}

export interface Hung {
  readonly pegs: readonly { readonly x: number; readonly y: number }[];
  readonly lengths: readonly Length[];
}

const FINENESS = {
  fine: { columns: 15, rows: 42, weave: 60 },
  plain: { columns: 11, rows: 28, weave: 44 },
  small: { columns: 8, rows: 17, weave: 26 },
} as const;

interface Fall {
  readonly peg: { readonly x: number; readonly y: number };
  /** Width at the widest, drawing units. */
  readonly wide: number;
  /** The longest thread's length. */
  readonly long: number;
  /** Where in its width the cloth hangs from the peg, 0…1. */
  readonly anchor: number;
  /** Sideways drift of the lower end. */
  readonly lean: number;
  readonly folds: number;
  /** Length of the thread at s, 0…1 of the longest. */
  readonly hem: (s: number) => number;
  /** Least and most of the steepest direction at the lower end, radians. */
  readonly swing: readonly [number, number];
  readonly start: number;
}

/** Cloth falling from one peg: folds stand close at the peg, open downward, some of them dying away. */
function fall(
  shape: Fall,
  next: Chance,
  detail: Detail,
): { woven: Weave; hem: (s: number) => number } {
  const flanks = shape.folds * 2 + (next() < 0.5 ? 1 : 0);
  const wave = Array.from({ length: flanks }, () => ({
    above: between(next, 0.55, 1.1) * (next() < 0.3 ? 1.7 : 1),
    below: between(next, 0.7, 1.45),
    swingAbove: between(next, 0.95, 1.4),
    swingBelow: between(next, shape.swing[0], shape.swing[1]),
    dies: next() < 0.25,
    where: between(next, 0.3, 0.7),
  }));
  // Both halves of a fold die together, or its ridge would turn into a step.
  for (let k = 0; k + 1 < flanks; k += 2) {
    const one = wave[k];
    const other = wave[k + 1];
    if (one && other) {
      other.dies = one.dies;
      other.where = one.where;
    }
  }
  const sway = between(next, -0.01, 0.01) * shape.wide;
  // The free edges turn back narrow and never lie open.
  for (const edge of [wave[0], wave.at(-1)]) {
    if (!edge) continue;
    edge.dies = false;
    edge.below *= 0.4;
  }
  const ripple = between(next, 0.6, 1.3);
  const section: Section = {
    flanks,
    first: next() < 0.5 ? 1 : -1,
    turn: 0.2,
    cloth: (flank, v) => {
      const w = wave[flank] ?? { above: 1, below: 1 };
      return w.above * (1 + (w.below - 1) * v);
    },
    swing: (flank, v) => {
      const w = wave[flank];
      if (!w) return 1;
      const angle = w.swingAbove + (w.swingBelow - w.swingAbove) * v ** 0.8;
      if (!w.dies) return angle;
      const gone = Math.min(1, Math.max(0, (v - w.where) / 0.4));
      return angle * (1 - 0.65 * gone * gone * (3 - 2 * gone));
    },
    place: (across, out, v, s) => {
      const spread = shape.wide * (0.05 + 0.95 * v ** 0.7);
      const x =
        shape.peg.x +
        shape.lean * v ** 1.4 +
        sway * Math.sin(v * 4.2 + shape.start) * v +
        spread * (across - shape.anchor);
      // Cloth never falls quite plumb: long soft waves down the folds make their lights swell and fade.
      const wave =
        Math.sin(2 * Math.PI * (ripple * v + 0.9 * s) + shape.start) +
        0.6 * Math.sin(2 * Math.PI * (2.3 * ripple * v - 1.7 * s) + 2 * shape.start);
      const z = spread * (out + 0.013 * wave * v);
      return [x, shape.peg.y + shape.long * v + 0.17 * spread * out, z];
    },
  };
  return { woven: weave(section, FINENESS[detail].weave), hem: shape.hem };
}

/** The bunch of cloth that stands above a peg, where it was pinched to be pinned. */
function ear(peg: { x: number; y: number }, size: number, next: Chance, detail: Detail): Length {
  const folds = 2;
  const wave = Array.from({ length: folds * 2 }, () => between(next, 0.7, 1.4));
  const tips = Array.from({ length: 8 }, () => between(next, 0.4, 1));
  const woven = weave(
    {
      flanks: folds * 2,
      first: 1,
      cloth: (flank) => wave[flank] ?? 1,
      swing: () => 1.4,
      place: (across, out, v) => {
        const spread = size * (0.3 + 0.75 * v);
        const z = spread * out;
        return [peg.x + spread * (across - 0.5), peg.y - size * v + 0.12 * z, z];
      },
    },
    16,
  );
  const { columns } = FINENESS[detail];
  const hem = (s: number) => {
    const at = s * (tips.length - 1);
    const k = Math.min(tips.length - 2, Math.floor(at));
    const a = tips[k] ?? 1;
    return a + ((tips[k + 1] ?? 1) - a) * (at - k);
  };
  return { pieces: piecesOf(woven, { to: hem, columns, rows: 8 }), band: [] };
}

/**
 * Length of the thread from a pin to the cloth's edge, straight cloth pinned on its upper edge:
 * `angle` from the left arm (0) round below to the right arm (π).
 */
const thread = (angle: number, left: number, right: number, deep: number) => {
  const side = Math.cos(angle) >= 0 ? left : right;
  const over = Math.abs(Math.cos(angle));
  const below = Math.sin(angle);
  return Math.min(
    over > 1e-6 ? side / over : Number.POSITIVE_INFINITY,
    below > 1e-6 ? deep / below : Number.POSITIVE_INFINITY,
  );
};

const hemOf = (left: number, right: number, deep: number, from = 0, to = Math.PI) => {
  const at = (s: number) => thread(from + (to - from) * s, left, right, deep);
  let longest = 0;
  for (let s = 0; s <= 1; s += 0.01) longest = Math.max(longest, at(s));
  return (s: number) => Math.max(0.12, at(s) / longest);
};

function length(woven: Weave, hem: (s: number) => number, band: number, detail: Detail): Length {
  const { columns, rows } = FINENESS[detail];
  const pieces = piecesOf(woven, { to: hem, columns, rows });
  return {
    pieces,
    band:
      band > 0 ? piecesOf(woven, { from: (s) => hem(s) - band, to: hem, columns, rows: 4 }) : [],
  };
}

/** Cloth slung between two pegs: nested hanging curves that gather at both. */
function swag(
  left: { x: number; y: number },
  right: { x: number; y: number },
  slack: { above: number; below: number },
  folds: number,
  next: Chance,
  detail: Detail,
): Weave {
  const flanks = folds * 2 + 1;
  const wave = Array.from({ length: flanks }, (_, k) => ({
    left: between(next, 0.6, 1.4) * (1 + 0.5 * (k / flanks)),
    right: between(next, 0.6, 1.4) * (1 + 0.5 * (k / flanks)),
    swing: between(next, 1.1, 1.8),
    side: Math.floor(next() * 3),
  }));
  for (let k = 0; k + 1 < flanks; k += 2) {
    const one = wave[k];
    const other = wave[k + 1];
    if (one && other) other.side = one.side;
  }
  const lowest = between(next, 0.42, 0.58);
  const start = between(next, 0, 6);
  const section: Section = {
    flanks,
    first: 1,
    cloth: (flank, v) => {
      const w = wave[flank];
      return w ? w.left + (w.right - w.left) * v : 1;
    },
    swing: (flank, v) => {
      const w = wave[flank];
      if (!w) return 1;
      // Folds born at one peg lose themselves before they come to the other.
      const kept = w.side === 0 ? 1 : w.side === 1 ? 1.1 - v : 0.1 + v;
      const near = Math.min(1, kept * 1.9);
      return w.swing * (0.3 + 0.7 * near * near * (3 - 2 * near));
    },
    place: (across, out, v, s) => {
      // The deepest point need not hang midway.
      const u = v ** (Math.log(0.5) / Math.log(lowest));
      const bow = 4 * u * (1 - u);
      const sag = slack.above + (slack.below - slack.above) * across ** 1.1;
      const round = bow ** (1 - 0.4 * across);
      const span = (slack.below - slack.above) * round + 10;
      const z = span * (out + 0.012 * Math.sin(7 * v + 9 * s + start));
      return [
        left.x + (right.x - left.x) * v,
        left.y +
          (right.y - left.y) * v +
          sag * round +
          12 * (across - 0.5) * (1 - bow) +
          0.1 * span * out,
        z,
      ];
    },
  };
  return weave(section, FINENESS[detail].weave);
}

/**
 * A garment hung up: where its pegs are and every piece of it from back to front.
 *
 * @param band width of a trim or turned-back edge, drawing units, 0 for none
 * @param size room that the cloth fills, drawing units
 */
function lay(
  seed: number,
  how: Hang | undefined,
  detail: Detail,
  band: number,
  size: { readonly width: number; readonly height: number } = CLOTH,
): Hung {
  const next = chance(seed);
  const way = next() < 0.55 ? 'one peg' : 'two pegs';
  const { width, height } = size;
  const top = height * 0.085;
  if (how === 'strip') {
    const peg = { x: width * between(next, 0.46, 0.54), y: Math.min(14, height * 0.1) };
    const long = height - peg.y - 8;
    const slope = between(next, -0.14, 0.14);
    const made = fall(
      {
        peg,
        wide: width * 0.84,
        long,
        anchor: 0.5,
        lean: between(next, -2, 2),
        folds: width > 70 ? 3 : 2,
        hem: (s) => 0.9 + slope * (s - 0.5) - 0.08 * Math.abs(s - 0.5),
        swing: [1.3, 1.9],
        start: between(next, 0, 6),
      },
      next,
      detail,
    );
    return {
      pegs: [peg],
      lengths: [
        ear(peg, Math.min(17, width * 0.06), next, detail),
        length(made.woven, made.hem, band / long, detail),
      ],
    };
  }
  if ((how ?? way) === 'one peg') {
    const peg = { x: width * between(next, 0.42, 0.58), y: top };
    // Pinned by a corner it falls in one long point, by its upper edge in two.
    const corner = next() < 0.45;
    const deep = between(next, 0.85, 1.3);
    const left = between(next, 0.4, 0.85);
    const right = between(next, 0.4, 0.85);
    const turned = between(next, 0.1, 0.3);
    const long = height - peg.y - height * 0.05;
    const made = fall(
      {
        peg,
        wide: Math.min(width * 1.05, long * between(next, 0.6, 0.74)),
        long,
        anchor: (peg.x - width * 0.1) / (width * 0.8),
        lean: width * between(next, -0.02, 0.02),
        folds: Math.max(
          2,
          Math.round(between(next, 4, 6.4) * Math.min(1.3, Math.sqrt(width / 300))),
        ),
        hem: corner
          ? hemOf(left * 1.5, deep, deep, turned, Math.PI / 2 + between(next, 0, 0.4))
          : hemOf(left, right, deep, turned, Math.PI - turned),
        swing: [1.3, 2.35],
        start: between(next, 0, 6),
      },
      next,
      detail,
    );
    return {
      pegs: [peg],
      lengths: [
        ear(peg, Math.min(17, width * 0.06), next, detail),
        length(made.woven, made.hem, band / long, detail),
      ],
    };
  }
  const left = { x: width * between(next, 0.2, 0.28), y: height * between(next, 0.075, 0.11) };
  const right = { x: width * between(next, 0.72, 0.8), y: height * between(next, 0.075, 0.13) };
  const slung = swag(
    left,
    right,
    { above: height * between(next, 0.065, 0.11), below: height * between(next, 0.42, 0.6) },
    4,
    next,
    detail,
  );
  // Of a wide cloth one end falls broad, or too little of it would be seen.
  const broad = width > height * 0.95 ? (next() < 0.5 ? left : right) : undefined;
  const tail = (peg: { x: number; y: number }, mirror: boolean) => {
    const full = peg === broad;
    const long = height * between(next, 0.65, 0.84);
    const inner = hemOf(
      between(next, 0.4, 0.6),
      0.8,
      between(next, 0.9, 1.2),
      0.05,
      between(next, 1.5, 1.9),
    );
    const made = fall(
      {
        peg,
        wide: full
          ? Math.min(width * 0.5, height * 0.62)
          : Math.min(width * between(next, 0.26, 0.35), height * 0.4),
        long,
        anchor: mirror ? 0.38 : 0.62,
        lean: width * (mirror ? between(next, 0.01, 0.03) : between(next, -0.03, -0.01)),
        folds: full ? 5 : 3,
        hem: mirror ? (s) => inner(1 - s) : inner,
        swing: [1.7, 2.4],
        start: between(next, 0, 6),
      },
      next,
      detail,
    );
    return length(made.woven, made.hem, band / long, detail);
  };
  const { columns, rows } = FINENESS[detail];
  const slingPieces = piecesOf(slung, { to: () => 1, columns, rows, oneSided: true });
  return {
    pegs: [left, right],
    lengths: [
      ear(left, width * 0.045, next, detail),
      ear(right, width * 0.045, next, detail),
      {
        pieces: slingPieces,
        band: [],
        rim: band > 0 ? edgeOf(slung, 0.55, rows) : undefined,
      },
      tail(left, false),
      tail(right, true),
    ],
  };
}

/**
 * A garment hung up so that it fills its room: where its pegs are and every piece of it from back
 * to front.
 *
 * @param band width of a trim or turned-back edge, drawing units, 0 for none
 * @param size room that the cloth fills, drawing units
 */
export function hang(
  seed: number,
  how: Hang | undefined,
  detail: Detail,
  band: number,
  size: { readonly width: number; readonly height: number } = CLOTH,
): Hung {
  const hung = lay(seed, how, detail, band, size);
  let left = Number.POSITIVE_INFINITY;
  let right = Number.NEGATIVE_INFINITY;
  let bottom = Number.NEGATIVE_INFINITY;
  for (const { pieces } of hung.lengths) {
    for (const piece of pieces) {
      for (const x of piece.x) {
        left = Math.min(left, x);
        right = Math.max(right, x);
      }
      for (const y of piece.y) bottom = Math.max(bottom, y);
    }
  }
  const margin = Math.min(10, 0.05 * size.width);
  // Drawn out too far sideways cloth would seem to fly: then it keeps to the middle of its room.
  const full = (size.width - 2 * margin) / (right - left || 1);
  const wide = Math.min(full, how === 'strip' ? 1.6 : 1.15);
  const start = (size.width - (right - left) * wide) / 2;
  const deep = (size.height - margin * 1.2) / (bottom || 1);
  const set = (piece: Piece): Piece => ({
    ...piece,
    x: piece.x.map((x) => start + (x - left) * wide),
    y: piece.y.map((y) => y * deep),
  });
  return {
    pegs: hung.pegs.map(({ x, y }) => ({ x: start + (x - left) * wide, y: y * deep })),
    lengths: hung.lengths.map((length) => ({
      pieces: length.pieces.map(set),
      band: length.band.map(set),
      rim: length.rim ? set(length.rim) : undefined,
    })),
  };
}
