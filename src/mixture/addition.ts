import { deltaE00 } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { fail, ok, type Result } from '../result.ts';
import { type Constraints, type Contradiction, choose } from './constraint.ts';
import { type Addition, type Batch, Mender, RIGHT } from './mender.ts';
import { REACH } from './mixture.ts';
import { nearestOn } from './nearest.ts';
import { type Slip, slipOf } from './slip.ts';
import { MOST } from './stock.ts';

/** How a batch is mended. */
export interface Correction {
  /** How far the batch is now. */
  readonly now: number;
  /** Those that reach the target first, smallest total first; empty where the batch is right. */
  readonly options: readonly Addition[];
  /** The one part whose mismeasuring explains the colour, and how many times too much it was. */
  readonly slip: Slip | null;
  /** When it is better to start again, and what a fresh pile would reach. */
  readonly startAgain: { readonly why: 'too-much' | 'out-of-reach'; readonly fresh: number } | null;
}

export interface AddOptions {
  /** Most pigments to add, 1 to 5; 3 where not given. */
  readonly most?: number;
  readonly constraints?: Constraints;
}

export type AddFault =
  | Contradiction
  /** Index 0 is the colour that the batch turned out to be, 1 the target. */
  | { readonly code: 'not-a-colour'; readonly index: number }
  | { readonly code: 'empty-batch' }
  | { readonly code: 'not-on-shelf'; readonly pigment: string };

/** Adding more than this many times the batch: start again. */
const TOO_MUCH = 2;

/**
 * What to add to a batch, and how much, to bring the colour that it turned out to be nearest to a
 * target. Paint can only be added: every option is a mixture that holds the whole batch. What the
 * model gets wrong about the batch (after the likeliest slip of one part is put right) is taken off
 * the target, as the same error will be there after the addition.
 */
export function additions(
  batch: Batch,
  turnedOut: Lab,
  target: Lab,
  shelf: Shelf,
  options: AddOptions = {},
): Result<Correction, AddFault> {
  const { most = 3, constraints = {} } = options;
  const index = [turnedOut, target].findIndex((lab) => !lab.every(Number.isFinite));
  if (index >= 0) return fail({ code: 'not-a-colour', index });
  const parts = batch.parts.filter((p) => p.parts > 0);
  if (parts.length === 0) return fail({ code: 'empty-batch' });
  const absent = parts.find((p) => !shelf.paints.some((s) => s.pigment === p.pigment));
  if (absent) return fail({ code: 'not-on-shelf', pigment: absent.pigment });
  const choice = choose(shelf, constraints, MOST);
  if (!choice.ok) return choice;

  const now = deltaE00(target, turnedOut);
  if (now <= RIGHT) return ok({ now, options: [], slip: null, startAgain: null });
  const slip = slipOf(parts, turnedOut, shelf);
  const held = slip
    ? parts.map((p) => (p.pigment === slip.pigment ? { ...p, parts: p.parts * slip.factor } : p))
    : parts;
  const mender = new Mender(held, batch, turnedOut, target, shelf, choice.value);
  const found = mender.options(Math.min(most, MOST - 1)).filter((o) => o.deltaE00 < now);
  const fresh = nearestOn(shelf, 4, constraints);
  const reach = (fresh.ok ? fresh.value.of(target)?.deltaE00 : null) ?? Number.POSITIVE_INFINITY;
  const best = found[0];
  let startAgain: Correction['startAgain'] = null;
  if (best && best.deltaE00 <= Math.max(REACH, reach + REACH)) {
    if (best.total > TOO_MUCH) startAgain = { why: 'too-much', fresh: reach };
  } else if (now > reach + REACH) startAgain = { why: 'out-of-reach', fresh: reach };
  return ok({ now, options: found, slip, startAgain });
}
