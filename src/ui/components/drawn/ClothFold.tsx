import type { DrawnLadder } from '../../../drawing/drawn-ladder.ts';
import { gamutWords, outOfReachWords } from './alternative-text.ts';
import { FramedCloth } from './FramedCloth.tsx';

interface FoldProps {
  /** Start of the text alternative. */
  readonly name: string;
  readonly ladder: DrawnLadder;
  readonly seed: number;
  /** Drawing units, about px; 90 × 120 by default. */
  readonly width?: number | undefined;
  readonly height?: number | undefined;
  readonly class?: string | undefined;
}

/**
 * A short fold of cloth on one peg, for rows of variants. Its hatching is coarse because it is
 * drawn small.
 */
export function ClothFold({ name, ladder, seed, width = 90, height = 120, class: of }: FoldProps) {
  return (
    <FramedCloth
      words={[`${name}: a fold of cloth`, outOfReachWords(ladder), gamutWords(ladder)]}
      unit={18}
      class={of}
      ladder={ladder}
      seed={seed}
      hang="strip"
      detail="small"
      width={width}
      height={height}
    />
  );
}
