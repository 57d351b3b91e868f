import { bisect } from '../bisection.ts';
import type { Lab } from '../colour/lab.ts';
import type { Constraints } from '../mixture/constraints.ts';
import { findMixtures } from '../mixture/find-mixtures.ts';
import type { MixtureAnswer } from '../mixture/mixture-types.ts';
import type { MixFault } from '../mixture/search-options.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { fail, ok, type Result } from '../result.ts';

/** Settings that every search of one job obeys. */
export interface PileSearchOptions {
  /** Most pigments in a pile, 1 to 6; default 4. */
  readonly most?: number;
  readonly constraints?: Constraints;
  /** Polled often; soon after it returns true the job ends with the fault `stopped`. */
  readonly stopped?: () => boolean;
}

/** Narrows one search. */
interface SearchNarrowing {
  readonly most?: number;
  /** Only these of the pigments that the settings allow. */
  readonly of?: readonly string[];
  readonly without?: readonly string[];
  /** Faster, approximate search: within 0.3 of the full one. */
  readonly quick?: boolean;
  /** Number of other mixtures besides the best; default 0. */
  readonly alternatives?: number;
}

/** Carries a fault out of nested calls; {@link withPileSearch} turns it into a value. */
class MixFaultError extends Error {
  readonly fault: MixFault;
  constructor(fault: MixFault) {
    super(fault.code);
    this.fault = fault;
  }
}

/** A shelf with its constraints, searched for many piles in turn. */
export class PileSearch {
  readonly shelf: Shelf;
  readonly most: number;
  private readonly constraints: Constraints;
  private readonly stopped: (() => boolean) | undefined;

  constructor(shelf: Shelf, { most = 4, constraints = {}, stopped }: PileSearchOptions) {
    this.shelf = shelf;
    this.most = most;
    this.constraints = constraints;
    this.stopped = stopped;
  }

  /**
   * The nearest mixture; null if the narrowed search leaves no pigment.
   * @throws Halt if the search is stopped or the constraints themselves cannot be met
   */
  mix(lab: Lab, use: SearchNarrowing = {}): MixtureAnswer | null {
    const { constraints } = this;
    const inStock = both(constraints.inStock, use.of);
    const found = findMixtures([lab], this.shelf, {
      most: Math.min(use.most ?? this.most, this.most),
      quick: use.quick ?? false,
      alternatives: use.alternatives ?? 0,
      constraints: {
        ...constraints,
        ...(inStock ? { inStock } : {}),
        leaveOut: [...(constraints.leaveOut ?? []), ...(use.without ?? [])],
      },
      ...(this.stopped ? { stopped: this.stopped } : {}),
    });
    if (found.ok) return found.value[0]!;
    // A fault of the painter's own constraints is reported; one caused only by this narrowing is
    // null.
    const narrowed = use.of !== undefined || use.without !== undefined || use.most !== undefined;
    if (narrowed && found.fault.code !== 'stopped' && found.fault.code !== 'not-a-colour')
      return null;
    throw new MixFaultError(found.fault);
  }
}

function both(
  a: readonly string[] | undefined,
  b: readonly string[] | undefined,
): readonly string[] | undefined {
  if (a === undefined || b === undefined) return a ?? b;
  return a.filter((pigment) => b.includes(pigment));
}

/** Runs a job with such a searcher and returns faults as values. */
export function withPileSearch<T>(
  shelf: Shelf,
  options: PileSearchOptions,
  work: (bench: PileSearch) => T,
): Result<T, MixFault> {
  try {
    return ok(work(new PileSearch(shelf, options)));
  } catch (error) {
    if (error instanceof MixFaultError) return fail(error.fault);
    throw error;
  }
}

/**
 * Bisection for the largest t in 0…1 whose value passes; null if not even t = 0 does. Assumes that
 * everything below a passing t passes too.
 * @param at the value at t, or null if it does not pass
 */
export function bisectFurthest<T>(
  at: (t: number) => T | null,
  rounds = 6,
): { readonly t: number; readonly value: T } | null {
  const whole = at(1);
  if (whole !== null) return { t: 1, value: whole };
  const start = at(0);
  if (start === null) return null;
  let value = start;
  const passes = (share: number): boolean => {
    const found = at(share);
    if (found !== null) value = found;
    return found !== null;
  };
  const [t] = bisect(0, 1, passes, rounds);
  return { t, value };
}
