import { ball, blob, ground, leaf, type Scene, type Shape, stroke } from './specimen-canvas.ts';
import { clouds, stream } from './specimen-noise.ts';

const DEG = Math.PI / 180;

/** A jay's feather on moss: blue bars, black bars, a white edge, a fallen berry. */
function jay(): Scene {
  const turn = -24 * DEG;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  /** Along the quill 0…1, across it in half-widths. */
  const local = (x: number, y: number): [number, number] => {
    const [dx, dy] = [x - 0.17, y - 0.72];
    const t = (dx * c + dy * s) / 1.06;
    const bend = 0.07 * Math.sin(Math.PI * t);
    return [t, (dy * c - dx * s + bend) / 0.19];
  };
  const edge = (t: number): number =>
    t < 0 || t > 1
      ? 0
      : Math.min(1, (t / 0.3) ** 0.6) *
        Math.sqrt(Math.max(0, 1 - (Math.max(0, t - 0.3) / 0.7) ** 2.6));
  const vane = (x: number, y: number): [number, number, boolean] => {
    const [t, v] = local(x, y);
    const ragged =
      0.05 * clouds(t * 60, v * 2, 5, 2) -
      0.3 * Math.max(0, clouds(t * 24 - Math.abs(v) * 4, 0.5, 4, 2) - 0.42);
    return [t, v, Math.abs(v) < edge(t) * (1 + ragged)];
  };
  /** Barbs run slantwise from the quill. */
  const barbs = (t: number, v: number) =>
    (0.86 + 0.14 * Math.sin((t - Math.abs(v) * 0.16) * 620)) *
    (0.95 - 0.4 * Math.abs(v + 0.05) ** 2);
  const shape = (
    thing: number,
    test: (t: number, v: number) => boolean,
    light: (t: number, v: number) => number,
  ): Shape => ({
    thing,
    box: [0, 0, 9, 9],
    inside: (x, y) => {
      const [t, v, within] = vane(x, y);
      return within && test(t, v);
    },
    light: (x, y) => {
      const [t, v] = local(x, y);
      return light(t, v) * barbs(t, v);
    },
  });
  const bar = (t: number, v: number) =>
    (t - Math.abs(v) * 0.14) * 17 + 0.25 * clouds(t * 9, v * 3, 8, 2);
  /** The ragged end of the white down at the quill. */
  const down = (t: number, v: number) => 0.03 * clouds(v * 14, t * 3, 9, 3);
  const shadow = (x: number, y: number) => {
    const [t, v] = local(x - 0.016, y - 0.03);
    const e = edge(t);
    if (e === 0) return 1;
    const d = Math.abs(v) / e;
    return d > 1.25 ? 1 : d < 0.95 ? 0.35 : 0.35 + (0.65 * (d - 0.95)) / 0.3;
  };
  const shapes: Shape[] = [
    { thing: 0, box: [0, 0, 9, 9], inside: () => true, light: shadow },
    { ...blob(1, 1.22, 0.83, 0.19, 0.12, 0.35, 31, 20), light: shadow },
    { ...leaf(1, [-0.06, 0.2], 0.52, 0.13, 18, 0.95) },
    { ...leaf(1, [0.98, 0.12], 0.42, 0.1, 152, 0.85) },
    shape(
      4,
      () => true,
      (t, v) => 0.72 + 0.38 * (v < 0 ? 1 : 0.62) + 0.1 * Math.sin(t * 9),
    ),
    shape(
      2,
      (t, v) => v < -0.02 && t > 0.2 + down(t, v),
      (t, v) => {
        const phase = bar(t, v) - Math.floor(bar(t, v));
        return (
          (0.3 + 0.95 * phase) *
          (0.85 + 0.25 * Math.sin(t * 7)) *
          (1 - 0.35 * Math.max(0, -v - 0.55))
        );
      },
    ),
    shape(
      3,
      (t, v) => v < -0.02 && t > 0.2 + down(t, v) && bar(t, v) - Math.floor(bar(t, v)) < 0.3,
      (_, v) => 1 + 0.5 * (1 + v),
    ),
    shape(
      3,
      (t, v) => v > 0.03 && t > 0.28 + down(t, v) + 0.16 * v,
      (t, v) => 0.65 + 1.1 * (1 - v) ** 2 * (0.55 + 0.45 * Math.sin(t * 14 + v * 4)),
    ),
    { ...stroke(4, [0.06, 0.77], [1.12, 0.27], 0.0075, 0.002, -0.056), light: () => 0.85 },
    ball(5, 1.0, 0.84, 0.026, 0.25),
    ball(5, 1.055, 0.868, 0.022, 0.25),
  ];
  return {
    name: 'jay-feather',
    seed: 11,
    aspect: 1.4,
    things: [
      {
        name: 'moss',
        lab: [45, -13, 33],
        wander: 6,
        texture: [0.5, 90],
        folds: { deep: 0.35, high: 1.1, often: 3.2, bend: 1, turnDeg: 35 },
      },
      {
        name: 'dead leaf',
        lab: [56, 19, 38],
        wander: 4,
        texture: [0.14, 40],
        folds: { deep: 0.55, high: 1.1, often: 3, bend: 0.6 },
      },
      { name: 'blue bars', lab: [64, -10, -38], wander: 4, texture: [0.06, 90] },
      { name: 'black bars', lab: [16, 1, -4], wander: 1.5, texture: [0.16, 80] },
      { name: 'white edge', lab: [89, 0, 3], wander: 1.5, texture: [0.08, 90] },
      { name: 'berry', lab: [43, 60, 36], wander: 3, texture: [0.05, 60] },
    ],
    shapes,
    light: (x, y) => 1.08 - 0.3 * ((x - 0.6) ** 2 + (y - 0.45) ** 2),
    camera: { bloom: 0.05, blur: 0.9, noise: 0.014, jpeg: 84 },
  };
}

/** A rowan branch before a hazy sky: clusters of berries, feathered leaves, a few turned yellow. */
function rowan(): Scene {
  const shapes: Shape[] = [ground(0)];
  const next = stream(77);
  const frond = (x: number, y: number, turn: number, size: number, yellow: number) => {
    const [c, s] = [Math.cos(turn * DEG), Math.sin(turn * DEG)];
    shapes.push({ ...stroke(2, [x, y], [x + size * c, y + size * s], 0.004, 0.002, 0.05) });
    for (let i = 1; i <= 6; i++)
      for (const side of [-1, 1]) {
        const at = (size * i) / 6.4;
        const length = size * (0.42 - 0.035 * Math.abs(i - 3));
        const kind = next() < yellow ? 4 : 1;
        shapes.push(
          leaf(
            kind,
            [x + at * c, y + at * s],
            length,
            length * 0.2,
            turn + side * (58 - 4 * i) + 8 * (next() - 0.5),
            0.62 + 0.55 * next(),
          ),
        );
      }
    shapes.push(
      leaf(
        next() < yellow ? 4 : 1,
        [x + size * 0.97 * c, y + size * 0.97 * s],
        size * 0.36,
        size * 0.075,
        turn,
        0.95,
      ),
    );
  };
  const bunch = (x: number, y: number, n: number, spread: number) => {
    const berries: [number, number, number][] = [];
    for (let i = 0; i < n; i++) {
      const angle = next() * 360 * DEG;
      const r = spread * Math.sqrt(next());
      berries.push([
        x + r * Math.cos(angle) * 1.25,
        y + r * Math.sin(angle) * 0.85 + 0.02,
        0.021 + 0.006 * next(),
      ]);
    }
    for (const [bx, by] of berries)
      shapes.push(stroke(2, [x, y - spread * 1.2], [bx, by], 0.003, 0.002, 0.04));
    berries.sort((p, q) => p[1] - q[1]);
    for (const [bx, by, r] of berries) {
      const shade = 0.72 + 0.4 * next();
      const one = ball(3, bx, by, r, 0.16);
      shapes.push({ ...one, light: (u, v) => shade * one.light!(u, v) });
    }
  };
  shapes.push({ ...stroke(2, [-0.05, 0.2], [1.5, 0.34], 0.026, 0.012, 0.05) });
  shapes.push({ ...stroke(2, [0.55, 0.3], [0.78, 0.02], 0.012, 0.006, 0.06) });
  frond(0.2, 0.25, 118, 0.5, 0.05);
  frond(0.68, 0.12, -32, 0.42, 0.1);
  frond(0.42, 0.29, -118, 0.32, 0.05);
  frond(1.0, 0.34, 62, 0.5, 0.35);
  frond(0.72, 0.33, 100, 0.5, 0.08);
  frond(1.2, 0.36, 14, 0.3, 0.5);
  frond(0.02, 0.22, 160, 0.3, 0);
  bunch(0.46, 0.55, 34, 0.1);
  bunch(0.93, 0.63, 26, 0.085);
  bunch(0.28, 0.42, 12, 0.055);
  return {
    name: 'rowan-branch',
    seed: 23,
    aspect: 1.4,
    things: [
      {
        name: 'sky',
        lab: [79, -4, -12],
        wander: 3,
        folds: { deep: 0.72, high: 1.06, often: 0.7, bend: 1 },
      },
      { name: 'leaves', lab: [50, -25, 36], wander: 6, texture: [0.1, 50] },
      { name: 'bark', lab: [43, 5, 9], wander: 2, texture: [0.22, 70] },
      { name: 'berries', lab: [52, 60, 50], wander: 5, texture: [0.05, 40] },
      { name: 'turned leaves', lab: [76, 5, 64], wander: 4, texture: [0.08, 50] },
    ],
    shapes,
    camera: { bloom: 0.06, blur: 1.1, noise: 0.012, jpeg: 86 },
  };
}

/** A wall of grey stones in low light: orange lichen, pale lichen, moss in the joints, a red mite. */
function wall(): Scene {
  const next = stream(5);
  const stones: { x: number; y: number; tilt: number; up: number }[] = [];
  for (let row = 0; row < 6; row++)
    for (let column = 0; column < 6; column++)
      stones.push({
        x: (column + 0.5 * (row % 2) + 0.35 * (next() - 0.5)) * 0.31 - 0.1,
        y: (row + 0.5 + 0.3 * (next() - 0.5)) * 0.185 - 0.04,
        tilt: next() - 0.5,
        up: 0.8 + 0.35 * next(),
      });
  /** Nearest stone and how far the joint is, 0 in the joint. */
  const stoneAt = (x: number, y: number) => {
    const u = x + 0.025 * clouds(x * 5, y * 5, 41, 3);
    const v = y + 0.022 * clouds(x * 5, y * 5, 42, 3);
    let [first, second] = [9, 9];
    let which = stones[0]!;
    for (const stone of stones) {
      const d = Math.hypot((u - stone.x) * 0.62, v - stone.y);
      if (d < first) {
        second = first;
        first = d;
        which = stone;
      } else if (d < second) second = d;
    }
    return { which, joint: second - first };
  };
  const relief = (x: number, y: number) => {
    const { which, joint } = stoneAt(x, y);
    const round = Math.min(1, joint / 0.05);
    const slope = (stoneAt(x - 0.006, y - 0.006).joint - joint) * 16;
    return which.up * (0.35 + 0.65 * round) * Math.max(0.25, 1 + which.tilt * 0.3 - slope * 2.2);
  };
  const crust = (thing: number, x: number, y: number, r: number, seed: number): Shape => {
    const one = blob(thing, x, y, r, r * 0.85, 0.6, seed);
    return {
      ...one,
      inside: (u, v) => one.inside(u, v) && clouds(u * 26, v * 26, seed + 3, 3) > -0.42,
      light: (u, v) => relief(u, v) * (0.92 + 0.3 * clouds(u * 34, v * 34, seed + 5, 2)),
    };
  };
  const shapes: Shape[] = [
    { thing: 0, box: [0, 0, 9, 9], inside: () => true, light: relief },
    {
      thing: 1,
      box: [0, 0, 9, 9],
      inside: (x, y) => stoneAt(x, y).joint < 0.017 + 0.012 * clouds(x * 7, y * 7, 44, 3),
      light: (x, y) => 0.45 + 0.5 * (0.5 + 0.5 * clouds(x * 16, y * 16, 45, 3)),
    },
  ];
  for (let i = 0; i < 12; i++)
    shapes.push(crust(3, next() * 1.4, next(), 0.03 + 0.06 * next(), 300 + i * 7));
  for (let i = 0; i < 10; i++)
    shapes.push(crust(2, next() * 1.4, next() ** 1.3, 0.025 + 0.075 * next(), 500 + i * 7));
  shapes.push(ball(4, 0.655, 0.415, 0.0175, 0.3), ball(4, 0.672, 0.43, 0.014, 0.3));
  return {
    name: 'lichened-wall',
    seed: 37,
    aspect: 1.4,
    things: [
      { name: 'stone', lab: [56, 0, -3], wander: 2, texture: [0.2, 75] },
      { name: 'moss', lab: [33, -14, 25], wander: 4, texture: [0.3, 90] },
      { name: 'orange lichen', lab: [66, 22, 62], wander: 5, texture: [0.16, 90] },
      { name: 'pale lichen', lab: [83, -8, 12], wander: 2, texture: [0.1, 80] },
      { name: 'mite', lab: [45, 62, 40], wander: 2, texture: [0.06, 60] },
    ],
    shapes,
    light: (x, y) => 1.12 - 0.28 * x + 0.06 * y,
    camera: { bloom: 0.04, blur: 0.9, noise: 0.013, jpeg: 80 },
  };
}

/** Three specimens of our own that stand in samples/. */
export const sampleScenes = (): Scene[] => [jay(), rowan(), wall()];
