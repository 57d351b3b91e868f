import type { Lab } from '../colour/lab.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { fail, ok, type Result } from '../result.ts';
import {
  applyConstraints,
  type ConstraintFault,
  type Constraints,
  LEAST_REQUIRED_SHARE,
} from './constraints.ts';
import { compileShelf } from './search/compiled-shelf.ts';
import { MixtureSearch } from './search/search.ts';
import { TargetMetric } from './search/target-metric.ts';

/** A set of pigments and its best difference from one target. */
export interface ReachingSet {
  /** Names as on the shelf. */
  readonly pigments: readonly string[];
  readonly deltaE00: number;
}

/**
 * Number of sets that reach a target after which its search ends: many, to choose a palette from.
 */
const ENOUGH = 1500;

/**
 * For every target, the sets of pigments that reach it or come near, nearest first: for choosing
 * few pigments for many colours. A set is left out if a subset of it does as well. Every set
 * contains the required pigments.
 * @param targets CIELAB, D65
 * @param most    maximum number of pigments in a set
 */
export function reachingSets(
  targets: readonly Lab[],
  shelf: Shelf,
  most: number,
  options: {
    readonly constraints?: Constraints;
    readonly stopped?: () => boolean;
    readonly onProgress?: (done: number) => void;
  } = {},
): Result<ReachingSet[][], ConstraintFault | { readonly code: 'stopped' }> {
  const choice = applyConstraints(shelf, options.constraints ?? {}, most);
  if (!choice.ok) return choice;
  const { paints, clash, held } = choice.value;
  const stock = compileShelf(paints, shelf, new Map(held.map((i) => [i, LEAST_REQUIRED_SHARE])));
  const search = new MixtureSearch(stock, { most, clash, held }, options.stopped);
  const all: ReachingSet[][] = [];
  for (const [i, target] of targets.entries()) {
    const found = search.find(new TargetMetric(target), false, ENOUGH);
    if (!found) return fail({ code: 'stopped' });
    all.push(
      found.map(({ members, score }) => ({
        pigments: [...new Set([...members, ...held])].map((m) => paints[m]!.pigment),
        deltaE00: score,
      })),
    );
    options.onProgress?.((i + 1) / targets.length);
  }
  return ok(all);
}
