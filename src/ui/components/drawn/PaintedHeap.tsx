import { useMemo, useRef } from 'preact/hooks';
import { type HeapShapes, heapShapes } from '../../../drawing/cloth-and-heap-shapes.ts';
import type { DrawnLadder } from '../../../drawing/drawn-ladder.ts';
import { blendLight, relativeLuminance } from '../../../drawing/light-blend.ts';
import { ladderColourAt } from '../../../drawing/tone-shapes.ts';
import { LADDER_STEPS } from '../../../harmony/harmony.ts';
import { isGamutMapped } from '../../state/screen-colour.ts';
import { useScheduledDrawing } from './draw-queue.ts';
import { GamutMark } from './GamutMark.tsx';
import { createShapeCache, type ShapeCache } from './shape-cache.ts';

/** Share of a heap that each tone takes, lightest first. */
const SHARES = [0.012, 0.12, 0.56, 0.18, 0.09, 0.038] as const;

/**
 * Tones of a heap round its body colour, with a little gloss and shadow. The body colour dominates.
 */
function bodyLadder(hex: string): DrawnLadder {
  // Gloss that suits white would be too strong on black.
  const gloss = 0.35 + 0.65 * Math.sqrt(relativeLuminance(hex));
  const tones = [
    blendLight(hex, '#ffffff', 0.4 * gloss),
    blendLight(hex, '#ffffff', 0.08 * gloss),
    hex,
    blendLight(hex, '#000000', 0.1),
    blendLight(hex, '#000000', 0.26),
    blendLight(hex, '#000000', 0.48),
  ];
  return LADDER_STEPS.map((step, at) => ({
    step,
    hex: tones[at] ?? hex,
    share: SHARES[at] ?? 0,
    reachable: true,
  }));
}

interface Heap {
  readonly hex: string;
  readonly seed: number;
  readonly radius: number;
}

/** Cached shapes of heaps. They depend on seed and size, not on colour. */
const heaps: ShapeCache<Heap, HeapShapes> = createShapeCache(
  'heap',
  90,
  ({ seed, radius }: Heap) => ({ seed, radius, shares: SHARES }),
  heapShapes,
);

/** A heap of paint round (0, 0), as a group inside a drawing. @param radius drawing units */
export function PaintedHeap({ hex, seed, radius }: Heap) {
  const wanted = useMemo(() => ({ hex, seed, radius }), [hex, seed, radius]);
  const place = useRef<SVGGElement>(null);
  const drawn = useScheduledDrawing(wanted, heaps, place);
  const nodes = useMemo(() => drawn && painted(drawn), [drawn]);
  return <g ref={place}>{nodes}</g>;
}

function painted(one: Heap) {
  const { masses, base } = heaps.get(one);
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
          <path key={mass.place} d={mass.d} fill={ladderColourAt(ladder, mass.place)} />
        ))}
      </g>
      {isGamutMapped(one.hex) ? (
        <GamutMark x={one.radius} y={-one.radius} size={Math.max(7, one.radius / 3)} />
      ) : null}
    </g>
  );
}

/** Radius of a heap whose area is proportional to its amount. @param unit radius for amount 1 */
export const heapRadius = (amount: number, unit: number) => unit * Math.sqrt(Math.max(0, amount));
