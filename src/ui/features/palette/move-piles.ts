import type { Entry } from '../../../book/schema/record.ts';
import type { Day } from '../../../palette/day-plan.ts';
import { moveInOrder, placedAt, proposeSeats } from '../../../palette/seat-order.ts';
import { planningStudio } from '../../state/palette/plan-job.ts';
import { saveDayEntry } from '../../state/palette/save-entry.ts';
import { studioRules, updateStudioRules } from '../../state/palette/studio-rules.ts';
import { showNotice } from '../../state/studio.ts';
import { paletteTexts } from '../../texts/palette-texts.ts';

/** The studio's seat order: the saved order, then pigments that came to the shelf since. */
export function studioSeats(): readonly string[] {
  const proposed = proposeSeats(planningStudio.value.shelf);
  const { seats } = studioRules.value;
  return [...seats, ...proposed.filter((pigment) => !seats.includes(pigment))];
}

async function saveSeats(seats: readonly string[], said: string): Promise<void> {
  const put = await updateStudioRules({ seats });
  if (put) showNotice(said, put.undo);
}

/** Moves a pigment to another's seat, on every palette from now on. */
export const movePigmentSeat = (pigment: string, at: string, label: string): Promise<void> => {
  const order = studioSeats();
  return saveSeats(placedAt(order, pigment, order.indexOf(at)), paletteTexts.seatMoved(label));
};

/** Restores the proposed seat order, light to dark. */
export const resetStudioSeats = (): Promise<void> => saveSeats([], paletteTexts.seatsProposed);

/** A pile in a row of a palette. */
export interface RowPile {
  readonly kind: 'pigment' | 'mixed';
  readonly key: string;
}

/**
 * Keys of all mixed piles of a requested palette in order, even when it is split over several
 * boards.
 */
const mixedPileKeys = (day: Day, asked: number): readonly string[] =>
  day.palettes
    .filter((palette) => palette.asked === asked)
    .flatMap(({ mixed }) => mixed.map(({ key }) => key));

/** Moves a pile or a pigment to another's place, on this palette only. */
export async function moveInRow(
  entry: Entry<'palette'>,
  { kind, key }: RowPile,
  neighbour: string,
  day: Day,
  asked: number,
): Promise<void> {
  const { body } = entry;
  const placed = (order: readonly string[]) => placedAt(order, key, order.indexOf(neighbour));
  const change =
    kind === 'mixed'
      ? { order: placed(mixedPileKeys(day, asked)) }
      : { seats: placed(withAll(body.seats.length > 0 ? body.seats : studioSeats(), key)) };
  await saveDayEntry(
    { kind: 'palette', id: entry.id, over: entry, body: { ...body, ...change } },
    paletteTexts.movedHere,
  );
}
const withAll = (order: readonly string[], key: string) =>
  order.includes(key) ? order : moveInOrder([...order, key], key, 0);

/** Whether any pile of this palette was moved by hand. */
export const hasManualOrder = ({ body }: Entry<'palette'>): boolean =>
  body.order !== undefined || body.seats.length > 0;

/** Restores the studio's seat order on this palette. */
export async function restoreSeatOrder(entry: Entry<'palette'>): Promise<void> {
  const { order: _, ...body } = entry.body;
  await saveDayEntry(
    { kind: 'palette', id: entry.id, over: entry, body: { ...body, seats: [] } },
    paletteTexts.restored,
  );
}
