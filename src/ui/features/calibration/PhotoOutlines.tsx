import type { Point } from '../../../calibration/homography.ts';

/** One outline over a photograph: its corners in fractions of width and height, and its number. */
export interface Outline {
  readonly words: string;
  readonly corners: readonly Point[];
}

/** Outlines over a photograph: white with a black edge, to be visible on any paint. */
export function PhotoOutlines({
  outlines,
  width,
  height,
}: {
  outlines: readonly Outline[];
  width: number;
  height: number;
}) {
  const unit = Math.max(width, height) / 400;
  return (
    <svg class="swatch-over" viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      {outlines.map(({ words, corners }) => {
        const points = corners.map(([x, y]) => `${x * width},${y * height}`).join(' ');
        const [cx, cy] = [0, 1].map(
          (axis) => corners.reduce((sum, corner) => sum + corner[axis]!, 0) / corners.length,
        );
        return (
          <g key={words}>
            <polygon points={points} fill="none" stroke="#000" stroke-width={2.6 * unit} />
            <polygon points={points} fill="none" stroke="#fff" stroke-width={1.1 * unit} />
            <text
              x={cx! * width}
              y={cy! * height}
              font-size={11 * unit}
              text-anchor="middle"
              dominant-baseline="central"
              fill="#fff"
              stroke="#000"
              stroke-width={2.2 * unit}
              paint-order="stroke"
            >
              {words}
            </text>
          </g>
        );
      })}
    </svg>
  );
}
