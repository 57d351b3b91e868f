import type { Entry } from '../../book/record.ts';
import type { Day } from '../../palette/plan.ts';
import { moved, placedAt, proposeSeats } from '../../palette/seat.ts';
import { tell } from '../studio.ts';
import { sayPalette } from '../words/palette.ts';
import { studio } from './planning.ts';
import { rules, settle } from './rules.ts';
import { save } from './save.ts';

/** The studio's seat order: the saved order, then pigments that came to the shelf since. */
export function studioSeats(): readonly string[] {
  const proposed = proposeSeats(studio.value.shelf);
  const { seats } = rules.value;
  return [...seats, ...proposed.filter((pigment) => !seats.includes(pigment))];
}

async function keepSeats(seats: readonly string[], said: string): Promise<void> {
  const put = await settle({ seats });
  if (put) tell(said, put.undo);
}

/** Moves a pigment to another's seat, on every palette from now on. */
export const putSeat = (pigment: string, at: string, label: string): Promise<void> => {
  const order = studioSeats();
  return keepSeats(placedAt(order, pigment, order.indexOf(at)), sayPalette.seatMoved(label));
};

/** Restores the proposed seat order, light to dark. */
export const proposeAgain = (): Promise<void> => keepSeats([], sayPalette.seatsProposed);

/** A pile in a row of a palette. */
export interface InRow {
  readonly kind: 'pigment' | 'mixed';
  readonly key: string;
}

/**
 * Keys of all mixed piles of a requested palette in order, even when it is split over several
 * boards.
 */
const mixedOf = (day: Day, asked: number): readonly string[] =>
  day.palettes
    .filter((palette) => palette.asked === asked)
    .flatMap(({ mixed }) => mixed.map(({ key }) => key));

/** Moves a pile or a pigment to another's place, on this palette only. */
export async function putInRow(
  entry: Entry<'palette'>,
  { kind, key }: InRow,
  neighbour: string,
  day: Day,
  asked: number,
): Promise<void> {
  const { body } = entry;
  const placed = (order: readonly string[]) => placedAt(order, key, order.indexOf(neighbour));
  const change =
    kind === 'mixed'
      ? { order: placed(mixedOf(day, asked)) }
      : { seats: placed(withAll(body.seats.length > 0 ? body.seats : studioSeats(), key)) };
  await save(
    { kind: 'palette', id: entry.id, over: entry, body: { ...body, ...change } },
    sayPalette.movedHere,
  );
}
const withAll = (order: readonly string[], key: string) =>
  order.includes(key) ? order : moved([...order, key], key, 0);

/** Whether any pile of this palette was moved by hand. */
export const isMoved = ({ body }: Entry<'palette'>): boolean =>
  body.order !== undefined || body.seats.length > 0;

/** Restores the studio's seat order on this palette. */
export async function restoreRows(entry: Entry<'palette'>): Promise<void> {
  const { order: _, ...body } = entry.body;
  await save(
    { kind: 'palette', id: entry.id, over: entry, body: { ...body, seats: [] } },
    sayPalette.restored,
  );
}
