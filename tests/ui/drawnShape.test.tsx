import { describe, expect, test } from 'vitest';
import { clothSurface } from '../../src/drawing/cloth-surface.ts';
import { contours } from '../../src/drawing/contour-lines.ts';
import { hangGarment } from '../../src/drawing/hanging-cloth.ts';
import { blendLight, relativeLuminance } from '../../src/drawing/light-blend.ts';
import { borderOf, outline, pathOf } from '../../src/drawing/polygon-path.ts';
import { toneMapOf } from '../../src/drawing/tone-map.ts';
import { ladderColourAt } from '../../src/drawing/tone-shapes.ts';
import { LADDER_STEPS } from '../../src/harmony/harmony.ts';

/** A square grid over -1…1 with a field on it. */
function field(size: number, f: (x: number, y: number) => number) {
  const sheet = {
    columns: size,
    rows: size,
    x: new Float64Array(size * size),
    y: new Float64Array(size * size),
  };
  const value = new Float64Array(size * size);
  for (let j = 0; j < size; j++) {
    for (let i = 0; i < size; i++) {
      const at = j * size + i;
      sheet.x[at] = (2 * i) / (size - 1) - 1;
      sheet.y[at] = (2 * j) / (size - 1) - 1;
      value[at] = f(sheet.x[at] ?? 0, sheet.y[at] ?? 0);
    }
  }
  return { sheet, value };
}

/** Signed area (shoelace): holes count against it. */
const areaOf = (loops: readonly { x: number[]; y: number[] }[]) =>
  loops.reduce((sum, { x, y }) => {
    let area = 0;
    for (let k = 0; k < x.length; k++) {
      const m = (k + 1) % x.length;
      area += ((x[k] ?? 0) * (y[m] ?? 0) - (x[m] ?? 0) * (y[k] ?? 0)) / 2;
    }
    return sum + area;
  }, 0);

/** Absolute places out of path data told point from point. */
function pointsOf(d: string): [number, number][] {
  const [start = '', rest = ''] = d.slice(1, -1).split('l');
  const figures = (text: string) => (text.match(/-?\d+/g) ?? []).map(Number);
  const [x = 0, y = 0] = figures(start);
  const points: [number, number][] = [[x, y]];
  const steps = figures(rest);
  for (let k = 0; k + 1 < steps.length; k += 2) {
    const [px, py] = points.at(-1) ?? [0, 0];
    points.push([px + (steps[k] ?? 0), py + (steps[k + 1] ?? 0)]);
  }
  return points;
}

describe('contours', () => {
  test('of a cone are circles: area π r²', () => {
    const { sheet, value } = field(61, (x, y) => 1 - Math.hypot(x, y));
    expect(Math.abs(areaOf(contours(sheet, value, 0.4)))).toBeCloseTo(Math.PI * 0.36, 2);
  });

  test('run the other way round a hole', () => {
    const { sheet, value } = field(61, (x, y) => -Math.abs(Math.hypot(x, y) - 0.5));
    const loops = contours(sheet, value, -0.2);
    expect(loops).toHaveLength(2);
    expect(Math.abs(areaOf(loops))).toBeCloseTo(Math.PI * (0.49 - 0.09), 2);
  });

  test('follow the border of the sheet where the part reaches it', () => {
    const { sheet, value } = field(21, (x) => x);
    expect(Math.abs(areaOf(contours(sheet, value, 0)))).toBeCloseTo(2, 12);
    expect(contours(sheet, value, 2)).toHaveLength(0);
    expect(Math.abs(areaOf(contours(sheet, value, -2)))).toBeCloseTo(4, 12);
  });

  test('keep two corners apart where they only touch', () => {
    const { sheet, value } = field(2, (x, y) => x * y);
    expect(contours(sheet, value, 0.5)).toHaveLength(2);
  });
});

describe('paths', () => {
  test('say where the points are, in tenths, from point to point', () => {
    const loop = { x: [0, 10, 10.26, -3], y: [0, -2, 8, 5.5], fixed: [1, 1, 1, 1] };
    expect(pointsOf(pathOf([loop], 0.1))).toEqual([
      [0, 0],
      [100, -20],
      [103, 80],
      [-30, 55],
    ]);
  });

  test('leave out what lies within the slack, and what cannot be seen', () => {
    const straight = { x: [0, 5, 10, 10, 0], y: [0, 0.05, 0, 10, 10], fixed: [0, 0, 0, 0, 0] };
    expect(pointsOf(pathOf([straight], 0.1))).toHaveLength(4);
    const speck = { x: [0, 0.1, 0.1], y: [0, 0, 0.1], fixed: [0, 0, 0] };
    expect(pathOf([speck], 0.2)).toBe('');
  });

  test('an outline runs the same way round for a sheet laid either way', () => {
    const { sheet } = field(5, () => 0);
    const mirrored = { ...sheet, x: sheet.x.map((x) => -x) };
    for (const each of [sheet, mirrored]) {
      const points = pointsOf(outline(each, borderOf(each, 0.01)));
      const loop = { x: points.map(([x]) => x), y: points.map(([, y]) => y) };
      expect(areaOf([loop])).toBe(400);
    }
  });
});

// The mean of cos(ω sin φ) over a turn is Bessel's J₀(ω), so cloth of length 1 that swings to ω
// takes J₀(ω) of width. J₀(0.5) = 0.93847, J₀(1) = 0.76520, J₀(1.5) = 0.51183: Abramowitz and
// Stegun, Handbook of Mathematical Functions (1964), table 9.1 (five digits from memory).
test.each([
  [0.5, 0.93847],
  [1, 0.7652],
  [1.5, 0.51183],
])('cloth that swings to %d rad gathers to J0 of it', (swing, width) => {
  const { x, z, columns } = clothSurface(
    {
      flanks: 4,
      first: 1,
      cloth: () => 1,
      swing: () => swing,
      place: (across, out, v) => [across, v, out],
    },
    2,
  );
  let length = 0;
  for (let i = 1; i < columns; i++) {
    length += Math.hypot((x[i] ?? 0) - (x[i - 1] ?? 0), (z[i] ?? 0) - (z[i - 1] ?? 0));
  }
  expect(1 / length).toBeCloseTo(width, 4);
});

describe('tones', () => {
  // IEC 61966-2-1: half the light of white is 188 of 255 (0.5 → 1.055 · 0.5^(1/2.4) − 0.055).
  test('are mixed as light', () => {
    expect(blendLight('#000000', '#ffffff', 0.5)).toBe('#bcbcbc');
    expect(blendLight('#123456', '#abcdef', 0)).toBe('#123456');
    expect(blendLight('#123456', '#abcdef', 1)).toBe('#abcdef');
    expect(blendLight('red', '#808080', 0.3)).toBe('#808080');
    expect(relativeLuminance('#ffffff')).toBeCloseTo(1, 6);
  });

  const ladder = LADDER_STEPS.map((step, at) => ({
    step,
    hex: `#${(250 - at * 40).toString(16).repeat(3)}`,
    share: [0.05, 0.15, 0.4, 0.2, 0.15, 0.05][at] ?? 0,
    reachable: true,
  }));

  test('fall as the light falls, from the highlight to the deepest fold', () => {
    const sheets = hangGarment(3, 'one peg', 'small', 0).lengths.flatMap(({ pieces }) => pieces);
    const tone = toneMapOf(
      sheets,
      ladder.map(({ share }) => share),
    );
    let last = -1;
    for (let light = 1.2; light > -0.4; light -= 0.01) {
      const place = tone(light);
      expect(place).toBeGreaterThanOrEqual(last);
      last = place;
    }
    expect(tone(2)).toBe(0);
    expect(tone(-2)).toBe(5);
  });

  test('between two steps lie between their colours', () => {
    expect(ladderColourAt(ladder, 2)).toBe(ladder[2]?.hex);
    const between = relativeLuminance(ladderColourAt(ladder, 2.5));
    expect(between).toBeLessThan(relativeLuminance(ladder[2]?.hex ?? ''));
    expect(between).toBeGreaterThan(relativeLuminance(ladder[3]?.hex ?? ''));
    expect(ladderColourAt(ladder, 5)).toBe(ladder[5]?.hex);
  });
});

test.each(['one peg', 'two pegs', 'strip'] as const)(
  'cloth hung by %s stays in its room',
  (how) => {
    for (let seed = 0; seed < 12; seed++) {
      for (const [width, height] of [
        [90, 120],
        [300, 400],
        [620, 380],
      ] as const) {
        const { lengths, pegs } = hangGarment(seed, how, 'small', 0, { width, height });
        expect(pegs).toHaveLength(how === 'two pegs' ? 2 : 1);
        const pieces = lengths.flatMap((length) => length.pieces);
        expect(Math.min(...lengths.map((length) => length.pieces.length))).toBeGreaterThan(0);
        for (const { x, y } of pieces) expect([x.length > 3, y.length]).toEqual([true, x.length]);
        const outside = (places: Float64Array, least: number, most: number) =>
          places.filter((place) => !(place >= least - 0.01 && place <= most + 0.01)).length;
        expect(pieces.filter(({ x }) => outside(x, 0, width) > 0)).toHaveLength(0);
        expect(pieces.filter(({ y }) => outside(y, -6, height) > 0)).toHaveLength(0);
      }
    }
  },
);
