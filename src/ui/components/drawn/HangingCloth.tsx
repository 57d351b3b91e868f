import type { Detail, DrawnLadder, Hang } from '../../../drawing/drawn-ladder.ts';
import { CLOTH } from '../../../drawing/hanging-cloth.ts';
import { gamutWords, outOfReachWords } from './alternative-text.ts';
import { FramedCloth } from './FramedCloth.tsx';

interface ClothProps {
  /** What hangs there: the start of the text alternative. */
  readonly name: string;
  /** Six steps, lightest first. */
  readonly ladder: DrawnLadder;
  /** Determines the folds; the same seed always falls the same way. */
  readonly seed: number;
  /** One peg, two pegs or a short strip; default: the seed decides. */
  readonly hang?: Hang | undefined;
  /** Colours of a band along the edge. */
  readonly trim?: DrawnLadder | undefined;
  /**
   * Colours of the wrong side, visible where folds turn back, and without a trim also along the
   * edge.
   */
  readonly lining?: DrawnLadder | undefined;
  /** Level of detail: 'small' under 140 px, 'plain' for cards, 'fine' for the page's width. */
  readonly detail?: Detail | undefined;
  /**
   * Space in drawing units (about px), 300 × 400 by default. The drawing scales to its container.
   */
  readonly width?: number | undefined;
  readonly height?: number | undefined;
  /** Addition to the text alternative. */
  readonly say?: string | undefined;
  readonly class?: string | undefined;
}

/**
 * One garment as a drapery study: cloth hung from one or two pegs, whose folds show the six steps
 * of its ladder.
 */
export function HangingCloth(props: ClothProps) {
  const { name, ladder, trim, lining, width = CLOTH.width, height = CLOTH.height } = props;
  return (
    <FramedCloth
      words={[
        `${name}: hanging cloth`,
        trim ? 'with a trim' : '',
        lining ? 'its lining turned back' : '',
        outOfReachWords(ladder),
        gamutWords(ladder),
        props.say ?? '',
      ]}
      class={props.class}
      ladder={ladder}
      trim={trim}
      lining={lining}
      seed={props.seed}
      hang={props.hang}
      detail={props.detail}
      width={width}
      height={height}
    />
  );
}
