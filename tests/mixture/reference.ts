import { deltaE00 } from '../../src/colour/difference.ts';
import type { Lab } from '../../src/colour/lab.ts';
import { compileShelf } from '../../src/mixture/search/compiled-shelf.ts';
import { descend } from '../../src/mixture/search/descent.ts';
import { MixtureEvaluator } from '../../src/mixture/search/mixture-evaluator.ts';
import { TargetMetric } from '../../src/mixture/search/target-metric.ts';
import type { Shelf } from '../../src/pigment/shelf.ts';
import { seeded } from '../colour/random.ts';

/**
 * The plain search that the quick ones are measured by: every set of pigments up to `most`, from
 * equal strengths and from three seeded starts, nothing cut, each end brought to the optimum of
 * CIEDE2000 itself. Slow on purpose.
 */
export function exhaustive(target: Lab, shelf: Shelf, most: number, starts = 4): number[] {
  const stock = compileShelf(shelf.paints, shelf);
  const evaluator = new MixtureEvaluator(stock);
  const metric = new TargetMetric(target);
  const next = seeded(7);
  const best = new Array<number>(most + 1).fill(Number.POSITIVE_INFINITY);
  const members: number[] = [];
  const look = () => {
    for (let start = 0; start < starts; start++) {
      evaluator.n = members.length;
      for (let i = 0; i < members.length; i++) {
        evaluator.members[i] = members[i]!;
        evaluator.x[i] = start === 0 ? 0 : 4 * next() - 4;
      }
      if (members.length > 1 && descend(evaluator, metric, false) < 0) continue;
      if (members.length === 1) evaluator.evaluate();
      const near = deltaE00(target, [evaluator.L, evaluator.a, evaluator.b]);
      let reached = near;
      if (members.length > 1 && near > 0.01 && near < 1.3 * best[members.length]! + 0.3) {
        if (descend(evaluator, metric, true) >= 0)
          reached = Math.min(near, deltaE00(target, [evaluator.L, evaluator.a, evaluator.b]));
      }
      best[members.length] = Math.min(best[members.length]!, reached);
    }
  };
  const walk = (from: number) => {
    if (members.length > 0) look();
    if (members.length === most) return;
    for (let i = from; i < stock.count; i++) {
      members.push(i);
      walk(i + 1);
      members.pop();
    }
  };
  walk(0);
  for (let n = 2; n <= most; n++) best[n] = Math.min(best[n]!, best[n - 1]!);
  return best;
}
