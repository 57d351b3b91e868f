import { useId } from 'preact/hooks';
import type { DrawnLadder } from './drawn.ts';
import { Hatching, PaintedCloth } from './PaintedCloth.tsx';
import { nearestWords, unreachedWords } from './say.ts';

export interface FoldProps {
  /** The start of the text alternative. */
  readonly name: string;
  readonly ladder: DrawnLadder;
  readonly seed: number;
  /** Drawing units, about px; 90 × 120 unless told. */
  readonly width?: number | undefined;
  readonly height?: number | undefined;
  readonly class?: string | undefined;
}

/** A short fold of cloth at one peg, for rows of variants. */
export function Fold(props: FoldProps) {
  const id = useId();
  const { name, ladder, seed, width = 90, height = 120 } = props;
  const words = [`${name}: a fold of cloth`, unreachedWords(ladder), nearestWords(ladder)].filter(
    Boolean,
  );
  return (
    <svg
      class={props.class}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-labelledby={`${id}-title`}
      style={{ display: 'block', width: '100%', height: 'auto', forcedColorAdjust: 'none' }}
    >
      <title id={`${id}-title`}>{words.join(', ')}</title>
      <defs>
        <Hatching id={`${id}-hatch`} unit={10} />
      </defs>
      <PaintedCloth
        hatching={`${id}-hatch`}
        ladder={ladder}
        seed={seed}
        hang="strip"
        detail="small"
        width={width}
        height={height}
      />
    </svg>
  );
}
