import { useId } from 'preact/hooks';
import type { DrawnLadder } from '../../../drawing/drawn-ladder.ts';
import { breakLines } from '../../../drawing/label-text.ts';
import { isGamutMapped } from '../../state/screen-colour.ts';
import { BEYOND_SCREEN, gamutWords, outOfReachWords } from './alternative-text.ts';
import { BrushStroke } from './BrushStroke.tsx';
import { Hatching } from './PaintedCloth.tsx';

interface LadderProps {
  /** Name of the ladder: the start of the text alternative. */
  readonly name: string;
  readonly ladder: DrawnLadder;
  /** 'down': upright, with words at the right; 'along': lying, with words below. */
  readonly way?: 'down' | 'along' | undefined;
  /** Words for each step, under its name. */
  readonly words?: readonly string[] | undefined;
  readonly unreached?: string | undefined;
  readonly seed?: number | undefined;
  readonly class?: string | undefined;
}

/** Six steps of a colour as a brushed scale, lightest first, with words. */
export function Ladder(props: LadderProps) {
  const id = useId();
  const { name, ladder, way = 'down', seed = 3, unreached = 'out of reach' } = props;
  const title = [
    `${name}: ${ladder.length} steps from ${ladder[0]?.step ?? 'light'} to ${ladder.at(-1)?.step ?? 'dark'}`,
    outOfReachWords(ladder),
    gamutWords(ladder),
  ].filter(Boolean);
  const down = way === 'down';
  const step = down ? 46 : 92;
  const size = down
    ? { width: 320, height: step * ladder.length + 6 }
    : { width: step * ladder.length + 6, height: 150 };
  return (
    <svg
      class={props.class}
      viewBox={`0 0 ${size.width} ${size.height}`}
      role="img"
      aria-labelledby={`${id}-title`}
      style={{ display: 'block', width: '100%', height: 'auto', forcedColorAdjust: 'none' }}
    >
      <title id={`${id}-title`}>{title.join(', ')}</title>
      <defs>
        <Hatching id={`${id}-hatch`} />
      </defs>
      {ladder.map((rung, k) => (
        <BrushStroke
          key={rung.step}
          hex={rung.hex}
          seed={seed + k}
          x={down ? 4 : 3 + k * step}
          y={down ? 3 + k * step : 4}
          width={down ? 150 : step}
          height={down ? step + (k + 1 < ladder.length ? 5 : 0) : 84}
          ends={
            down ? { left: true, right: true } : { left: k === 0, right: k === ladder.length - 1 }
          }
          hatching={rung.reachable ? undefined : `${id}-hatch`}
        />
      ))}
      {ladder.map((rung, k) => {
        const more = [
          props.words?.[k] ?? '',
          rung.reachable ? '' : unreached,
          isGamutMapped(rung.hex) ? BEYOND_SCREEN : '',
        ].filter(Boolean);
        const lines = down
          ? [rung.step, ...more].flatMap((line) => breakLines(line, 13, 158, 1)).slice(0, 3)
          : [
              ...breakLines(rung.step, 13, step - 6),
              ...more.flatMap((line) => breakLines(line, 13, step - 6, 1)),
            ].slice(0, 4);
        return lines.map((line, n) => (
          <text
            key={`${rung.step}${line}`}
            x={down ? 164 : 3 + (k + 0.5) * step}
            y={down ? 3 + (k + 0.5) * step + 5 + (n - (lines.length - 1) / 2) * 15 : 106 + n * 15}
            text-anchor={down ? 'start' : 'middle'}
            fill="var(--ink, #1c1c1c)"
            style={{ fontSize: '13px' }}
          >
            {line}
          </text>
        ));
      })}
    </svg>
  );
}
