import { below, blob, ground, type Scene, type Shape, stroke } from './specimen-canvas.ts';
import { clouds, stream } from './specimen-noise.ts';
import { sampleScenes } from './specimen-samples.ts';

const DEG = Math.PI / 180;

/** One of a kingcup's five petals: round, hollow, bright towards its edge. */
function petal(x0: number, y0: number, size: number, turnDeg: number, flat: number): Shape {
  const [c, s] = [Math.cos(turnDeg * DEG), Math.sin(turnDeg * DEG)];
  const local = (x: number, y: number): [number, number] => {
    const [dx, dy] = [x - x0, (y - y0) / flat];
    return [(dx * c + dy * s) / size, (dy * c - dx * s) / size];
  };
  return {
    thing: 2,
    box: [x0 - size, y0 - size, x0 + size, y0 + size],
    inside: (x, y) => {
      const [t, v] = local(x, y);
      return ((t - 0.56) / 0.44) ** 2 + (v / (0.45 - 0.14 * (1 - t))) ** 2 < 1;
    },
    light: (x, y) => {
      const [t, v] = local(x, y);
      const hollow = 0.62 + 0.5 * t - 0.55 * (v * 1.6) ** 2;
      const veins = 1 + 0.05 * Math.sin((v / (0.3 + t)) * 70);
      // The light comes from the upper left.
      return hollow * veins * (1 - 0.22 * (c * 0.6 + s * 0.8));
    },
    gloss: (x, y) => {
      const [t, v] = local(x, y);
      const d = ((t - 0.72) / 0.14) ** 2 + ((v - 0.1) / 0.07) ** 2;
      return d < 1 ? 0.16 * (1 - d) ** 2 : 0;
    },
  };
}

function flower(x: number, y: number, size: number, turn: number, flat: number): Shape[] {
  const next = stream(Math.round(x * 1000 + y * 77));
  const shapes = [0, 144, 288, 72, 216].map((angle) =>
    petal(x, y, size * (0.94 + 0.1 * next()), turn + angle + 9 * (next() - 0.5), flat),
  );
  // Stamens stand in a ring, each a short stroke with a lit tip.
  for (let i = 0; i < 46; i++) {
    const angle = next() * 360 * DEG;
    const r = size * (0.08 + 0.17 * Math.sqrt(next()));
    const [ex, ey] = [x + r * Math.cos(angle), y + r * Math.sin(angle) * flat - 0.006];
    shapes.push(stroke(3, [x, y + 0.004], [ex, ey], size * 0.012, size * 0.022, 0.05));
  }
  shapes.push(blob(4, x, y - 0.002, size * 0.07, size * 0.06 * flat, 0.3, 5));
  return shapes;
}

/** A kidney-shaped leaf with veins that part from its stalk. */
function round(x0: number, y0: number, r: number, turnDeg: number, bright: number): Shape {
  const [c, s] = [Math.cos(turnDeg * DEG), Math.sin(turnDeg * DEG)];
  const polar = (x: number, y: number): [number, number] => {
    const [dx, dy] = [x - x0, (y - y0) / 0.72];
    const [u, v] = [(dx * c + dy * s) / r, (dy * c - dx * s) / r];
    return [Math.hypot(u, v), Math.atan2(v, u)];
  };
  return {
    thing: 1,
    box: [x0 - r * 1.1, y0 - r, x0 + r * 1.1, y0 + r],
    inside: (x, y) => {
      const [d, angle] = polar(x, y);
      const teeth = 1 + 0.03 * Math.sin(angle * 23);
      return d < teeth * (1 - 0.95 * Math.exp(-((Math.PI - Math.abs(angle)) ** 2) / 0.09));
    },
    light: (x, y) => {
      const [d, angle] = polar(x, y);
      const vein = Math.abs(Math.sin(angle * 4.5)) < 0.09 ? 1.3 : 1;
      const side = 0.72 + 0.34 * Math.cos(angle - 2.1);
      return bright * vein * side * (0.75 + 0.3 * d) * (1 + 0.08 * Math.sin(angle * 23 + d * 30));
    },
  };
}

/** Kingcups that flower a second time, in September, at the foot of a weir. */
function kingcup(): Scene {
  const flow = (x: number, y: number) =>
    0.75 + 0.5 * clouds(x * 2.6 - y * 1.2, y * 13, 71, 3) + 0.25 * clouds(x * 9, y * 34, 72, 2);
  const foam = (x: number, y: number) =>
    clouds(x * 5 - y * 2, y * 17, 73, 4) + 0.5 * clouds(x * 17, y * 31, 74, 2);
  return {
    name: 'kingcup',
    seed: 53,
    aspect: 1.4,
    things: [
      { name: 'peat water', lab: [30, 8, 16], wander: 3, texture: [0.1, 30] },
      { name: 'leaves', lab: [47, -27, 32], wander: 5, texture: [0.06, 70] },
      { name: 'petals', lab: [84, 6, 84], wander: 2, texture: [0.03, 90] },
      { name: 'stamens', lab: [70, 18, 72], wander: 3 },
      { name: 'seed heads', lab: [62, -12, 52], wander: 2 },
      { name: 'foam', lab: [90, -2, 3], wander: 1, texture: [0.08, 80] },
      { name: 'sky in the water', lab: [66, -6, -14], wander: 3, texture: [0.08, 40] },
    ],
    shapes: [
      { ...ground(0), light: flow },
      {
        thing: 6,
        box: [0, 0, 9, 0.62],
        inside: (x, y) => clouds(x * 2, y * 19, 75, 3) + 0.9 * (x - 0.75) - 1.4 * y > -0.25,
        light: flow,
      },
      {
        thing: 5,
        box: [0, 0, 9, 0.34],
        inside: (x, y) => foam(x, y) > 0.08 + 2.6 * Math.max(0, y - 0.1 - 0.05 * x),
        light: (x, y) => 0.72 + 0.45 * foam(x, y),
      },
      ...(
        [
          [0.1, 0.98, 0.3, 20, 0.62],
          [0.62, 1.02, 0.32, -30, 0.7],
          [1.28, 0.95, 0.3, 200, 0.66],
          [0.3, 0.74, 0.2, 150, 0.86],
          [1.02, 0.83, 0.22, -15, 0.92],
          [0.66, 0.7, 0.16, 70, 0.78],
          [0.06, 0.6, 0.15, 100, 0.8],
          [1.3, 0.6, 0.13, 190, 0.86],
        ] as const
      ).map(([x, y, r, turn, bright]) => round(x, y, r, turn, bright)),
      ...(
        [
          [0.5, 1.0, 0.46, 0.5],
          [0.62, 1.0, 0.86, 0.44],
          [0.8, 1.05, 0.7, 0.72],
        ] as const
      ).map(([x0, y0, x1, y1]) => stroke(1, [x0, y0], [x1, y1], 0.011, 0.008, 0.05)),
      ...flower(0.45, 0.46, 0.21, -20, 0.86),
      ...flower(0.87, 0.39, 0.19, 25, 0.72),
      ...flower(0.72, 0.72, 0.16, 50, 0.9),
    ],
    light: (x, y) => 1.1 - 0.2 * ((x - 0.55) ** 2 + (y - 0.45) ** 2),
    camera: { bloom: 0.06, blur: 1, noise: 0.009, jpeg: 78 },
  };
}

/** The mill pond after sunset: alders, their reflection, one window that is lit. */
function pond(): Scene {
  const shore = (x: number) => 0.52 + 0.012 * clouds(x * 4, 0.5, 81, 3);
  const crown = (x: number, y: number, x0: number, top: number, wide: number, seed: number) =>
    y > top &&
    Math.abs(x - x0) <
      wide * Math.min(1, ((y - top) / 0.2) ** 0.6) * (1 + 0.5 * clouds(x * 9, y * 12, seed, 4));
  const wood = (x: number, y: number) =>
    crown(x, y, 0.02, 0.06, 0.19, 82) ||
    crown(x, y, 0.3, 0.27, 0.12, 83) ||
    crown(x, y, 1.38, 0.1, 0.17, 84) ||
    crown(x, y, 1.16, 0.33, 0.11, 85) ||
    y > 0.47 + 0.03 * clouds(x * 6, 0.5, 86, 4);
  /** Where the water shows what stands above it; ripples carry it to and fro. */
  const mirrored = (x: number, y: number): [number, number] => [
    x + 0.02 * clouds(x * 3, y * 60, 87, 2) * Math.min(1, (y - 0.5) * 5),
    2 * shore(x) - y,
  ];
  const glow = (y: number) => Math.max(0, 1 - Math.abs(y - 0.47) / 0.16);
  const isGlow = (x: number, y: number) => glow(y) + 0.3 * clouds(x * 1.6, y * 12, 88, 4) > 0.42;
  const wall = (x: number, y: number) => x > 0.62 && x < 0.86 && y > 0.4 && y < 0.55;
  const roof = (x: number, y: number) =>
    y > 0.31 && y <= 0.4 && Math.abs(x - 0.74) < 0.06 + 0.85 * (y - 0.31);
  const pane = (x: number, y: number) => Math.abs(x - 0.7) < 0.018 && Math.abs(y - 0.465) < 0.026;
  const everywhere = [0, 0, 9, 9] as const;
  const water = (thing: number, test: (x: number, y: number) => boolean, dim: number): Shape => ({
    thing,
    box: everywhere,
    inside: (x, y) => y > shore(x) && test(...mirrored(x, y)),
    light: (x, y) => dim * (1 + 0.3 * clouds(x * 3, y * 70, 89, 2)),
  });
  return {
    name: 'mill-pond',
    seed: 67,
    aspect: 1.4,
    things: [
      { name: 'evening sky', lab: [50, 4, -27], wander: 2 },
      { name: 'afterglow', lab: [68, 22, 34], wander: 4 },
      { name: 'alders', lab: [15, -4, 3], wander: 2, texture: [0.25, 60] },
      { name: 'mill', lab: [26, 5, -4], wander: 1, texture: [0.1, 60] },
      { name: 'window', lab: [82, 14, 58] },
      { name: 'reeds', lab: [30, -3, 15], wander: 2, texture: [0.2, 70] },
    ],
    shapes: [
      { ...ground(0), light: (_, y) => 0.62 + 0.75 * Math.min(0.6, y) },
      { thing: 1, box: everywhere, inside: isGlow, light: (_, y) => 0.7 + 0.5 * glow(y) },
      { thing: 2, box: everywhere, inside: wood },
      { thing: 3, box: everywhere, inside: (x, y) => wall(x, y) || roof(x, y) },
      { thing: 4, box: everywhere, inside: pane },
      water(0, () => true, 0.66),
      water(1, isGlow, 0.7),
      water(2, wood, 0.9),
      water(3, (x, y) => wall(x, y) || roof(x, y), 0.75),
      water(4, (x, y) => Math.abs(x - 0.7) < 0.014 && y > 0.38 && y < 0.5, 0.6),
      ...Array.from({ length: 34 }, (_, i) => {
        const x = -0.05 + i * 0.016 + 0.01 * Math.sin(i * 5);
        const tall = 0.18 + 0.12 * Math.abs(Math.sin(i * 2.7));
        return stroke(5, [x, 1.02], [x + 0.05, 1 - tall], 0.004, 0.0015, 0.06);
      }),
      below(5, 0.965, 0.05, 5, 90),
    ],
    camera: { bloom: 0.07, blur: 1.1, noise: 0.012, jpeg: 80 },
  };
}

/** Five specimens of a week's walks along a mill stream in September. */
export function walkScenes(): Scene[] {
  const [jay, rowan, wall] = sampleScenes();
  return [kingcup(), jay!, wall!, rowan!, pond()];
}
