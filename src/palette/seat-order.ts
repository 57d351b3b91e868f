import type { Lab } from '../colour/lab.ts';
import { masstone } from '../pigment/masstone.ts';
import type { Shelf } from '../pigment/shelf.ts';

/** An item with a name and a colour that takes a place on the palette. */
interface Placed {
  readonly key: string;
  readonly lab: Lab;
}

/** Position of a colour on the warm-cool axis (hue 50 to 230 degrees); higher is warmer. */
const warmth = ([, a, b]: Lab): number =>
  a * Math.cos((50 * Math.PI) / 180) + b * Math.sin((50 * Math.PI) / 180);

/**
 * Compares by whole-number L*, light first; ties: warmer first, then by name, so the order is
 * total.
 */
export const lightFirst = (one: Placed, other: Placed): number =>
  Math.round(other.lab[0]) - Math.round(one.lab[0]) ||
  warmth(other.lab) - warmth(one.lab) ||
  (one.key < other.key ? -1 : 1);

/** A default seat order: the studio's white, then every paint of the shelf, light to dark. */
export function proposeSeats(shelf: Shelf): readonly string[] {
  const placed = shelf.paints.map(({ pigment, paint }) => ({
    key: pigment,
    lab: masstone(paint, shelf.surface),
  }));
  return whiteFirst(placed.sort(lightFirst), shelf.white).map(({ key }) => key);
}

const whiteFirst = <T extends { readonly key: string }>(list: readonly T[], white: string | null) =>
  list.toSorted((a, b) => Number(b.key === white) - Number(a.key === white));

/**
 * Pigments in their seats: the studio's white beside the thumb hole, the others in the studio's
 * order, whichever are absent. A pigment without a seat is inserted where it is no lighter than its
 * neighbours; nobody moves for it.
 * @param seats the studio's order, by name
 */
export function seatOrder<T extends Placed>(
  pigments: readonly T[],
  seats: readonly string[],
  white: string | null,
): readonly T[] {
  const known = pigments
    .filter(({ key }) => seats.includes(key))
    .sort((a, b) => seats.indexOf(a.key) - seats.indexOf(b.key));
  const order = [...known];
  for (const guest of pigments.filter(({ key }) => !seats.includes(key)).sort(lightFirst)) {
    const at = order.findLastIndex((one) => one.key === white || lightFirst(one, guest) < 0);
    order.splice(at + 1, 0, guest);
  }
  return whiteFirst(order, white);
}

/** Least distance between two heaps, as a fraction of the edge. */
const ELBOW = 0.085;

/**
 * Position of each pigment along the edge, 0 beside the thumb hole to 1 at the far end. Each keeps
 * its own place of the studio's order, whichever are absent, so that the painter finds it without
 * looking; those too close together make room without changing order.
 * @param pigments in their seats, from {@link seatOrder}
 * @returns as many, in the same order
 */
export function placesOf(
  pigments: readonly string[],
  seats: readonly string[],
  white: string | null,
): readonly number[] {
  const all = [...(white === null ? [] : [white]), ...seats.filter((key) => key !== white)];
  const last = Math.max(1, all.length - 1);
  const apart = Math.min(ELBOW, 1 / Math.max(1, pigments.length - 1));
  const places: number[] = [];
  for (const [i, key] of pigments.entries()) {
    const at = all.indexOf(key);
    const least = i === 0 ? 0 : places[i - 1]! + apart;
    places.push(Math.max(least, at < 0 ? 0 : at / last));
  }
  for (let i = places.length - 1, most = 1; i >= 0; i--, most = places[i + 1]! - apart)
    places[i] = Math.max(0, Math.min(places[i]!, most));
  return places;
}

/** A mixed pile, and whether it is a tint: at least half of it is the studio's white. */
interface MixedPlaced extends Placed {
  readonly tint: boolean;
}

/** Mixed piles in their rows: tints first, then the others, each light to dark. */
export const mixedOrder = <T extends MixedPlaced>(piles: readonly T[]): readonly T[] =>
  piles.toSorted((a, b) => Number(b.tint) - Number(a.tint) || lightFirst(a, b));

/** Moves a name by a number of places, stopping at the ends; returns a new list. */
export function moveInOrder(order: readonly string[], key: string, by: number): readonly string[] {
  const from = order.indexOf(key);
  if (from < 0) return order;
  const to = Math.min(order.length - 1, Math.max(0, from + by));
  return order.toSpliced(from, 1).toSpliced(to, 0, key);
}

/** Moves a name to a place; returns a new list. */
export const placedAt = (order: readonly string[], key: string, to: number): readonly string[] =>
  moveInOrder(order, key, to - order.indexOf(key));

/** Sorts by a manual order; items that it does not name follow in their own order. */
export function inManualOrder<T extends Placed>(
  things: readonly T[],
  order: readonly string[],
): readonly T[] {
  const place = (key: string) => (order.includes(key) ? order.indexOf(key) : order.length);
  return things.toSorted((a, b) => place(a.key) - place(b.key));
}
