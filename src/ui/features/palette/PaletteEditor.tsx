import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Entry } from '../../../book/schema/record.ts';
import { seedOf } from '../../../drawing/drawing-seed.ts';
import { pilesOf } from '../../../drawing/palette-svg.ts';
import type { Day } from '../../../palette/day-plan.ts';
import type { Studio } from '../../../palette/passage.ts';
import { whiteOf } from '../../../palette/plan-pile.ts';
import { PaintedHeap } from '../../components/drawn/PaintedHeap.tsx';
import { PaletteBoard } from '../../components/drawn/PaletteBoard.tsx';
import { paletteTexts } from '../../texts/palette-texts.ts';
import { sharedTexts } from '../../texts/shared-texts.ts';
import { useSeatDrag } from './drag-and-drop.ts';
import { hasManualOrder, moveInRow, type RowPile, restoreSeatOrder } from './move-piles.ts';
import { SelectedMixture, SelectedPigment } from './SelectedPile.tsx';

const STEPS: Readonly<Record<string, -1 | 1>> = {
  ArrowLeft: -1,
  ArrowUp: -1,
  ArrowRight: 1,
  ArrowDown: 1,
};

/** One palette as it is laid out: its piles can be selected, moved and restored. */
export function PaletteEditor({
  entry,
  at,
  day,
  studio,
}: {
  entry: Entry<'palette'>;
  at: number;
  day: Day;
  studio: Studio;
}) {
  const palette = day.palettes[at]!;
  const [chosen, setChosen] = useState<RowPile | null>(null);
  const board = useRef<HTMLDivElement>(null);
  const isFollowed = useRef(false);
  const piles = pilesOf(palette);
  const rowOf = (kind: RowPile['kind']) => (kind === 'pigment' ? piles.pigments : piles.mixed);
  const index = chosen ? rowOf(chosen.kind).findIndex(({ key }) => key === chosen.key) : -1;
  const white = whiteOf(studio, day.rules);
  // A pile moved by key keeps the focus in its new place.
  useLayoutEffect(() => {
    if (!isFollowed.current) return;
    isFollowed.current = false;
    board.current?.querySelector<HTMLElement>('[aria-pressed="true"]')?.focus();
  }, [day]);

  const put = (pile: RowPile, to: number) => {
    const neighbour = rowOf(pile.kind)[to]?.key;
    if (neighbour === undefined || [neighbour, white].includes(pile.key) || neighbour === white)
      return;
    void moveInRow(entry, pile, neighbour, day, palette.asked);
  };
  const seatOf = (seat: string) => {
    const [kind, number] = seat.split(' ') as [RowPile['kind'], string];
    return { kind, to: Number(number), pile: rowOf(kind)[Number(number)] };
  };
  const { drag, ...dragging } = useSeatDrag((from, over) => {
    const { kind, pile } = seatOf(from);
    const { kind: other, to } = seatOf(over);
    if (kind === other && pile) put({ kind, key: pile.key }, to);
  });
  const onKey = (event: KeyboardEvent) => {
    const by = STEPS[event.key];
    const seat = (event.target as Element).closest('[data-seat][aria-pressed="true"]');
    if (by === undefined || !seat || !chosen) return;
    event.preventDefault();
    isFollowed.current = true;
    put(chosen, index + by);
  };
  const held = drag && seatOf(drag.from).pile;
  return (
    <div class="pal-laid">
      <div class="pal-board-column">
        {/* biome-ignore lint/a11y/noStaticElementInteractions: the piles inside are buttons; it only hears what they do */}
        <div class="pal-board" ref={board} onKeyDown={onKey} {...dragging}>
          <PaletteBoard
            label={palette.name}
            pigments={piles.pigments}
            mixed={piles.mixed}
            order="as given"
            shape={day.rules.shape}
            hand={day.rules.hand}
            chosen={chosen && index >= 0 ? { kind: chosen.kind, index } : undefined}
            onChoose={(kind, to) => {
              const key = rowOf(kind)[to]?.key;
              setChosen(key === undefined || key === chosen?.key ? null : { kind, key });
            }}
          />
          {drag && held && (
            <svg
              class="pal-held"
              viewBox="-12 -12 24 24"
              width="56"
              height="56"
              aria-hidden="true"
              style={{ left: `${drag.x}px`, top: `${drag.y}px` }}
            >
              <PaintedHeap hex={held.hex} seed={seedOf(held.name)} radius={9} />
              {drag.over !== null && drag.over !== drag.from && (
                <circle r="11" fill="none" stroke="#fff" stroke-width="1.5" />
              )}
            </svg>
          )}
        </div>
        <p class="small">{paletteTexts.touchPile}</p>
        {hasManualOrder(entry) && (
          <p>
            <button type="button" class="quiet" onClick={() => void restoreSeatOrder(entry)}>
              {paletteTexts.restore}
            </button>
          </p>
        )}
      </div>
      <div class="pal-chosen" role="status">
        {chosen && index >= 0 && (
          <>
            {chosen.kind === 'mixed' ? (
              <SelectedMixture pile={chosen.key} day={day} at={at} studio={studio} />
            ) : (
              <SelectedPigment pigment={chosen.key} day={day} at={at} />
            )}
            {chosen.key === white ? (
              <p class="small">{paletteTexts.whiteFirst}</p>
            ) : (
              <p class="pal-actions">
                <button type="button" onClick={() => put(chosen, index - 1)}>
                  {paletteTexts.earlier}
                </button>
                <button type="button" onClick={() => put(chosen, index + 1)}>
                  {paletteTexts.later}
                </button>
              </p>
            )}
            <p>
              <button type="button" class="quiet" onClick={() => setChosen(null)}>
                {sharedTexts.close}
              </button>
            </p>
          </>
        )}
      </div>
    </div>
  );
}
