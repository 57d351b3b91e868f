import { useId } from 'preact/hooks';
import { brushedOutline } from '../../../drawing/brush-stroke.ts';
import { isGamutMapped } from '../../state/screen-colour.ts';
import { nameWithGamutNote } from './alternative-text.ts';
import { GamutMark } from './GamutMark.tsx';
import { Hatching } from './PaintedCloth.tsx';

interface BesideWantedProps {
  /** Display colour and name of the wanted colour. */
  readonly wanted: { readonly hex: string; readonly name: string };
  readonly mixed: { readonly hex: string; readonly name: string };
  /** If false, the mixed half is hatched at its end, and the text alternative says so. */
  readonly reachable?: boolean | undefined;
  /** The difference in words, for example "a trained eye sees it". */
  readonly difference?: string | undefined;
  readonly seed?: number | undefined;
  readonly class?: string | undefined;
}

/**
 * The wanted and the mixed colour as two adjacent halves of one brushed patch, for visual
 * comparison.
 */
export function ColourComparison(props: BesideWantedProps) {
  const id = useId();
  const { wanted, mixed, seed = 5, reachable = true, difference } = props;
  const words = [
    `${nameWithGamutNote(wanted.name, wanted.hex)} beside ${nameWithGamutNote(mixed.name, mixed.hex)}: two halves of one patch`,
    reachable ? '' : 'out of reach',
    difference ?? '',
  ].filter(Boolean);
  const whole = brushedOutline(seed, { x: 8, y: 6, width: 224, height: 72 });
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
        <clipPath id={`${id}-half`}>
          <rect x="120" y="0" width="120" height="110" />
        </clipPath>
        <clipPath id={`${id}-end`}>
          <rect x="208" y="0" width="32" height="110" />
        </clipPath>
      </defs>
      <path d={whole} fill={wanted.hex} />
      <path d={whole} fill={mixed.hex} clip-path={`url(#${id}-half)`} />
      {reachable ? null : (
        <path d={whole} fill={`url(#${id}-hatch)`} clip-path={`url(#${id}-end)`} />
      )}
      {isGamutMapped(wanted.hex) ? <GamutMark x={118} y={10} /> : null}
      {isGamutMapped(mixed.hex) ? <GamutMark x={228} y={10} /> : null}
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
