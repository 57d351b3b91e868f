import type { Lab } from '../colour/lab.ts';
import type { Constraints } from '../mixture/constraint.ts';
import { findMixtures } from '../mixture/find.ts';
import type { Answer } from '../mixture/mixture.ts';
import type { MixFault } from '../mixture/work.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { fail, ok, type Result } from '../result.ts';

/** What every pile of one piece of work obeys. */
export interface BenchOptions {
  /** Most pigments in a pile, 1 to 6; 4 where not given. */
  readonly most?: number;
  readonly constraints?: Constraints;
  /** Asked often; the work ends soon after it says yes, with the fault `stopped`. */
  readonly stopped?: () => boolean;
}

/** Narrows one search on a bench. */
export interface Use {
  readonly most?: number;
  /** Only these of what the bench allows. */
  readonly of?: readonly string[];
  readonly without?: readonly string[];
  /** For looking around: within 0.3 of the whole search, several times faster. */
  readonly quick?: boolean;
  /** Other mixtures beside the best; none where not given. */
  readonly alternatives?: number;
}

/** Carries a fault out of the depth of a piece of work; {@link atBench} turns it into a value. */
class Halt extends Error {
  readonly fault: MixFault;
  constructor(fault: MixFault) {
    super(fault.code);
    this.fault = fault;
  }
}

/** A shelf with its constraints, asked for many piles in turn. */
export class Bench {
  readonly shelf: Shelf;
  readonly most: number;
  private readonly constraints: Constraints;
  private readonly stopped: (() => boolean) | undefined;

  constructor(shelf: Shelf, { most = 4, constraints = {}, stopped }: BenchOptions) {
    this.shelf = shelf;
    this.most = most;
    this.constraints = constraints;
    this.stopped = stopped;
  }

  /** The nearest mixture; null where this use leaves no pigment. */
  mix(lab: Lab, use: Use = {}): Answer | null {
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
    // A wish of the painter's that contradicts another is theirs to mend; one that only this use
    // contradicts is no answer.
    const narrowed = use.of !== undefined || use.without !== undefined || use.most !== undefined;
    if (narrowed && found.fault.code !== 'stopped' && found.fault.code !== 'not-a-colour')
      return null;
    throw new Halt(found.fault);
  }
}

function both(
  a: readonly string[] | undefined,
  b: readonly string[] | undefined,
): readonly string[] | undefined {
  if (a === undefined || b === undefined) return a ?? b;
  return a.filter((pigment) => b.includes(pigment));
}

/** Runs a piece of work with a bench; what the painter can act on comes back as a fault. */
export function atBench<T>(
  shelf: Shelf,
  options: BenchOptions,
  work: (bench: Bench) => T,
): Result<T, MixFault> {
  try {
    return ok(work(new Bench(shelf, options)));
  } catch (error) {
    if (error instanceof Halt) return fail(error.fault);
    throw error;
  }
}

/**
 * How far along a way the shelf goes: the greatest t in 0…1 whose colour passes, found by halving; null
 * where not even t = 0 passes. It takes for granted that what lies before a colour that passes passes.
 */
export function furthest<T>(
  at: (t: number) => T | null,
  rounds = 6,
): { readonly t: number; readonly value: T } | null {
  const whole = at(1);
  if (whole !== null) return { t: 1, value: whole };
  const start = at(0);
  if (start === null) return null;
  let [low, high] = [0, 1];
  let value = start;
  for (let round = 0; round < rounds; round++) {
    const middle = (low + high) / 2;
    const found = at(middle);
    if (found === null) high = middle;
    else [low, value] = [middle, found];
  }
  return { t: low, value };
}
