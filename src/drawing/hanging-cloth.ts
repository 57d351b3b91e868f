import { CLOTH_DETAIL, type ClothLength, cutLength } from './cloth-geometry.ts';
import { hemOf } from './cloth-hem.ts';
import { edgeStrip, type Piece, piecesOf } from './cloth-pieces.ts';
import { drawingRandom, randomBetween } from './drawing-seed.ts';
import type { Detail, Hang } from './drawn-ladder.ts';
import { fallingCloth, pinchedCloth } from './falling-cloth.ts';
import { swag } from './swag.ts';

/** Default size of one cloth, drawing units. */
export const CLOTH = { width: 300, height: 400 } as const;

/** A hung garment, in drawing units; lengths from back to front. */
interface HungGarment {
  readonly pegs: readonly { readonly x: number; readonly y: number }[];
  readonly lengths: readonly ClothLength[];
}

/**
 * A garment hung up, before it is fitted to its space.
 *
 * @param how default: the seed decides
 * @param band width of a trim or turned-back edge, drawing units, 0 for none
 * @param size space for the cloth, drawing units
 */
function arrangeGarment(
  seed: number,
  how: Hang | undefined,
  detail: Detail,
  band: number,
  size: { readonly width: number; readonly height: number } = CLOTH,
): HungGarment {
  const next = drawingRandom(seed);
  const way = next() < 0.55 ? 'one peg' : 'two pegs';
  const { width, height } = size;
  const top = height * 0.085;
  if (how === 'strip') {
    const peg = { x: width * randomBetween(next, 0.46, 0.54), y: Math.min(14, height * 0.1) };
    const long = height - peg.y - 8;
    const slope = randomBetween(next, -0.14, 0.14);
    const made = fallingCloth(
      {
        peg,
        wide: width * 0.84,
        long,
        anchor: 0.5,
        lean: randomBetween(next, -2, 2),
        folds: width > 70 ? 3 : 2,
        hem: (s) => 0.9 + slope * (s - 0.5) - 0.08 * Math.abs(s - 0.5),
        swing: [1.3, 1.9],
        start: randomBetween(next, 0, 6),
      },
      next,
      detail,
    );
    return {
      pegs: [peg],
      lengths: [
        pinchedCloth(peg, Math.min(17, width * 0.06), next, detail),
        cutLength(made.woven, made.hem, band / long, detail),
      ],
    };
  }
  if ((how ?? way) === 'one peg') {
    const peg = { x: width * randomBetween(next, 0.42, 0.58), y: top };
    // Pinned by a corner, the cloth falls in one long point; by its upper edge, in two.
    const corner = next() < 0.45;
    const deep = randomBetween(next, 0.85, 1.3);
    const left = randomBetween(next, 0.4, 0.85);
    const right = randomBetween(next, 0.4, 0.85);
    const turned = randomBetween(next, 0.1, 0.3);
    const long = height - peg.y - height * 0.05;
    const made = fallingCloth(
      {
        peg,
        wide: Math.min(width * 1.05, long * randomBetween(next, 0.6, 0.74)),
        long,
        anchor: (peg.x - width * 0.1) / (width * 0.8),
        lean: width * randomBetween(next, -0.02, 0.02),
        folds: Math.max(
          2,
          Math.round(randomBetween(next, 4, 6.4) * Math.min(1.3, Math.sqrt(width / 300))),
        ),
        hem: corner
          ? hemOf(left * 1.5, deep, deep, turned, Math.PI / 2 + randomBetween(next, 0, 0.4))
          : hemOf(left, right, deep, turned, Math.PI - turned),
        swing: [1.3, 2.35],
        start: randomBetween(next, 0, 6),
      },
      next,
      detail,
    );
    return {
      pegs: [peg],
      lengths: [
        pinchedCloth(peg, Math.min(17, width * 0.06), next, detail),
        cutLength(made.woven, made.hem, band / long, detail),
      ],
    };
  }
  const left = {
    x: width * randomBetween(next, 0.2, 0.28),
    y: height * randomBetween(next, 0.075, 0.11),
  };
  const right = {
    x: width * randomBetween(next, 0.72, 0.8),
    y: height * randomBetween(next, 0.075, 0.13),
  };
  const slung = swag(
    left,
    right,
    {
      above: height * randomBetween(next, 0.065, 0.11),
      below: height * randomBetween(next, 0.42, 0.6),
    },
    4,
    next,
    detail,
  );
  // One end of a wide cloth falls broad, or too little of the cloth would be visible.
  const broad = width > height * 0.95 ? (next() < 0.5 ? left : right) : undefined;
  const tail = (peg: { x: number; y: number }, mirror: boolean) => {
    const full = peg === broad;
    const long = height * randomBetween(next, 0.65, 0.84);
    const inner = hemOf(
      randomBetween(next, 0.4, 0.6),
      0.8,
      randomBetween(next, 0.9, 1.2),
      0.05,
      randomBetween(next, 1.5, 1.9),
    );
    const made = fallingCloth(
      {
        peg,
        wide: full
          ? Math.min(width * 0.5, height * 0.62)
          : Math.min(width * randomBetween(next, 0.26, 0.35), height * 0.4),
        long,
        anchor: mirror ? 0.38 : 0.62,
        lean:
          width * (mirror ? randomBetween(next, 0.01, 0.03) : randomBetween(next, -0.03, -0.01)),
        folds: full ? 5 : 3,
        hem: mirror ? (s) => inner(1 - s) : inner,
        swing: [1.7, 2.4],
        start: randomBetween(next, 0, 6),
      },
      next,
      detail,
    );
    return cutLength(made.woven, made.hem, band / long, detail);
  };
  const { columns, rows } = CLOTH_DETAIL[detail];
  const slingPieces = piecesOf(slung, { to: () => 1, columns, rows, oneSided: true });
  return {
    pegs: [left, right],
    lengths: [
      pinchedCloth(left, width * 0.045, next, detail),
      pinchedCloth(right, width * 0.045, next, detail),
      {
        pieces: slingPieces,
        band: [],
        rim: band > 0 ? edgeStrip(slung, 0.55, rows) : undefined,
      },
      tail(left, false),
      tail(right, true),
    ],
  };
}

/**
 * A garment hung up and scaled to fill its space.
 *
 * @param how default: the seed decides
 * @param band width of a trim or turned-back edge, drawing units, 0 for none
 * @param size space for the cloth, drawing units
 * @returns its pegs, and its pieces from back to front
 */
export function hangGarment(
  seed: number,
  how: Hang | undefined,
  detail: Detail,
  band: number,
  size: { readonly width: number; readonly height: number } = CLOTH,
): HungGarment {
  const hung = arrangeGarment(seed, how, detail, band, size);
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
  // Limit the stretch, or the cloth would seem to fly: then it stays centred.
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
