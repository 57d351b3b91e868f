import { useId } from 'preact/hooks';
import type { FewestStep } from '../../../harmony/fewest-pigments.ts';
import { useWidth } from '../../components/element-width.ts';
import { formatNumber } from '../../state/locale-format.ts';
import { mixtureTexts } from '../../texts/mixture-texts.ts';

/** Height and margins of the chart, px. */
const HEIGHT = 240;
const MARGINS = { left: 40, right: 16, top: 28, bottom: 44 };

/** Tick spacing that gives at most five intervals up to `most`. */
const tickSpacing = (most: number): number =>
  [1, 2, 5, 10, 20, 50].find((one) => most / one <= 5) ?? 50;

/**
 * Line chart of a harmony's largest and mean difference (CIEDE2000) over the number of pigments.
 * @param within permitted difference, CIEDE2000
 * @param enough smallest sufficient number of pigments; null if none suffices
 */
export function PigmentCountChart({
  curve,
  within,
  enough,
}: {
  curve: readonly FewestStep[];
  within: number;
  enough: number | null;
}) {
  const id = useId();
  const { ref, width: room } = useWidth<HTMLDivElement>(560);
  const width = Math.min(620, Math.max(260, room));
  const first = curve[0];
  if (!first) return null;
  const step = tickSpacing(Math.max(first.worst, within));
  const top = Math.ceil(Math.max(first.worst, within * 1.2) / step) * step;
  const [low, high] = [first.count, Math.max(curve.at(-1)!.count, first.count + 1)];
  const x = (count: number) =>
    MARGINS.left + ((width - MARGINS.left - MARGINS.right) * (count - low)) / (high - low);
  const y = (away: number) =>
    HEIGHT - MARGINS.bottom - ((HEIGHT - MARGINS.top - MARGINS.bottom) * away) / top;
  const path = (of: (one: FewestStep) => number) =>
    curve
      .map((one, i) => `${i === 0 ? 'M' : 'L'}${x(one.count).toFixed(1)} ${y(of(one)).toFixed(1)}`)
      .join('');
  const lines = Array.from({ length: Math.floor(top / step) + 1 }, (_, i) => i * step);
  const said = curve.map(({ count, worst }) => `${count}: ${formatNumber(worst, 1)}`).join(', ');
  const near = curve[Math.min(1, curve.length - 1)]!;
  return (
    <div ref={ref} class="mix-curve">
      <svg viewBox={`0 0 ${width} ${HEIGHT}`} role="img" aria-labelledby={`${id}-title`}>
        <title id={`${id}-title`}>{mixtureTexts.curveTitle(said)}</title>
        {lines.map((line) => (
          <g key={line}>
            <path class="mix-grid" d={`M${MARGINS.left} ${y(line)}H${width - MARGINS.right}`} />
            <text x={MARGINS.left - 8} y={y(line) + 4} text-anchor="end">
              {line}
            </text>
          </g>
        ))}
        <path class="mix-allowed" d={`M${MARGINS.left} ${y(within)}H${width - MARGINS.right}`} />
        <text x={MARGINS.left + 6} y={y(within) - 6}>
          {mixtureTexts.curveAllowed}
        </text>
        {enough !== null && (
          <path
            class="mix-enough"
            d={`M${x(enough)} ${MARGINS.top - 6}V${HEIGHT - MARGINS.bottom}`}
          />
        )}
        <path class="mix-line" d={path((one) => one.worst)} />
        <path class="mix-line mix-thin" d={path((one) => one.mean)} />
        {curve.map((one) => (
          <g key={one.count}>
            <circle class="mix-dot" cx={x(one.count)} cy={y(one.worst)} r="5" />
            <rect
              class="mix-square"
              x={x(one.count) - 4}
              y={y(one.mean) - 4}
              width="8"
              height="8"
            />
            <text
              x={x(one.count)}
              y={HEIGHT - MARGINS.bottom + 18}
              text-anchor="middle"
              class={one.count === enough ? 'mix-strong' : undefined}
            >
              {one.count}
            </text>
          </g>
        ))}
        <text x={x(near.count) + 10} y={y(near.worst) - 6}>
          {mixtureTexts.curveWorst}
        </text>
        <text x={x(first.count) + 2} y={y(near.mean) + 20}>
          {mixtureTexts.curveMean}
        </text>
        <text x={(MARGINS.left + width - MARGINS.right) / 2} y={HEIGHT - 6} text-anchor="middle">
          {mixtureTexts.curveX}
        </text>
        <text x="0" y="14">
          {mixtureTexts.curveY}
        </text>
      </svg>
    </div>
  );
}
