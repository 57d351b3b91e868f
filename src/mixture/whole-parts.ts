import { type CompiledShelf, MOST_PIGMENTS } from './search/compiled-shelf.ts';
import { MixtureEvaluator } from './search/mixture-evaluator.ts';
import type { TargetMetric } from './search/target-metric.ts';

/** Limits of whole parts that can be measured. */
export interface PartLimits {
  /** Maximum sum of the parts. */
  readonly total: number;
  /** Maximum ratio of the largest to the smallest part. */
  readonly ratio: number;
  /** If parts within `ratio` come this near (CIEDE2000), parts beyond it are not considered. */
  readonly near: number;
  /**
   * CIEDE2000 that parts beyond `ratio` must gain to be preferred; Infinity forbids them. A light
   * tint of a strong pigment has no other whole parts: of 161 Munsell colours that twelve acrylic
   * paints reach, one in ten is missed by 4.4 or more by all whole parts within 12 to 1. Let-downs
   * make these measurable.
   */
  readonly beyond: number;
}
/** Default limits: parts up to 32 in all. */
export const FINE_PARTS: PartLimits = { total: 32, ratio: 12, near: 3, beyond: 1 };
/** Coarser limits: parts up to 12 in all. */
export const COARSE_PARTS: PartLimits = { total: 12, ratio: 12, near: 3, beyond: 1 };

/** A mixture in whole parts. */
export interface WholeParts {
  readonly members: readonly number[];
  readonly parts: readonly number[];
  readonly lab: readonly [number, number, number];
  /** The metric's distance. */
  readonly score: number;
  /** `score` plus a small penalty per pigment and part, to decide between equal colours. */
  readonly cost: number;
}

/** Penalties in CIEDE2000: fewer pigments, then fewer parts, are easier to measure. */
const PER_PIGMENT = 0.01;
const PER_PART = 0.001;

/** Number of predicted part counts per set that are evaluated exactly. */
const SHORTLIST = 6;
/** Number of sets that are evaluated exactly. */
const SETS = 40;

/** A set of pigments with the shares (of paste, sum 1) of its best mixture. */
export interface RecipeSource {
  readonly members: readonly number[];
  readonly shares: readonly number[];
  /** The metric's distance of that mixture; its whole parts can hardly be nearer. */
  readonly score: number;
}

/** Finds whole-number parts for sets of pigments; its buffers are reused between calls. */
export class WholePartsFinder {
  private readonly stock: CompiledShelf;
  private readonly evaluator: MixtureEvaluator;
  private readonly limits: PartLimits;
  private readonly slopes = new Float64Array(3 * MOST_PIGMENTS);
  private readonly r = new Float64Array(3);
  private readonly log: Float64Array;
  private readonly candidateParts = new Int32Array(MOST_PIGMENTS);
  private readonly low = new Int32Array(MOST_PIGMENTS);
  private readonly list: { cost: number; parts: number[] }[] = [];
  /** Current penalty of parts beyond the ratio. */
  private past = Number.POSITIVE_INFINITY;

  /** @param stock compiled without required paste, because parts name every pigment */
  constructor(stock: CompiledShelf, limits: PartLimits) {
    this.stock = stock;
    this.limits = limits;
    this.evaluator = new MixtureEvaluator(stock);
    this.log = Float64Array.from({ length: limits.total + 1 }, (_, i) => Math.log(i));
  }

  /**
   * The best parts of any of the sources: chosen among near-equal recipes, because rounding only
   * the best recipe is several times worse.
   * @param sources sorted by score, ascending
   */
  best(metric: TargetMetric, sources: readonly RecipeSource[]): WholeParts | null {
    return this.within(() => this.among(metric, sources));
  }

  /** The best parts of one set; null if the limits allow none. */
  of(metric: TargetMetric, source: RecipeSource): WholeParts | null {
    return this.within(() => this.divide(metric, source));
  }

  /**
   * Runs a search within the ratio, then beyond it if that is allowed and the result is not near.
   */
  private within(look: () => WholeParts | null): WholeParts | null {
    const { near, beyond } = this.limits;
    this.past = Number.POSITIVE_INFINITY;
    const strict = look();
    if (beyond === Number.POSITIVE_INFINITY || (strict && strict.score <= near)) return strict;
    this.past = beyond;
    return look() ?? strict;
  }

  private among(metric: TargetMetric, sources: readonly RecipeSource[]): WholeParts | null {
    const predicted: { source: RecipeSource; cost: number }[] = [];
    let least = Number.POSITIVE_INFINITY;
    for (const source of sources) {
      // Sources are sorted by score, and parts hardly beat the recipe they approximate.
      if (source.score > least + 0.5) break;
      const cost = this.predict(metric, source);
      if (cost === Number.POSITIVE_INFINITY) continue;
      predicted.push({ source, cost });
      least = Math.min(least, cost);
    }
    predicted.sort((a, b) => a.cost - b.cost);
    let found: WholeParts | null = null;
    for (const { source, cost } of predicted.slice(0, SETS)) {
      if (found && cost > 2 * found.cost + 1) break;
      const whole = this.divide(metric, source);
      if (whole && (!found || whole.cost < found.cost)) found = whole;
    }
    return found;
  }

  private divide(metric: TargetMetric, source: RecipeSource): WholeParts | null {
    const n = source.members.length;
    if (n > this.limits.total) return null;
    this.predict(metric, source);
    let best: WholeParts | null = null;
    const starts = this.list.map(({ parts }) => parts);
    if (starts.length === 0) starts.push(this.pressed(source.shares));
    for (const parts of starts) {
      const whole = this.look(metric, source.members, parts);
      if (!best || whole.cost < best.cost) best = whole;
    }
    return best ? this.climb(metric, best) : null;
  }

  /** Start within the ratio for a recipe that exceeds it. */
  private pressed(shares: readonly number[]): number[] {
    const { ratio, total } = this.limits;
    const largest = Math.max(...shares);
    const parts = shares.map((share) => Math.max(1, Math.round((ratio * share) / largest)));
    const sum = parts.reduce((a, b) => a + b, 0);
    return sum <= total ? parts : shares.map(() => 1);
  }

  /** Hill climbing: one part more or less of one pigment, as long as the cost falls. */
  private climb(metric: TargetMetric, from: WholeParts): WholeParts {
    let best = from;
    for (let round = 0; round < 24; round++) {
      let next = best;
      for (let i = 0; i < best.parts.length; i++) {
        for (const step of [1, -1]) {
          const parts = [...best.parts];
          parts[i]! += step;
          if (this.toll(parts) === Number.POSITIVE_INFINITY) continue;
          const whole = this.look(metric, best.members, parts);
          if (whole.cost < next.cost) next = whole;
        }
      }
      if (next === best) break;
      best = next;
    }
    return best;
  }

  /**
   * Penalty of parts besides their colour: small, plus `past` beyond the ratio; Infinity if not
   * allowed.
   */
  private toll(parts: ArrayLike<number>, n = parts.length): number {
    const { limits } = this;
    let total = 0;
    let most = 0;
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < n; i++) {
      const p = parts[i]!;
      total += p;
      if (p > most) most = p;
      if (p < least) least = p;
    }
    if (least < 1 || total > limits.total) return Number.POSITIVE_INFINITY;
    const effort = PER_PIGMENT * n + PER_PART * total;
    return most <= limits.ratio * least ? effort : effort + this.past;
  }

  private look(
    metric: TargetMetric,
    members: readonly number[],
    parts: readonly number[],
  ): WholeParts {
    const { evaluator, stock } = this;
    evaluator.n = members.length;
    for (let i = 0; i < members.length; i++) {
      evaluator.members[i] = members[i]!;
      evaluator.x[i] = Math.log(parts[i]! / stock.paste[members[i]!]!);
    }
    evaluator.evaluateColour();
    const score = Math.sqrt(metric.exact(evaluator.L, evaluator.a, evaluator.b));
    return {
      members,
      parts: reduce(parts),
      lab: [evaluator.L, evaluator.a, evaluator.b],
      score,
      cost: score + this.toll(parts),
    };
  }

  /**
   * Smallest cost of any parts by a linear model around the recipe; fills the shortlist `list`. For
   * each total, all combinations of rounding the shares up or down are tried.
   */
  private predict(metric: TargetMetric, source: RecipeSource): number {
    const { evaluator, stock, slopes, r, list, low, log, limits, candidateParts } = this;
    const { members, shares } = source;
    const n = members.length;
    list.length = 0;
    evaluator.n = n;
    for (let i = 0; i < n; i++) {
      evaluator.members[i] = members[i]!;
      evaluator.x[i] = Math.log(shares[i]! / stock.paste[members[i]!]!);
    }
    evaluator.evaluate();
    metric.slopes(evaluator.L, evaluator.a, evaluator.b);
    r.set(metric.r);
    const { local } = metric;
    for (let i = 0; i < n; i++) {
      for (let k = 0; k < 3; k++) {
        let sum = 0;
        for (let axis = 0; axis < 3; axis++)
          sum += local[3 * k + axis]! * evaluator.J[3 * i + axis]!;
        slopes[3 * i + k] = sum;
        r[k]! -= sum * Math.log(shares[i]!);
      }
    }
    let least = Number.POSITIVE_INFINITY;
    let bar = Number.POSITIVE_INFINITY;
    for (let total = n; total <= limits.total; total++) {
      for (let i = 0; i < n; i++) low[i] = Math.floor(shares[i]! * total);
      for (let mask = 0; mask < 1 << n; mask++) {
        let sum = 0;
        let r0 = r[0]!;
        let r1 = r[1]!;
        let r2 = r[2]!;
        for (let i = 0; i < n; i++) {
          const p = low[i]! + ((mask >> i) & 1);
          candidateParts[i] = p;
          sum += p;
        }
        // Consider each combination only at its own total.
        if (sum !== total) continue;
        const toll = this.toll(candidateParts, n);
        if (toll === Number.POSITIVE_INFINITY) continue;
        for (let i = 0; i < n; i++) {
          const d = log[candidateParts[i]!]!;
          r0 += slopes[3 * i]! * d;
          r1 += slopes[3 * i + 1]! * d;
          r2 += slopes[3 * i + 2]! * d;
        }
        const cost = Math.sqrt(r0 * r0 + r1 * r1 + r2 * r2) + toll;
        if (cost < least) least = cost;
        if (cost >= bar) continue;
        list.push({ cost, parts: Array.from(candidateParts.subarray(0, n)) });
        if (list.length > 2 * SHORTLIST) {
          list.sort((a, b) => a.cost - b.cost);
          list.length = SHORTLIST;
          bar = list[SHORTLIST - 1]!.cost;
        }
      }
    }
    list.sort((a, b) => a.cost - b.cost);
    if (list.length > SHORTLIST) list.length = SHORTLIST;
    return least;
  }
}

/** Divides parts by their greatest common divisor: 2 : 4 becomes 1 : 2. */
function reduce(parts: readonly number[]): number[] {
  const divisor = parts.reduce(gcd);
  return parts.map((p) => p / divisor);
}
const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));
