import { useRef } from 'preact/hooks';
import { seedOf } from '../../../drawing/drawing-seed.ts';
import { baseOf, labelIn } from '../../../palette/passage.ts';
import { whiteOf } from '../../../palette/plan-pile.ts';
import { masstone } from '../../../pigment/masstone.ts';
import { DownIcon, UpIcon } from '../../components/drawn/icons.tsx';
import { PaintedHeap } from '../../components/drawn/PaintedHeap.tsx';
import { dayHref } from '../../state/palette/day-entries.ts';
import { planningStudio } from '../../state/palette/plan-job.ts';
import { studioRules } from '../../state/palette/studio-rules.ts';
import { cssColourOf } from '../../state/screen-colour.ts';
import { paletteTexts } from '../../texts/palette-texts.ts';
import { useSeatDrag } from './drag-and-drop.ts';
import { movePigmentSeat, resetStudioSeats, studioSeats } from './move-piles.ts';

/** The studio's seat order: every pigment of the shelf, moved by drag or key, and saved. */
export function SeatOrderView() {
  const { shelf } = planningStudio.value;
  const white = whiteOf(planningStudio.value, studioRules.value);
  const paints = new Map(shelf.paints.map((paint) => [paint.pigment, paint]));
  const there = studioSeats().filter((pigment) => paints.has(pigment) && pigment !== white);
  const label = (pigment: string) => labelIn(planningStudio.value, pigment);
  const list = useRef<HTMLOListElement>(null);
  const put = async (pigment: string, to: number, by: 'up' | 'down' | null = null) => {
    const at = there[to];
    if (at === undefined || at === pigment) return;
    await movePigmentSeat(pigment, at, label(pigment));
    if (by === null) return;
    // Keep the focus on the moved row, on a button that is still enabled.
    const row = [...(list.current?.children ?? [])].find(
      (one) => one.getAttribute('data-seat') === pigment,
    );
    const [up, down] = row?.querySelectorAll('button') ?? [];
    const next = by === 'up' ? up : down;
    (next?.disabled ? (by === 'up' ? down : up) : next)?.focus();
  };
  const { drag, ...dragging } = useSeatDrag((from, to) => void put(from, there.indexOf(to)));
  const heap = (pigment: string) => {
    const paint = paints.get(pigment);
    const hex = paint ? cssColourOf(masstone(paint.paint, shelf.surface)) : '#777777';
    return (
      <svg viewBox="-12 -12 24 24" width="44" height="44" aria-hidden="true">
        <PaintedHeap hex={hex} seed={seedOf(baseOf(pigment))} radius={9} />
      </svg>
    );
  };
  return (
    <section class="page pal-page">
      <p class="pal-crumb">
        <a href={dayHref()}>{paletteTexts.toDay}</a>
      </p>
      <h1 tabIndex={-1}>{paletteTexts.seatsHeading}</h1>
      <p class="lead">{paletteTexts.seatsLead}</p>
      <p class="pal-actions">
        {studioRules.value.seats.length > 0 ? (
          <button type="button" onClick={() => void resetStudioSeats()}>
            {paletteTexts.proposeSeats}
          </button>
        ) : (
          <span>{paletteTexts.seatsAreProposed}</span>
        )}
      </p>
      <ol class="pal-seats" ref={list} {...dragging}>
        {white !== null && (
          <li>
            {heap(white)}
            <span>
              {label(white)} <span class="small">{paletteTexts.besideThumb}</span>
            </span>
          </li>
        )}
        {there.map((pigment, at) => (
          <li
            key={pigment}
            data-seat={pigment}
            data-over={drag?.over === pigment && drag.from !== pigment ? 'true' : undefined}
            data-held={drag?.from === pigment ? 'true' : undefined}
          >
            <span class="pal-grip">{heap(pigment)}</span>
            <span>{label(pigment)}</span>
            <span class="pal-steps">
              <button
                type="button"
                disabled={at === 0}
                aria-label={paletteTexts.seatUp(label(pigment))}
                onClick={() => void put(pigment, at - 1, 'up')}
              >
                <UpIcon />
              </button>
              <button
                type="button"
                disabled={at === there.length - 1}
                aria-label={paletteTexts.seatDown(label(pigment))}
                onClick={() => void put(pigment, at + 1, 'down')}
              >
                <DownIcon />
              </button>
            </span>
          </li>
        ))}
      </ol>
    </section>
  );
}
