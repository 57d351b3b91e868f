import { useId } from 'preact/hooks';
import { partsWords } from './alternative-text.ts';
import { heapRadius, PaintedHeap } from './PaintedHeap.tsx';

interface PileProps {
  /** Pigment or colour: the start of the text alternative. */
  readonly name: string;
  /** #rrggbb. */
  readonly hex: string;
  /** Amount in parts; the heap's area is proportional to it. */
  readonly parts: number;
  /** Parts that fill the drawing; default: `parts`. */
  readonly of?: number | undefined;
  readonly seed: number;
  readonly class?: string | undefined;
}

/** One heap of paint with marks of the knife. */
export function Pile({ name, hex, parts, of = parts, seed, ...rest }: PileProps) {
  const id = useId();
  return (
    <svg
      class={rest.class}
      viewBox="-60 -60 120 120"
      role="img"
      aria-labelledby={`${id}-title`}
      style={{ display: 'block', width: '100%', height: 'auto', forcedColorAdjust: 'none' }}
    >
      <title id={`${id}-title`}>{`${name}: a pile of paint, ${partsWords(parts)}`}</title>
      <PaintedHeap
        hex={hex}
        seed={seed}
        radius={of > 0 ? heapRadius(Math.min(parts, of) / of, 48) : 0}
      />
    </svg>
  );
}
