import type { Lab } from '../colour/lab.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { fail, ok, type Result } from '../result.ts';
import { type Constraints, type Contradiction, choose } from './constraint.ts';
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
 * pigments for many colours. A set is missing where a smaller part of it does as well.
 */
export function reachingSets(
  targets: readonly Lab[],
  shelf: Shelf,
  most: number,
  { constraints = {}, stopped }: { constraints?: Constraints; stopped?: () => boolean } = {},
): Result<ReachingSet[][], Contradiction | { readonly code: 'stopped' }> {
  const choice = choose(shelf, constraints, most);
  if (!choice.ok) return choice;
  const { paints, clash } = choice.value;
  const search = new Search(compile(paints, shelf), { most, clash, held: [] }, stopped);
  const all: ReachingSet[][] = [];
  for (const target of targets) {
    const found = search.find(new Metric(target), false, ENOUGH);
    if (!found) return fail({ code: 'stopped' });
    all.push(
      found.map(({ members, score }) => ({
        pigments: members.map((m) => paints[m]!.pigment),
        deltaE00: score,
      })),
    );
  }
  return ok(all);
}
