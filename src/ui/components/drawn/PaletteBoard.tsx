import { useId } from 'preact/hooks';
import { seedOf } from '../../../drawing/drawing-seed.ts';
import { textColourOn } from '../../../drawing/light-blend.ts';
import type { BoardShape } from '../../../drawing/palette-board.ts';
import {
  LABEL_SIZE,
  layOutPalette,
  type MixedOrder,
  type Seat,
} from '../../../drawing/palette-layout.ts';
import { type BoardPile, LABEL_LINE_PX } from '../../../drawing/pile-positions.ts';
import { joinWords } from '../../../wording.ts';
import { useWidth } from '../element-width.ts';
import { PaintedHeap } from './PaintedHeap.tsx';

interface PaletteBoardProps {
  /** Name of the palette: the start of the text alternative. */
  readonly label: string;
  /** In the order of their seats, white first, beside the thumb hole. */
  readonly pigments: readonly BoardPile[];
  /** Mixed piles, below the pigments. */
  readonly mixed: readonly BoardPile[];
  /** Order of the mixed piles; default: light to dark. */
  readonly order?: MixedOrder | undefined;
  readonly shape?: BoardShape | undefined;
  /** The hand that holds the palette; default: left. */
  readonly hand?: 'left' | 'right' | undefined;
  /** Width in px; default: measured from the page. */
  readonly width?: number | undefined;
  /** The selected pile. */
  readonly chosen?: { readonly kind: 'pigment' | 'mixed'; readonly index: number } | undefined;
  /** If present, every pile is a button. */
  readonly onChoose?: ((kind: 'pigment' | 'mixed', index: number) => void) | undefined;
  readonly class?: string | undefined;
}

/**
 * Neutral middle grey, so that neither light nor dark paint is favoured; white text is legible on
 * it.
 */
const BOARD = 'var(--board, #6e6e6e)';

/**
 * Side of the square button of a pile, px: 44 or the pile's size, less if neighbours are closer.
 */
function touchSide(seat: Seat, seats: readonly Seat[]): number {
  const nearest = seats.reduce(
    (least, other) =>
      other === seat
        ? least
        : Math.min(least, Math.max(Math.abs(other.x - seat.x), Math.abs(other.y - seat.y))),
    Number.POSITIVE_INFINITY,
  );
  return Math.min(nearest, Math.max(44, 2.2 * seat.radius));
}

/**
 * The palette laid out for painting: pigments along the edge, mixed piles below, the middle free.
 */
export function PaletteBoard(props: PaletteBoardProps) {
  const id = useId();
  const measured = useWidth<HTMLDivElement>(720);
  const width = Math.max(280, props.width ?? measured.width);
  const { pigments, mixed, shape = 'oval', hand = 'left', order = 'light to dark' } = props;
  const laid = layOutPalette(pigments, mixed, shape, hand, width, order);
  const { board } = laid;
  const pigmentWords = pigments.map(({ name }) => name);
  const mixedWords = laid.seats
    .filter((seat) => seat.kind === 'mixed')
    .map((seat) => mixed[seat.index]?.name ?? '');
  const words = [
    `${props.label}: a ${shape === 'oval' ? 'rounded' : 'square-cornered'} palette with the thumb hole at the ${hand}`,
    pigmentWords.length > 0 ? `along its edge ${joinWords(pigmentWords)}` : 'no pigments laid out',
    mixedWords.length > 0
      ? `mixed below${order === 'as given' ? ' in their rows' : ' from light to dark'} ${joinWords(mixedWords)}`
      : '',
  ].filter(Boolean);
  const flip = laid.mirrored ? `translate(${width} 0) scale(-1 1)` : undefined;
  const { hole } = board;
  const isChosen = ({ kind, index }: Seat) =>
    props.chosen?.kind === kind && props.chosen.index === index;
  const height = laid.height + 8;
  const holePath = `M${hole.x - hole.rx} ${hole.y}a${hole.rx} ${hole.ry} -12 1 0 ${2 * hole.rx} 0a${hole.rx} ${hole.ry} -12 1 0 ${-2 * hole.rx} 0Z`;
  return (
    <div ref={measured.ref} class={props.class} style={{ position: 'relative', width: '100%' }}>
      <svg
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-labelledby={`${id}-title`}
        style={{ display: 'block', width: '100%', height: 'auto', forcedColorAdjust: 'none' }}
      >
        <title id={`${id}-title`}>{words.join('; ')}</title>
        <g transform={flip} fill-rule="evenodd">
          <path
            d={board.outline + holePath}
            transform="translate(0 5)"
            fill="#000"
            fill-opacity="0.22"
          />
          <path d={board.outline + holePath} transform="translate(0 2.5)" fill="#464646" />
          <path d={board.outline + holePath} fill={BOARD} />
        </g>
        {laid.seats.map((seat) => {
          const pile = (seat.kind === 'pigment' ? pigments : mixed)[seat.index];
          if (!pile) return null;
          return (
            <g key={`${seat.kind}${seat.index}`}>
              <g transform={`translate(${seat.x} ${seat.y})`}>
                <PaintedHeap hex={pile.hex} seed={seedOf(pile.name)} radius={seat.radius} />
                {isChosen(seat) ? (
                  <g fill="none">
                    <circle r={seat.radius * 1.1 + 1.5} stroke="#fff" stroke-width="2.5" />
                    <circle r={seat.radius * 1.1 + 3.2} stroke="#161616" stroke-width="1.2" />
                  </g>
                ) : null}
              </g>
              {seat.lines.map((line, n) => (
                <text
                  key={line}
                  x={(seat.label.left + seat.label.right) / 2}
                  y={seat.label.top + LABEL_LINE_PX * (n + 0.78)}
                  text-anchor="middle"
                  fill={seat.upon ? textColourOn(pile.hex) : '#fff'}
                  style={{ fontSize: `${LABEL_SIZE}px` }}
                >
                  {line}
                </text>
              ))}
            </g>
          );
        })}
        {laid.key.map((entry) => (
          <text
            key={entry.words}
            x={entry.x}
            y={entry.y}
            fill="var(--ink, #1c1c1c)"
            style={{ fontSize: `${LABEL_SIZE}px` }}
          >
            {entry.words}
          </text>
        ))}
      </svg>
      {props.onChoose
        ? laid.seats.map((seat) => {
            const pile = (seat.kind === 'pigment' ? pigments : mixed)[seat.index];
            const side = touchSide(seat, laid.seats);
            return (
              <button
                key={`${seat.kind}${seat.index}`}
                type="button"
                data-seat={`${seat.kind} ${seat.index}`}
                aria-label={pile?.name ?? ''}
                aria-pressed={isChosen(seat)}
                onClick={() => props.onChoose?.(seat.kind, seat.index)}
                style={{
                  position: 'absolute',
                  left: `${((seat.x - side / 2) / width) * 100}%`,
                  top: `${((seat.y - side / 2) / height) * 100}%`,
                  width: `${(side / width) * 100}%`,
                  height: `${(side / height) * 100}%`,
                  padding: '0',
                  border: '0',
                  borderRadius: '50%',
                  background: 'none',
                  cursor: 'pointer',
                }}
              />
            );
          })
        : null}
    </div>
  );
}
