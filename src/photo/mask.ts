/**
 * Selection mask, 1 = included, 0 = rubbed out. It spans the whole photograph at any resolution.
 */
export interface Mask {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/** A point on the photograph: x and y as fractions 0…1 of its width and height. */
export type ImagePoint = readonly [x: number, y: number];

/** Longest edge, in pixels, of a mask drawn by hand. */
const EDGE = 512;

/** A mask that includes everything, for a photograph of this size. */
export function fullMask(width: number, height: number): Mask {
  const scale = Math.min(1, EDGE / Math.max(width, height));
  const [w, h] = [Math.max(1, Math.round(width * scale)), Math.max(1, Math.round(height * scale))];
  return { width: w, height: h, data: new Uint8Array(w * h).fill(1) };
}

/** Share of the photograph that a mask includes, 0…1. */
export const includedShare = ({ data }: Mask): number =>
  data.reduce((sum, v) => sum + v, 0) / data.length;

const changed = (mask: Mask, keep: (x: number, y: number, old: number) => number): Mask => {
  const data = new Uint8Array(mask.data.length);
  for (let y = 0; y < mask.height; y++)
    for (let x = 0; x < mask.width; x++) {
      const at = y * mask.width + x;
      data[at] = keep(x + 0.5, y + 0.5, mask.data[at]!);
    }
  return { width: mask.width, height: mask.height, data };
};

/**
 * Includes only the middle: an ellipse of three fifths of the width and height. Returns a new mask,
 * so that the old one can serve as undo.
 */
export const keepMiddle = (mask: Mask): Mask =>
  changed(mask, (x, y) =>
    ((x / mask.width - 0.5) / 0.3) ** 2 + ((y / mask.height - 0.5) / 0.3) ** 2 <= 1 ? 1 : 0,
  );

/** Swaps included and excluded. */
export const inverted = (mask: Mask): Mask => changed(mask, (_x, _y, old) => 1 - old);

/**
 * Paints a stroke of a round brush that excludes (0) or includes (1).
 * @param places points along the stroke; a single one is a dab
 * @param radius of the brush, as a fraction of the photograph's longer edge
 * @returns a new mask
 */
export function brushStroke(
  mask: Mask,
  places: readonly ImagePoint[],
  radius: number,
  keep: 0 | 1,
): Mask {
  const { width, height } = mask;
  const data = mask.data.slice();
  const r = Math.max(0.75, radius * Math.max(width, height));
  const at = ([x, y]: ImagePoint): ImagePoint => [x * width, y * height];
  for (let i = 0; i < places.length; i++) {
    const [x0, y0] = at(places[Math.max(0, i - 1)]!);
    const [x1, y1] = at(places[i]!);
    const [dx, dy] = [x1 - x0, y1 - y0];
    const length2 = dx * dx + dy * dy;
    const top = Math.max(0, Math.floor(Math.min(y0, y1) - r));
    const bottom = Math.min(height - 1, Math.ceil(Math.max(y0, y1) + r));
    const left = Math.max(0, Math.floor(Math.min(x0, x1) - r));
    const right = Math.min(width - 1, Math.ceil(Math.max(x0, x1) + r));
    for (let y = top; y <= bottom; y++)
      for (let x = left; x <= right; x++) {
        const [px, py] = [x + 0.5 - x0, y + 0.5 - y0];
        const t = length2 > 0 ? Math.max(0, Math.min(1, (px * dx + py * dy) / length2)) : 0;
        if ((px - t * dx) ** 2 + (py - t * dy) ** 2 <= r * r) data[y * width + x] = keep;
      }
  }
  return { width, height, data };
}

/**
 * Includes only the inside of a drawn outline (even-odd rule; the outline closes itself). Excluded
 * pixels stay excluded.
 * @returns a new mask
 * @throws RangeError with fewer than three points
 */
export function keepInside(mask: Mask, outline: readonly ImagePoint[]): Mask {
  if (outline.length < 3) throw new RangeError('an outline has at least three places');
  const points = outline.map(([x, y]) => [x * mask.width, y * mask.height] as const);
  const crossings: number[] = [];
  let row = -1;
  return changed(mask, (x, y, old) => {
    if (old === 0) return 0;
    if (y !== row) {
      row = y;
      crossings.length = 0;
      for (let i = 0; i < points.length; i++) {
        const [x0, y0] = points[i]!;
        const [x1, y1] = points[(i + 1) % points.length]!;
        if (y0 <= y !== y1 <= y) crossings.push(x0 + ((y - y0) / (y1 - y0)) * (x1 - x0));
      }
    }
    let inside = 0;
    for (const c of crossings) if (c <= x) inside ^= 1;
    return inside;
  });
}
