import type { Lab } from '../colour/lab.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { fail, ok, type Result } from '../result.ts';
import { type Constraints, type Contradiction, choose, LEAST_HELD } from './constraint.ts';
import { Metric } from './metric.ts';
import { Search } from './search.ts';
import { compile } from './stock.ts';

/** A set of pigments and how near it comes to one target. */
export interface ReachingSet {
  /** Names, as the shelf has them. */
  readonly pigments: readonly string[];
  readonly deltaE00: number;
}

/** Sets that meet a target which are looked for, when the question is which pigments to own. */
const ENOUGH = 1500;

/**
 * For every target the sets of pigments that mix it or come near, nearest first: for choosing few
 * pigments for many colours. A set is missing where a smaller part of it does as well; every set holds
 * what the constraints want in every pile.
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
): Result<ReachingSet[][], Contradiction | { readonly code: 'stopped' }> {
  const choice = choose(shelf, options.constraints ?? {}, most);
  if (!choice.ok) return choice;
  const { paints, clash, held } = choice.value;
  const stock = compile(paints, shelf, new Map(held.map((i) => [i, LEAST_HELD])));
  const search = new Search(stock, { most, clash, held }, options.stopped);
  const all: ReachingSet[][] = [];
  for (const [i, target] of targets.entries()) {
    const found = search.find(new Metric(target), false, ENOUGH);
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
