import { useMemo } from 'preact/hooks';
import { STEPS } from '../../harmony/harmony.ts';
import { blend, brightness } from './blend.ts';
import type { DrawnLadder } from './drawn.ts';
import { heap } from './heap.ts';
import { keeping } from './kept.ts';
import { colourAt, type Mass, massesOf } from './mass.ts';
import { borderOf, outline } from './path.ts';
import { toneOf } from './tone.ts';
import { useTurn } from './turn.ts';

/** The body colour with a little gloss and a little shadow: how the colour is seen stays with its body. */
export function bodyLadder(hex: string): DrawnLadder {
  // The same gloss that sits well on white would blind on black.
  const gloss = 0.35 + 0.65 * Math.sqrt(brightness(hex));
  const tones = [
    blend(hex, '#ffffff', 0.4 * gloss),
    blend(hex, '#ffffff', 0.08 * gloss),
    hex,
    blend(hex, '#000000', 0.1),
    blend(hex, '#000000', 0.26),
    blend(hex, '#000000', 0.48),
  ];
  const shares = [0.012, 0.12, 0.56, 0.18, 0.09, 0.038];
  return STEPS.map((step, at) => ({
    step,
    hex: tones[at] ?? hex,
    share: shares[at] ?? 0,
    reachable: true,
  }));
}

interface Heap {
  readonly hex: string;
  readonly seed: number;
  readonly radius: number;
}
const shapedBefore = keeping<{ readonly masses: readonly Mass[]; readonly base: string }>(60);
const shapeName = ({ seed, radius }: Heap) => `${seed} ${radius}`;
const isShaped = (one: Heap) => shapedBefore.has(shapeName(one));

/** The shapes of a heap's tones: of its seed and size alone, in whatever colour. */
const shapeOf = (one: Heap) =>
  shapedBefore.of(shapeName(one), () => {
    const { seed, radius } = one;
    const shape = heap(seed, radius < 22 ? 25 : 37);
    const sheet = {
      ...shape,
      x: shape.x.map((v) => v * radius),
      y: shape.y.map((v) => v * radius),
    };
    const tone = toneOf([sheet], bodyLadder('#808080'), 1);
    return {
      masses: massesOf(sheet, tone, radius < 22 ? 4 : 6, 0.12),
      base: outline(sheet, borderOf(sheet, 0.12)),
    };
  });

/** A heap of paint of `radius` units round 0, 0, as a group inside a drawing. */
export function PaintedHeap({ hex, seed, radius }: Heap) {
  const wanted = useMemo(() => ({ hex, seed, radius }), [hex, seed, radius]);
  const drawn = useTurn(wanted, isShaped);
  return useMemo(() => drawn && painted(drawn), [drawn]);
}

function painted(one: Heap) {
  const { masses, base } = shapeOf(one);
  const ladder = bodyLadder(one.hex);
  return (
    <g>
      <g fill="#000" fill-opacity="0.07">
        {[1, 2, 3, 4].map((step) => (
          <path
            key={step}
            d={base}
            transform={`translate(${one.radius * 0.035 * step} ${one.radius * 0.04 * step}) scale(0.1)`}
          />
        ))}
      </g>
      <g transform="scale(0.1)">
        {masses.map((mass) => (
          <path key={mass.place} d={mass.d} fill={colourAt(ladder, mass.place)} />
        ))}
      </g>
    </g>
  );
}

/** Radius of a heap whose area on the board is as its amount. */
export const heapRadius = (amount: number, unit: number) => unit * Math.sqrt(Math.max(0, amount));
