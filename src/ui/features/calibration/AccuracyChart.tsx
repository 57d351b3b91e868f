import { useId } from 'preact/hooks';
import type { Accuracy } from '../../../calibration/logged-pile.ts';
import { differenceWords } from '../../../colour/describe-colour.ts';
import { calibrationTexts } from '../../texts/calibration-texts.ts';

const WIDTH = 360;
const HEIGHT = 120;
const LEFT = 86;
const FOOT = 8;
/** Minimum of the scale's upper end, in CIEDE2000, so that all three bands are visible. */
const LEAST_TOP = 6;
const BANDS = [
  [0, 1, calibrationTexts.bandNone],
  [1, 3, calibrationTexts.bandTrained],
] as const;

/** Chart of the prediction error of each pile in order of date, over bands of visibility. */
export function AccuracyChart({ piles }: { piles: Accuracy['piles'] }) {
  const id = useId();
  const worst = Math.max(...piles.map(({ deltaE00 }) => deltaE00));
  const top = Math.max(LEAST_TOP, worst * 1.1);
  // A square-root scale gives small differences, where visibility begins, most of the height.
  const y = (difference: number) =>
    HEIGHT - FOOT - (HEIGHT - 2 * FOOT) * Math.sqrt(difference / top);
  const step = (WIDTH - LEFT - 16) / Math.max(1, piles.length - 1);
  const points = piles.map(({ id: pile, deltaE00 }, i) => ({
    pile,
    x: LEFT + 8 + i * step,
    y: y(deltaE00),
  }));
  return (
    <svg
      class="swatch-chart"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-labelledby={`${id}-title`}
    >
      <title id={`${id}-title`}>
        {calibrationTexts.accuracyChart(
          piles.length,
          calibrationTexts.differs[differenceWords(worst)],
        )}
      </title>
      {BANDS.map(([from, to, words]) => (
        <g key={words}>
          <rect
            x={LEFT}
            y={y(to)}
            width={WIDTH - LEFT}
            height={y(from) - y(to)}
            fill="currentColor"
            fill-opacity={from === 0 ? 0.16 : 0.07}
          />
          <text
            x={LEFT - 6}
            y={(y(from) + y(to)) / 2}
            text-anchor="end"
            dominant-baseline="central"
          >
            {words}
          </text>
        </g>
      ))}
      <text x={LEFT - 6} y={(y(3) + y(top)) / 2} text-anchor="end" dominant-baseline="central">
        {calibrationTexts.bandPlain}
      </text>
      <polyline
        points={points.map((point) => `${point.x},${point.y}`).join(' ')}
        fill="none"
        stroke="currentColor"
        stroke-width="1.2"
      />
      {points.map((point) => (
        <circle key={point.pile} cx={point.x} cy={point.y} r="3.4" fill="currentColor" />
      ))}
    </svg>
  );
}
