import { deltaE00 } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import type { Shelf, ShelfPaint } from '../pigment/shelf.ts';
import { ok, type Result } from '../result.ts';
import {
  applyConstraints,
  type ConstraintFault,
  type Constraints,
  LEAST_REQUIRED_SHARE,
} from './constraints.ts';
import { compileShelf } from './search/compiled-shelf.ts';
import { MixtureSearch } from './search/search.ts';
import { TargetMetric } from './search/target-metric.ts';

/** The nearest mixable colour of a shelf (CIELAB, D65). */
interface NearestColour {
  readonly lab: Lab;
  readonly deltaE00: number;
}

/** Finds nearest mixable colours without recipes or parts, on a shelf compiled once. */
export interface NearestColourFinder {
  /** The paints that the constraints allow. */
  readonly paints: readonly ShelfPaint[];
  /**
   * @param quick the faster search, within 0.3 of the full one
   * @returns null when stopped
   */
  of(target: Lab, quick?: boolean): NearestColour | null;
}

/**
 * Compiles a shelf for {@link NearestColourFinder}.
 * @param most    maximum number of pigments in a mixture
 * @param stopped polled often; once it returns true, `of` returns null
 */
export function nearestColourFinder(
  shelf: Shelf,
  most: number,
  constraints: Constraints = {},
  stopped?: () => boolean,
): Result<NearestColourFinder, ConstraintFault> {
  const choice = applyConstraints(shelf, constraints, most);
  if (!choice.ok) return choice;
  const { paints, clash, held } = choice.value;
  const stock = compileShelf(paints, shelf, new Map(held.map((i) => [i, LEAST_REQUIRED_SHARE])));
  const search = new MixtureSearch(stock, { most, clash, held }, stopped);
  return ok({
    paints,
    of(target, quick = false) {
      const best = search.find(new TargetMetric(target), quick)?.[0];
      return best ? { lab: best.lab, deltaE00: deltaE00(target, best.lab) } : null;
    },
  });
}
