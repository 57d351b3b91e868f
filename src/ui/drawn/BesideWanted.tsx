import { useId } from 'preact/hooks';
import { Hatching } from './PaintedCloth.tsx';
import { Patch } from './Patch.tsx';

export interface BesideWantedProps {
  /** #rrggbb of what is wanted, and what it is called. */
  readonly wanted: { readonly hex: string; readonly name: string };
  readonly mixed: { readonly hex: string; readonly name: string };
  /** False: the mixed half is hatched at its rim and named so. */
  readonly reachable?: boolean | undefined;
  /** How they differ, in words: "a trained eye sees it". */
  readonly difference?: string | undefined;
  readonly seed?: number | undefined;
  readonly class?: string | undefined;
}

/** Wanted and mixed as the two halves of one brushed-out patch, edge upon edge, for the eye to judge. */
export function BesideWanted(props: BesideWantedProps) {
  const id = useId();
  const { wanted, mixed, seed = 5, reachable = true, difference } = props;
  const words = [
    `${wanted.name} beside ${mixed.name}: two halves of one patch`,
    reachable ? '' : 'out of reach',
    difference ?? '',
  ].filter(Boolean);
  return (
    <svg
      class={props.class}
      viewBox="0 0 240 110"
      role="img"
      aria-labelledby={`${id}-title`}
      style={{ display: 'block', width: '100%', height: 'auto', forcedColorAdjust: 'none' }}
    >
      <title id={`${id}-title`}>{words.join(', ')}</title>
      <defs>
        <Hatching id={`${id}-hatch`} />
      </defs>
      <Patch
        hex={wanted.hex}
        seed={seed}
        x={8}
        y={6}
        width={112}
        height={72}
        ends={{ left: true, right: false }}
        marks={0}
      />
      <Patch
        hex={mixed.hex}
        seed={seed + 1}
        x={120}
        y={6}
        width={112}
        height={72}
        ends={{ left: false, right: true }}
        marks={0}
      />
      {reachable ? null : <rect x="206" y="6" width="20" height="72" fill={`url(#${id}-hatch)`} />}
      <g
        fill="var(--ink, #1c1c1c)"
        font-size="13"
        text-anchor="middle"
        style={{ font: 'inherit', fontSize: '13px' }}
      >
        <text x="64" y="98">
          {wanted.name}
        </text>
        <text x="176" y="98">
          {mixed.name}
        </text>
      </g>
    </svg>
  );
}
