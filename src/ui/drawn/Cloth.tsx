import type { Detail, DrawnLadder, Hang } from './drawn.ts';
import { Framed } from './Framed.tsx';
import { CLOTH } from './hang.ts';
import { nearestWords, unreachedWords } from './say.ts';

export interface ClothProps {
  /** What hangs there, in the painter's words: the start of the text alternative. */
  readonly name: string;
  /** Six steps, lightest first. */
  readonly ladder: DrawnLadder;
  /** Which way it falls; the same seed falls the same way always. */
  readonly seed: number;
  /** One peg or two, or a short strip; left out, the seed decides. */
  readonly hang?: Hang | undefined;
  /** A band along the edge in colours of its own. */
  readonly trim?: DrawnLadder | undefined;
  /** The wrong side, seen where folds turn back; without a trim also turned over along the edge. */
  readonly lining?: DrawnLadder | undefined;
  /** How finely the folds are worked out: 'small' under 140 px, 'plain' for cards, 'fine' for a page's width. */
  readonly detail?: Detail | undefined;
  /** Room in drawing units (about px); 300 × 400 unless told. The drawing scales to its container. */
  readonly width?: number | undefined;
  readonly height?: number | undefined;
  /** More words for the text alternative. */
  readonly say?: string | undefined;
  readonly class?: string | undefined;
}

/** One garment as a drapery study: cloth pinned at a peg or two, its folds the six steps of its ladder. */
export function Cloth(props: ClothProps) {
  const { name, ladder, trim, lining, width = CLOTH.width, height = CLOTH.height } = props;
  return (
    <Framed
      words={[
        `${name}: hanging cloth`,
        trim ? 'with a trim' : '',
        lining ? 'its lining turned back' : '',
        unreachedWords(ladder),
        nearestWords(ladder),
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
