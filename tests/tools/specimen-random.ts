import { deltaE00 } from '../../src/colour/difference.ts';
import type { Lab } from '../../src/colour/lab.ts';
import { inSrgb } from '../../src/colour/rgb.ts';
import {
  ball,
  below,
  blob,
  ground,
  type Scene,
  type Shape,
  type Thing,
} from './specimen-canvas.ts';
import { stream } from './specimen-noise.ts';

/**
 * A scene by lot: three to six things of colours that differ by at least CIEDE2000 (kL = 2) 11,
 * about a third of the scenes near grey, in folds; the last is an accent of a thousandth and up.
 * @param hard closer colours, more wander, texture, blur and noise, shadows filled by a blue sky
 */
export function randomScene(seed: number, hard = false): Scene {
  const next = stream(seed * 31 + 7);
  const between = (low: number, high: number) => low + (high - low) * next();
  const grey = next() < 0.35;
  const misty = !grey && next() < 0.15;
  const count = 3 + Math.floor(next() * 4);
  const labs: Lab[] = [];
  for (let tries = 0; labs.length < count && tries < 4000; tries++) {
    const accent = labs.length === count - 1;
    const C = accent ? between(35, 75) : grey ? between(0, 9) : between(2, 55);
    const h = between(0, 2 * Math.PI);
    const lab: Lab = [between(accent ? 35 : 14, 90), C * Math.cos(h), C * Math.sin(h)];
    if (
      inSrgb(lab) &&
      labs.every((other) => deltaE00(lab, other, 2) > (accent ? 20 : hard ? 8.5 : 11))
    )
      labs.push(lab);
  }
  const things: Thing[] = labs.map((lab, i) => ({
    name: `thing ${i + 1}`,
    lab,
    wander: between(0.5, 1 + Math.hypot(lab[1], lab[2]) * (hard ? 0.16 : 0.1)),
    texture: [between(0.02, hard ? 0.4 : 0.25), between(hard ? 15 : 30, 120)],
    folds: {
      deep: between(0.12, 0.6),
      high: between(1, 1.2),
      often: between(1.5, 8),
      turnDeg: between(0, 180),
      bend: between(0.1, 1),
    },
    haze: between(0.7, 1),
  }));
  const shapes: Shape[] = [ground(0)];
  for (let i = 1; i < labs.length - 1; i++) {
    if (next() < 0.4)
      shapes.push(
        below(
          i,
          between(0.35, 0.8),
          between(0.01, 0.12),
          between(1, 5),
          seed + i,
          between(-0.15, 0.15),
        ),
      );
    else
      for (let k = next() < 0.5 ? 1 : 3; k > 0; k--)
        shapes.push(
          blob(
            i,
            between(0.1, 1.3),
            between(0.1, 0.9),
            between(0.1, 0.3),
            between(0.1, 0.28),
            between(0.1, 0.5),
            seed + i * 5 + k,
            between(0, 180),
          ),
        );
  }
  const last = labs.length - 1;
  const r = Math.sqrt((between(0.0011, 0.006) * 1.4) / Math.PI);
  shapes.push(ball(last, between(0.15, 1.25), between(0.15, 0.85), r, between(0.35, 0.7)));
  return {
    name: `by lot ${hard ? 'hard ' : ''}${seed}`,
    seed,
    aspect: 1.4,
    things,
    shapes,
    ...(hard ? { sky: [0.1, 0.13, 0.19] as const } : {}),
    camera: {
      bloom: between(0.02, 0.07),
      blur: between(0.6, hard ? 2.6 : 1.6),
      noise: between(0.005, hard ? 0.04 : 0.02),
      jpeg: Math.round(between(75, 93)),
      ...(misty ? { haze: { lab: [75, 0, -2] as Lab, amount: 0.65 } } : {}),
    },
  };
}
