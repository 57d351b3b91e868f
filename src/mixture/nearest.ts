import { deltaE00 } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import type { Shelf, ShelfPaint } from '../pigment/shelf.ts';
import { ok, type Result } from '../result.ts';
import { type Constraints, type Contradiction, choose, LEAST_HELD } from './constraint.ts';
import { Metric } from './metric.ts';
import { Search } from './search.ts';
import { compile } from './stock.ts';

/** The nearest mixable colour of a shelf (CIELAB, D65). */
export interface Near {
  readonly lab: Lab;
  readonly deltaE00: number;
}

/** Finds nearest mixable colours without recipes or parts, on a shelf compiled once. */
export interface Nearest {
  /** The paints that the constraints allow. */
  readonly paints: readonly ShelfPaint[];
  /**
   * @param quick the faster search, within 0.3 of the full one
   * @returns null when stopped
   */
  of(target: Lab, quick?: boolean): Near | null;
}

/**
 * Compiles a shelf for {@link Nearest}.
 * @param most    maximum number of pigments in a mixture
 * @param stopped polled often; once it returns true, `of` returns null
 */
export function nearestOn(
  shelf: Shelf,
  most: number,
  constraints: Constraints = {},
  stopped?: () => boolean,
): Result<Nearest, Contradiction> {
  const choice = choose(shelf, constraints, most);
  if (!choice.ok) return choice;
  const { paints, clash, held } = choice.value;
  const stock = compile(paints, shelf, new Map(held.map((i) => [i, LEAST_HELD])));
  const search = new Search(stock, { most, clash, held }, stopped);
  return ok({
    paints,
    of(target, quick = false) {
      const best = search.find(new Metric(target), quick)?.[0];
      return best ? { lab: best.lab, deltaE00: deltaE00(target, best.lab) } : null;
    },
  });
}
