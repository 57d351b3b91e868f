import { bisect } from '../bisection.ts';
import { deltaE00 } from '../colour/difference.ts';
import { BANDS, spectrum } from '../colour/grid.ts';
import type { Lab } from '../colour/lab.ts';
import type { Shelf, ShelfPaint } from '../pigment/shelf.ts';
import type { AllowedPaints } from './constraints.ts';
import { type MixturePart, REACHABLE_DELTA_E } from './mixture-types.ts';
import { ofParts, predictColour, shelfPaintOf } from './predict.ts';
import { type CompiledShelf, compileShelf } from './search/compiled-shelf.ts';
import { ABANDONED, descend } from './search/descent.ts';
import { MixtureEvaluator } from './search/mixture-evaluator.ts';
import { TargetMetric } from './search/target-metric.ts';

/** An existing pile. */
export interface ExistingPile {
  /** Its composition by volume. */
  readonly parts: readonly MixturePart[];
  /** Its volume in cm³, if known. */
  readonly cm3?: number;
}

/** One way to correct a pile. */
export interface Addition {
  /** In the unit of the pile's parts (not necessarily whole), and in cm³ if its volume is known. */
  readonly add: readonly (MixturePart & { readonly cm3: number | null })[];
  /** Total volume added, as a share of the pile. */
  readonly total: number;
  /** Predicted colour after the addition (CIELAB, D65). */
  readonly lab: Lab;
  /** CIEDE2000 to the target. */
  readonly deltaE00: number;
}

/** CIEDE2000 up to which a pile needs no correction. */
export const NEAR_ENOUGH = 0.5;
/** CIEDE2000 that may be given up for a smaller addition. */
const AFFORDABLE_LOSS = 0.25;
const OPTIONS = 5;

/** Searches additions to a pile, which is treated as one more paint: the last of the stock. */
export class AdditionSearch {
  private readonly batch: ExistingPile;
  private readonly target: Lab;
  private readonly paints: readonly ShelfPaint[];
  private readonly clash: Uint8Array;
  private readonly stock: CompiledShelf;
  private readonly evaluator: MixtureEvaluator;
  private readonly metric: TargetMetric;
  private readonly offset: Lab;
  private readonly volume: number;

  constructor(
    held: readonly MixturePart[],
    batch: ExistingPile,
    turnedOut: Lab,
    target: Lab,
    shelf: Shelf,
    choice: AllowedPaints,
  ) {
    this.batch = batch;
    this.target = target;
    this.paints = choice.paints;
    this.clash = choice.clash;
    this.volume = held.reduce((sum, p) => sum + p.parts, 0);
    const pile: ShelfPaint = { pigment: '', label: 'batch', paint: asPaint(held, shelf) };
    this.stock = compileShelf([...choice.paints, pile], shelf);
    this.evaluator = new MixtureEvaluator(this.stock);
    const predicted = predictColour(ofParts(held), shelf);
    const axis = (i: 0 | 1 | 2) => turnedOut[i] - predicted[i];
    this.offset = [axis(0), axis(1), axis(2)];
    const aim = (i: 0 | 1 | 2) => target[i] - this.offset[i];
    this.metric = new TargetMetric([aim(0), aim(1), aim(2)]);
  }

  /** The best additions of up to `most` pigments, ranked. */
  options(most: number): Addition[] {
    const found: Addition[] = [];
    const set: number[] = [];
    const walk = (from: number) => {
      if (set.length > 0) {
        const one = this.attempt(set);
        if (one) found.push(one);
      }
      if (set.length === most) return;
      for (let i = from; i < this.paints.length; i++) {
        if (set.some((j) => this.clash[i * this.paints.length + j] === 1)) continue;
        set.push(i);
        walk(i + 1);
        set.pop();
      }
    };
    walk(0);
    return this.ranked(found);
  }

  /**
   * Additions that reach the target by total, then the others by difference; no supersets of
   * others.
   */
  private ranked(found: readonly Addition[]): Addition[] {
    const reached = found
      .filter((o) => o.deltaE00 <= REACHABLE_DELTA_E)
      .sort((a, b) => a.total - b.total);
    const rest = found
      .filter((o) => o.deltaE00 > REACHABLE_DELTA_E)
      .sort((a, b) => a.deltaE00 - b.deltaE00 || a.total - b.total);
    const shown: Addition[] = [];
    for (const one of [...reached, ...rest]) {
      if (shown.length >= OPTIONS || (shown.length > 0 && one.deltaE00 > shown[0]!.deltaE00 + 2))
        continue;
      const names = one.add.map((a) => a.pigment);
      const more = shown.some((o) => o.add.every((a) => names.includes(a.pigment)));
      if (!more) shown.push(one);
    }
    return shown;
  }

  /** The best addition of a set of pigments, reduced to the smallest amount that is near enough. */
  private attempt(set: readonly number[]): Addition | null {
    const { evaluator, metric, stock } = this;
    const n = set.length;
    let best: Float64Array | null = null;
    let least = Number.POSITIVE_INFINITY;
    for (const start of [-1, -3.5]) {
      evaluator.n = n + 1;
      evaluator.members.set([...set, this.paints.length]);
      evaluator.x.fill(start, 0, n);
      evaluator.x[n] = 0;
      const error = descend(evaluator, metric, true);
      if (error === ABANDONED || error >= least) continue;
      least = error;
      best = evaluator.x.slice(0, n + 1);
      if (error < NEAR_ENOUGH * NEAR_ENOUGH) break;
    }
    if (!best) return null;
    const added = (share: number): { amounts: number[]; lab: Lab; deltaE00: number } => {
      evaluator.n = n + 1;
      evaluator.members.set([...set, this.paints.length]);
      const amounts = set.map((i, k) => {
        evaluator.x[k] = best[k]! - best[n]! + Math.log(share);
        return (Math.exp(evaluator.x[k]!) * stock.paste[i]!) / stock.paste[this.paints.length]!;
      });
      evaluator.x[n] = 0;
      evaluator.evaluateColour();
      const { offset } = this;
      const lab: Lab = [evaluator.L + offset[0], evaluator.a + offset[1], evaluator.b + offset[2]];
      return { amounts, lab, deltaE00: deltaE00(this.target, lab) };
    };
    const all = added(1);
    const enough = Math.max(all.deltaE00 + AFFORDABLE_LOSS, NEAR_ENOUGH);
    // More paint can follow, so stop where the rest brings no visible gain (bisection).
    const isTooLittle = (share: number) => added(share).deltaE00 > enough;
    const share = isTooLittle(1) ? 1 : bisect(0.2, 1, isTooLittle, 12)[1];
    const { amounts, lab, deltaE00: difference } = added(share);
    const { cm3 } = this.batch;
    const add = set.map((i, k) => ({
      pigment: this.paints[i]!.pigment,
      parts: amounts[k]! * this.volume,
      cm3: cm3 === undefined ? null : amounts[k]! * cm3,
    }));
    return {
      add: add.sort((a, b) => b.parts - a.parts),
      total: amounts.reduce((sum, a) => sum + a, 0),
      lab,
      deltaE00: difference,
    };
  }
}

/** K and S of a mixture as one paint, per volume. */
function asPaint(parts: readonly MixturePart[], shelf: Shelf): ShelfPaint['paint'] {
  const total = parts.reduce((sum, p) => sum + p.parts, 0);
  const K = spectrum<'K'>();
  const S = spectrum<'S'>();
  for (const { pigment, parts: amount } of parts) {
    const paint = shelfPaintOf(pigment, shelf);
    for (let b = 0; b < BANDS; b++) {
      K[b]! += (amount / total) * paint.K[b]!;
      S[b]! += (amount / total) * paint.S[b]!;
    }
  }
  return { K, S };
}
