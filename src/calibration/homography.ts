import { Matrix, SingularValueDecomposition } from 'ml-matrix';
import type { Mark } from './corner-marks.ts';
import { MARK_MM, markCentres, type SwatchCard } from './swatch-card.ts';

export type Point = readonly [x: number, y: number];

/** Projective map from the page (millimetres, or other plane units) to the photograph (pixels). */
export interface Homography {
  at(x: number, y: number): Point;
  /** Local scale at a point: pixels per millimetre. */
  scale(x: number, y: number): number;
}

/**
 * Homography from four or more point pairs, by the direct linear transformation on points
 * normalised to mean 0 and mean distance √2.
 * @returns null if the points do not determine one (three on a line)
 * @throws RangeError for fewer than four points or lists of different lengths
 * @see R. Hartley, A. Zisserman, Multiple View Geometry (2003), 4.1 and 4.4 (section numbers from
 *   memory)
 */
export function homography(from: readonly Point[], to: readonly Point[]): Homography | null {
  if (from.length < 4 || from.length !== to.length)
    throw new RangeError(`${from.length} points for ${to.length}`);
  const [A, B] = [normalising(from), normalising(to)];
  const rows = from.flatMap((point, i) => {
    const [x, y] = moved(A, point);
    const [u, v] = moved(B, to[i]!);
    return [
      [-x, -y, -1, 0, 0, 0, u * x, u * y, u],
      [0, 0, 0, -x, -y, -1, v * x, v * y, v],
    ];
  });
  // A row of zeros makes the matrix square, so that the decomposition includes the null space.
  while (rows.length < 9) rows.push(new Array(9).fill(0));
  const svd = new SingularValueDecomposition(new Matrix(rows), { autoTranspose: true });
  const values = svd.diagonal;
  if (!(values[7]! > 1e-6 * values[0]!)) return null;
  const h = svd.rightSingularVectors.getColumn(8);
  const at = (x: number, y: number): Point => {
    const [p, q] = moved(A, [x, y]);
    const w = h[6]! * p + h[7]! * q + h[8]!;
    const u = (h[0]! * p + h[1]! * q + h[2]!) / w;
    const v = (h[3]! * p + h[4]! * q + h[5]!) / w;
    return [u / B.scale + B.x, v / B.scale + B.y];
  };
  const scale = (x: number, y: number): number => {
    const [l, r, t, b] = [at(x - 0.5, y), at(x + 0.5, y), at(x, y - 0.5), at(x, y + 0.5)];
    return Math.sqrt(Math.abs((r[0] - l[0]) * (b[1] - t[1]) - (r[1] - l[1]) * (b[0] - t[0])));
  };
  return { at, scale };
}

interface Normalising {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

const moved = ({ x, y, scale }: Normalising, point: Point): Point => [
  (point[0] - x) * scale,
  (point[1] - y) * scale,
];

function normalising(points: readonly Point[]): Normalising {
  const x = points.reduce((sum, p) => sum + p[0], 0) / points.length;
  const y = points.reduce((sum, p) => sum + p[1], 0) / points.length;
  const far = points.reduce((sum, p) => sum + Math.hypot(p[0] - x, p[1] - y), 0) / points.length;
  return { x, y, scale: Math.SQRT2 / (far || 1) };
}

/** Maximum number of marks (highest contrast first) considered as the card's four. */
const MAX_MARKS_TRIED = 10;

/**
 * Homography of the page from detected marks: four marks, exactly one of them with a pupil, that
 * form a convex quadrilateral and have the radii that the homography predicts. Null if no four
 * marks fit.
 */
export function pageHomography(
  card: Pick<SwatchCard, 'paper'>,
  marks: readonly Mark[],
): Homography | null {
  const tried = marks.slice(0, MAX_MARKS_TRIED);
  const centres = markCentres(card.paper);
  let best: Homography | null = null;
  let least = 0.25;
  for (const first of tried.filter(({ pupil }) => pupil))
    for (const three of triples(tried.filter(({ pupil }) => !pupil))) {
      const four = clockwiseFrom(first, [first, ...three]);
      if (!isConvex(four)) continue;
      const found = homography(
        centres,
        four.map(({ x, y }): Point => [x, y]),
      );
      if (found === null) continue;
      const off = Math.max(
        ...four.map((mark, i) => {
          const [x, y] = centres[i]!;
          return Math.abs(Math.log((found.scale(x, y) * MARK_MM.outer) / mark.radius));
        }),
      );
      if (off < least) {
        best = found;
        least = off;
      }
    }
  return best;
}

function triples<T>(of: readonly T[]): T[][] {
  return of.flatMap((a, i) =>
    of.slice(i + 1).flatMap((b, j) => of.slice(i + 1 + j + 1).map((c) => [a, b, c])),
  );
}

function clockwiseFrom(first: Mark, four: readonly Mark[]): Mark[] {
  const cx = four.reduce((sum, { x }) => sum + x, 0) / 4;
  const cy = four.reduce((sum, { y }) => sum + y, 0) / 4;
  // y points down in a photograph, so rising angles run clockwise.
  const round = [...four].sort(
    (p, q) => Math.atan2(p.y - cy, p.x - cx) - Math.atan2(q.y - cy, q.x - cx),
  );
  const at = round.indexOf(first);
  return [...round.slice(at), ...round.slice(0, at)];
}

function isConvex(four: readonly Mark[]): boolean {
  return four.every((p, i) => {
    const [q, r] = [four[(i + 1) % 4]!, four[(i + 2) % 4]!];
    return (q.x - p.x) * (r.y - q.y) - (q.y - p.y) * (r.x - q.x) > 0;
  });
}
