import { deltaE00 } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { fail, ok, type Result } from '../result.ts';
import {
  type Addition,
  AdditionSearch,
  type ExistingPile,
  NEAR_ENOUGH,
} from './addition-search.ts';
import { applyConstraints, type ConstraintFault, type Constraints } from './constraints.ts';
import { likelyMeasuringError, type MeasuringError } from './measuring-error.ts';
import { REACHABLE_DELTA_E } from './mixture-types.ts';
import { nearestColourFinder } from './nearest-colour.ts';
import { MOST_PIGMENTS } from './search/compiled-shelf.ts';

/** How to correct a pile. */
export interface PileCorrection {
  /** CIEDE2000 from the pile's present colour to the target. */
  readonly now: number;
  /** Additions that reach the target first, by total; empty if the pile is near enough. */
  readonly options: readonly Addition[];
  /** The likely measuring error of one part; null if no single error explains the colour. */
  readonly slip: MeasuringError | null;
  /** Set if a fresh pile is better; `fresh` is the CIEDE2000 that it would reach. */
  readonly startAgain: { readonly why: 'too-much' | 'out-of-reach'; readonly fresh: number } | null;
}

export interface AddOptions {
  /** Maximum number of pigments to add, 1 to 5; default 3. */
  readonly most?: number;
  readonly constraints?: Constraints;
}

export type AddFault =
  | ConstraintFault
  /** Index 0 is the observed colour of the pile, 1 the target. */
  | { readonly code: 'not-a-colour'; readonly index: number }
  | { readonly code: 'empty-batch' }
  | { readonly code: 'not-on-shelf'; readonly pigment: string };

/** Above this ratio of the addition to the pile, starting again is better. */
const LARGEST_ADDITION = 2;

/**
 * What to add to a pile to bring it from its observed colour nearest to a target. Paint can only be
 * added, so every option contains the whole pile. The model's error for the pile (after correction
 * of a likely measuring error) is assumed to remain after the addition and is subtracted from the
 * target.
 * @param batch     the pile as measured
 * @param turnedOut its observed colour (CIELAB, D65)
 * @param target    CIELAB, D65
 */
export function correctPile(
  batch: ExistingPile,
  turnedOut: Lab,
  target: Lab,
  shelf: Shelf,
  options: AddOptions = {},
): Result<PileCorrection, AddFault> {
  const { most = 3, constraints = {} } = options;
  const index = [turnedOut, target].findIndex((lab) => !lab.every(Number.isFinite));
  if (index >= 0) return fail({ code: 'not-a-colour', index });
  const parts = batch.parts.filter((p) => p.parts > 0);
  if (parts.length === 0) return fail({ code: 'empty-batch' });
  const absent = parts.find((p) => !shelf.paints.some((s) => s.pigment === p.pigment));
  if (absent) return fail({ code: 'not-on-shelf', pigment: absent.pigment });
  const choice = applyConstraints(shelf, constraints, MOST_PIGMENTS);
  if (!choice.ok) return choice;

  const now = deltaE00(target, turnedOut);
  if (now <= NEAR_ENOUGH) return ok({ now, options: [], slip: null, startAgain: null });
  const slip = likelyMeasuringError(parts, turnedOut, shelf);
  const held = slip
    ? parts.map((p) => (p.pigment === slip.pigment ? { ...p, parts: p.parts * slip.factor } : p))
    : parts;
  const mender = new AdditionSearch(held, batch, turnedOut, target, shelf, choice.value);
  const found = mender.options(Math.min(most, MOST_PIGMENTS - 1)).filter((o) => o.deltaE00 < now);
  const fresh = nearestColourFinder(shelf, 4, constraints);
  const reach = (fresh.ok ? fresh.value.of(target)?.deltaE00 : null) ?? Number.POSITIVE_INFINITY;
  const best = found[0];
  let startAgain: PileCorrection['startAgain'] = null;
  if (best && best.deltaE00 <= Math.max(REACHABLE_DELTA_E, reach + REACHABLE_DELTA_E)) {
    if (best.total > LARGEST_ADDITION) startAgain = { why: 'too-much', fresh: reach };
  } else if (now > reach + REACHABLE_DELTA_E) startAgain = { why: 'out-of-reach', fresh: reach };
  return ok({ now, options: found, slip, startAgain });
}
