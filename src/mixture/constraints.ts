import type { Shelf, ShelfPaint } from '../pigment/shelf.ts';
import { fail, ok, type Result } from '../result.ts';
import { hasColour } from './search/compiled-shelf.ts';

/** Constraints on every mixture. Pigments are named as on the shelf. */
export interface Constraints {
  /** The only pigments available; default the whole shelf. */
  readonly inStock?: readonly string[];
  /** Excluded pigments, because of a hazard or by choice. */
  readonly leaveOut?: readonly string[];
  /** Pigments required in every mixture, each with a share of at least {@link LEAST_REQUIRED_SHARE}. */
  readonly mustHold?: readonly string[];
  /** Pairs that must not be mixed. */
  readonly apart?: readonly (readonly [string, string])[];
  /** Blacks of the shelf, to exclude them. */
  readonly noBlack?: readonly string[];
  /** Whites of the shelf; a mixture has at most one of them. */
  readonly oneWhite?: readonly string[];
}

/** Constraints that exclude each other or leave no paint. */
export type ConstraintFault =
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

/** Minimum share of a required pigment by volume: one part in thirty-two. */
export const LEAST_REQUIRED_SHARE = 1 / 32;

/** The paints of a shelf that the constraints allow. */
export interface AllowedPaints {
  readonly paints: readonly ShelfPaint[];
  /** count × count, 1 for two paints that must not be mixed. */
  readonly clash: Uint8Array;
  /** Indices of the required paints. */
  readonly held: readonly number[];
}

/** Applies constraints to a shelf. @param most maximum number of pigments in a mixture */
export function applyConstraints(
  shelf: Shelf,
  wish: Constraints,
  most: number,
): Result<AllowedPaints, ConstraintFault> {
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
      hasColour(p) &&
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
