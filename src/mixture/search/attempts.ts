import { type Candidate, insert, type PigmentConstraints } from './candidate.ts';
import type { CompiledShelf } from './compiled-shelf.ts';
import { ABANDONED, descend } from './descent.ts';
import { MixtureEvaluator } from './mixture-evaluator.ts';
import type { TargetMetric } from './target-metric.ts';

/** A slope flatter than this share of the squared difference counts as zero. */
const FLAT = 1e-3;
/** Start of an added pigment: log effective amount, relative to the strongest. */
const ADDED_START = Math.log(0.1);
/** Start of the other pigments of a tint: log effective amount, relative to the lightest. */
const TINT = Math.log(0.01);

/** Local optimisations (descents) for sets of one stock's paints: the steps of a search. */
export class Attempts {
  /** Number of descents so far: the cost of a run. */
  descents = 0;
  /** Squared difference above which a slow descent is abandoned. */
  bound = Number.POSITIVE_INFINITY;
  /** Derivative of the squared difference by each paint's amount, set by {@link additionSlopes}. */
  readonly slope: Float64Array;
  readonly stock: CompiledShelf;
  readonly rules: PigmentConstraints;
  private readonly evaluator: MixtureEvaluator;
  /** L* of each paint alone. */
  private readonly lightness: Float64Array;

  constructor(stock: CompiledShelf, rules: PigmentConstraints) {
    this.stock = stock;
    this.rules = rules;
    this.evaluator = new MixtureEvaluator(stock);
    this.slope = new Float64Array(stock.count);
    this.lightness = Float64Array.from({ length: stock.count }, (_, i) => {
      this.load([i], [0]);
      this.evaluator.evaluateColour();
      return this.evaluator.L;
    });
  }

  /** The candidate of one paint alone. */
  single(metric: TargetMetric, i: number): Candidate {
    this.load([i], [0]);
    this.evaluator.evaluate();
    return this.candidate(metric);
  }

  /** Optimises a set from one start; null if a member drops out or the descent is abandoned. */
  attempt(
    metric: TargetMetric,
    members: readonly number[],
    start: readonly number[],
    exact = false,
  ): Candidate | null {
    this.load(members, start);
    this.descents++;
    if (descend(this.evaluator, metric, exact, this.bound) === ABANDONED) return null;
    return this.candidate(metric);
  }

  /** Optimises a set with one more paint, starting from the set's optimum. */
  withPaint(metric: TargetMetric, parent: Candidate, j: number, exact = false): Candidate | null {
    const members = insert(parent.members, j);
    const start = members.map((m) =>
      m === j ? ADDED_START : parent.x[parent.members.indexOf(m)]!,
    );
    return this.attempt(metric, members, start, exact);
  }

  /** A start in which the lightest member dominates. */
  tint(members: readonly number[]): number[] {
    const lightest = members.reduce((a, b) => (this.lightness[b]! > this.lightness[a]! ? b : a));
    return members.map((m) => (m === lightest ? 0 : TINT));
  }

  /** Paints whose addition would improve a set's optimum, steepest slope first. */
  helpfulPaints(metric: TargetMetric, parent: Candidate): number[] {
    const { slope } = this;
    const error = this.additionSlopes(metric, parent, true);
    const found: number[] = [];
    for (let j = 0; j < this.stock.count; j++)
      if (this.helps(j, error) && this.mayAdd(parent, j)) found.push(j);
    return found.sort((i, j) => slope[i]! - slope[j]!);
  }

  /** Computes {@link slope} at a set's optimum; returns its squared difference. */
  additionSlopes(metric: TargetMetric, parent: Candidate, exact: boolean): number {
    const { evaluator, slope } = this;
    this.load(parent.members, parent.x);
    evaluator.evaluate();
    const m = exact ? metric.local : metric.linear;
    const error = exact
      ? metric.slopes(evaluator.L, evaluator.a, evaluator.b)
      : metric.near(evaluator.L, evaluator.a, evaluator.b);
    const [r0 = 0, r1 = 0, r2 = 0] = metric.r;
    evaluator.additionSlopes(
      2 * (m[0]! * r0 + m[3]! * r1 + m[6]! * r2),
      2 * (m[1]! * r0 + m[4]! * r1 + m[7]! * r2),
      2 * (m[2]! * r0 + m[5]! * r1 + m[8]! * r2),
      slope,
    );
    return error;
  }

  /** Whether adding paint `j` improves the set of the last {@link additionSlopes}. */
  helps(j: number, error: number): boolean {
    return this.slope[j]! < -FLAT * error;
  }

  /** Whether the rules allow adding paint `j` to a set. */
  mayAdd(parent: Candidate, j: number): boolean {
    const { members } = parent;
    for (let i = 0; i < members.length; i++)
      if (members[i] === j || this.clash(members[i]!, j)) return false;
    return this.sizeOf([...members, j]) <= this.rules.most;
  }

  private candidate(metric: TargetMetric): Candidate {
    const { evaluator } = this;
    const members = Array.from(evaluator.members.subarray(0, evaluator.n));
    return {
      members,
      x: Array.from(evaluator.x.subarray(0, evaluator.n)),
      lab: [evaluator.L, evaluator.a, evaluator.b],
      score: Math.sqrt(metric.exact(evaluator.L, evaluator.a, evaluator.b)),
      size: this.sizeOf(members),
    };
  }

  private load(members: readonly number[], x: readonly number[]): void {
    const { evaluator } = this;
    evaluator.n = members.length;
    for (let i = 0; i < members.length; i++) {
      evaluator.members[i] = members[i]!;
      evaluator.x[i] = x[i]!;
    }
  }

  /** Whether two paints must not be mixed. */
  clash(a: number, b: number): boolean {
    return this.rules.clash[a * this.stock.count + b] === 1;
  }

  /** Number of pigments including the required ones. */
  sizeOf(members: readonly number[]): number {
    let size = members.length;
    for (const held of this.rules.held) if (!members.includes(held)) size++;
    return size;
  }
}
