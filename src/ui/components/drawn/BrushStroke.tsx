import { bristles, brushedOutline, type Ends } from '../../../drawing/brush-stroke.ts';
import { isGamutMapped } from '../../state/screen-colour.ts';
import { GamutMark } from './GamutMark.tsx';

/** One brush stroke of colour, as part of a drawing. */
export function BrushStroke(props: {
  hex: string;
  seed: number;
  x: number;
  y: number;
  width: number;
  height: number;
  ends?: Ends;
  /** Id of the hatching pattern over it. */
  hatching?: string | undefined;
  marks?: number;
}) {
  const box = { x: props.x, y: props.y, width: props.width, height: props.height };
  const d = brushedOutline(props.seed, box, props.ends);
  return (
    <g>
      <path d={d} fill={props.hex} />
      {bristles(props.seed, box, props.marks ?? Math.round(props.height / 5)).map((mark) => (
        <path
          key={mark.d}
          d={mark.d}
          fill="none"
          stroke={mark.light ? '#fff' : '#000'}
          stroke-opacity={mark.light ? 0.07 : 0.06}
          stroke-width="0.9"
          stroke-linecap="round"
        />
      ))}
      {isGamutMapped(props.hex) ? (
        <GamutMark x={box.x + box.width - 3} y={box.y + 3} size={Math.min(10, box.height / 3)} />
      ) : null}
      {props.hatching ? <path d={d} fill={`url(#${props.hatching})`} /> : null}
    </g>
  );
}
