import { useId } from 'preact/hooks';
import type { GarmentDrawingInput } from '../../../drawing/painted-garment.ts';
import { Hatching, PaintedCloth } from './PaintedCloth.tsx';

/** One garment as a complete picture with a text alternative; scales to its container. */
export function FramedCloth({
  words,
  unit = 10,
  class: className,
  ...garment
}: GarmentDrawingInput & {
  /** Pieces of the text alternative; empty ones are left out. */
  readonly words: readonly string[];
  /** Scale of the hatching, in tenths of a drawing unit. */
  readonly unit?: number;
  readonly class?: string | undefined;
}) {
  const id = useId();
  return (
    <svg
      class={className}
      viewBox={`0 0 ${garment.width} ${garment.height}`}
      role="img"
      aria-labelledby={`${id}-title`}
      style={{ display: 'block', width: '100%', height: 'auto', forcedColorAdjust: 'none' }}
    >
      <title id={`${id}-title`}>{words.filter(Boolean).join(', ')}</title>
      <defs>
        <Hatching id={`${id}-hatch`} unit={unit} />
      </defs>
      <PaintedCloth hatching={`${id}-hatch`} {...garment} />
    </svg>
  );
}
