import type { Shelf, ShelfPaint } from '../pigment/shelf.ts';
import { fail, ok, type Result } from '../result.ts';
import { colours } from './stock.ts';

/** What a painter may ask of every pile. Pigments are named as the shelf names them. */
export interface Constraints {
  /** Only these are at hand; without it, all of the shelf. */
  readonly inStock?: readonly string[];
  /** Left out by hazard or by wish. */
  readonly leaveOut?: readonly string[];
  /** In every pile, at least {@link LEAST_HELD} of it. */
  readonly mustHold?: readonly string[];
  /** Pairs that never go into one pile. */
  readonly apart?: readonly (readonly [string, string])[];
  /** Blacks of the shelf, when none is wanted. */
  readonly noBlack?: readonly string[];
  /** Whites of the shelf, of which one pile holds at most one. */
  readonly oneWhite?: readonly string[];
}

export type Contradiction =
  | { readonly code: 'nothing-left' }
  | { readonly code: 'not-on-shelf'; readonly pigment: string }
  | { readonly code: 'wanted-and-left-out'; readonly pigment: string; readonly by: LeftBy }
  | {
      readonly code: 'wanted-apart';
      readonly pigments: readonly [string, string];
      readonly by: ApartBy;
    }
  | { readonly code: 'more-wanted-than-most'; readonly wanted: number; readonly most: number };
type LeftBy = 'leaveOut' | 'noBlack' | 'inStock';
type ApartBy = 'apart' | 'oneWhite';

/** What a wanted pigment gets at least: one part in thirty-two. */
export const LEAST_HELD = 1 / 32;

/** A shelf after the constraints. */
export interface Choice {
  readonly paints: readonly ShelfPaint[];
  /** count × count, 1 where two paints never go into one pile. */
  readonly clash: Uint8Array;
  /** Indices of the wanted paints. */
  readonly held: readonly number[];
}

/** The paints that may be used and how; or which two wishes exclude each other. */
export function choose(
  shelf: Shelf,
  wish: Constraints,
  most: number,
): Result<Choice, Contradiction> {
  const wanted = [...new Set(wish.mustHold ?? [])];
  if (wanted.length > most)
    return fail({ code: 'more-wanted-than-most', wanted: wanted.length, most });
  for (const pigment of wanted) {
    if (!shelf.paints.some((p) => p.pigment === pigment))
      return fail({ code: 'not-on-shelf', pigment });
    const by = leftBy(pigment, wish);
    if (by) return fail({ code: 'wanted-and-left-out', pigment, by });
  }
  for (const [i, a] of wanted.entries()) {
    for (const b of wanted.slice(i + 1)) {
      const by = apartBy(a, b, wish);
      if (by) return fail({ code: 'wanted-apart', pigments: [a, b], by });
    }
  }
  const paints = shelf.paints.filter(
    (p) =>
      colours(p) &&
      !leftBy(p.pigment, wish) &&
      !wanted.some((w) => w !== p.pigment && apartBy(w, p.pigment, wish)),
  );
  if (paints.length === 0) return fail({ code: 'nothing-left' });
  const clash = new Uint8Array(paints.length ** 2);
  for (const [i, a] of paints.entries()) {
    for (const [j, b] of paints.entries()) {
      if (i !== j && apartBy(a.pigment, b.pigment, wish)) clash[i * paints.length + j] = 1;
    }
  }
  const held = wanted.map((w) => paints.findIndex((p) => p.pigment === w)).filter((i) => i >= 0);
  return ok({ paints, clash, held });
}

function leftBy(pigment: string, wish: Constraints): LeftBy | null {
  if (wish.leaveOut?.includes(pigment)) return 'leaveOut';
  if (wish.noBlack?.includes(pigment)) return 'noBlack';
  if (wish.inStock && !wish.inStock.includes(pigment)) return 'inStock';
  return null;
}

function apartBy(a: string, b: string, wish: Constraints): ApartBy | null {
  if (wish.apart?.some(([x, y]) => (x === a && y === b) || (x === b && y === a))) return 'apart';
  if (wish.oneWhite?.includes(a) && wish.oneWhite.includes(b)) return 'oneWhite';
  return null;
}
