import { useId } from 'preact/hooks';
import { seedOf } from '../../drawing/drawing-seed.ts';
import { BrushStroke } from './drawn/BrushStroke.tsx';

/** One brushed-out colour and its description. */
export interface Stroke {
  readonly hex: string;
  readonly words: string;
}

/**
 * A paint brushed out: its masstone, then its tints, side by side.
 * @param label accessible name; without it the drawing is hidden from assistive technology, so the
 *   text beside it must say what it is
 */
export function BrushedPaint({
  strokes,
  name,
  width = 132,
  height = 44,
  label,
}: {
  strokes: readonly Stroke[];
  name: string;
  width?: number;
  height?: number;
  label?: string;
}) {
  const id = useId();
  const seed = seedOf(name);
  // The masstone is widest; each stroke runs slightly under the next.
  const weight = strokes.map((_, i) => (i === 0 ? 1.5 : 1));
  const whole = weight.reduce((sum, one) => sum + one, 0);
  const under = height * 0.16;
  let x = 0;
  const laid = strokes.map((stroke, i) => {
    const room = (width * weight[i]!) / whole;
    const place = { stroke, x, width: room + (i < strokes.length - 1 ? under : 0) };
    x += room;
    return place;
  });
  return (
    // biome-ignore lint/a11y/noSvgWithoutTitle: it has its title wherever it is labelled
    <svg
      class="brushed"
      viewBox={`0 0 ${width} ${height}`}
      role={label ? 'img' : undefined}
      aria-labelledby={label ? `${id}-title` : undefined}
      aria-hidden={label ? undefined : 'true'}
    >
      {label ? <title id={`${id}-title`}>{label}</title> : null}
      {laid.toReversed().map(({ stroke, x: left, width: room }, i) => (
        <BrushStroke
          key={stroke.words}
          hex={stroke.hex}
          seed={seed + 7 * i}
          x={left}
          y={0}
          width={room}
          height={height}
          ends={{ left: left === 0, right: true }}
        />
      ))}
      {strokes.length === 0 && (
        <rect
          x="1"
          y="1"
          width={width - 2}
          height={height - 2}
          rx="4"
          fill="none"
          stroke="var(--line)"
          stroke-width="1.5"
          stroke-dasharray="5 5"
        />
      )}
    </svg>
  );
}
