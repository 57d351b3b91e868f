import { deltaE00 } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import { labOfOklab } from '../colour/oklab.ts';
import type { Atoms } from './atoms.ts';
import { type Clusters, LIGHTNESS } from './cluster.ts';
import { MOST } from './join.ts';
import { NODES, nodesOf } from './trial.ts';

/** Two are one thing where more than this share of the trials puts them together, … */
const TOGETHER = 0.5;
/** … and a group is a thing where more than this share of them tells it. */
const TOLD = 0.5;
/** A trial tells a group when one of its own is the same to more than this: both over either. */
const SAME = 0.5;
/** Still, what nobody is sure of counts for something. */
const LEAST_SURE = 0.02;
/**
 * What n trials tell may be a matter of their draw: groups told by so nearly {@link TOLD}, or nodes together by
 * so nearly {@link TOGETHER}, times √n …
 */
const HARDLY_TOLD = 1;
/** … where both hold more than this share; … */
const SOME = 0.05;
/** … and colours that either half of the trials tells farther apart than this (CIEDE2000). */
const APART = 1;
/** Groups to begin from, at most: what few trials tell goes from there. */
const BEGIN = 16;
/** Rows of a table of groups by groups of a trial. */
const ROWS = MOST;

/** What the trials agree on. */
export interface Agreed {
  /** The group of each atom, 0…6. */
  readonly group: Uint8Array;
  /** How surely each atom belongs to its group and not to the next best, 0…1. */
  readonly sure: Float64Array;
  /** More trials would hardly tell otherwise. */
  readonly isSettled: boolean;
}

/**
 * What most trials agree on. Atoms that are mostly together form groups; each atom then goes with the
 * group that it is most with; and a group that too few trials tell joins the one that it is most with,
 * the least told first.
 * @param trials group of each atom in each trial, 0…6
 * @param wanted colours, or undefined to choose by itself
 */
export function agree(
  atoms: Atoms,
  trials: readonly Uint8Array[],
  wanted: number | undefined,
): Agreed {
  const nodes = nodesOf(atoms, NODES, LIGHTNESS);
  const every = (odd: 0 | 1): Told => {
    const some = trials.filter((_, i) => i % 2 === odd);
    return { trials: some, together: togetherOf(atoms, nodes, some) };
  };
  const [one, other] = [every(0), every(1)];
  const together = one.together.map((both, at) => both + other.together[at]!);
  const { group, sure, nearest } = tell(atoms, nodes, { trials, together }, wanted);
  return { group, sure, isSettled: nearest > HARDLY_TOLD / Math.sqrt(trials.length) && isAlike() };

  /** Whether either half of the trials tells the same colours. */
  function isAlike(): boolean {
    const some = coloursOf(atoms, tell(atoms, nodes, one, wanted));
    const others = coloursOf(atoms, tell(atoms, nodes, other, wanted));
    return (
      some.length === others.length &&
      some.every((lab) => others.some((o) => deltaE00(lab, o) <= APART))
    );
  }
}

/** Trials, and in how many of them two nodes are together, for i < j at i × nodes + j. */
interface Told {
  readonly trials: readonly Uint8Array[];
  readonly together: Float64Array;
}

function togetherOf(atoms: Atoms, nodes: Clusters, trials: readonly Uint8Array[]): Float64Array {
  const n = nodes.count;
  const together = new Float64Array(n * n);
  const part = new Float64Array(n * ROWS);
  const share = atoms.weight.map((w, atom) => w / nodes.weight[nodes.ofBin[atom]!]!);
  for (const trial of trials) {
    // Which part of each node is in each group of the trial.
    part.fill(0);
    for (let atom = 0; atom < atoms.count; atom++)
      part[nodes.ofBin[atom]! * ROWS + trial[atom]!]! += share[atom]!;
    for (let i = 0; i < n; i++)
      for (let j = i + 1; j < n; j++) {
        let both = 0;
        for (let g = 0; g < ROWS; g++) both += part[i * ROWS + g]! * part[j * ROWS + g]!;
        together[i * n + j]! += both;
      }
  }
  return together;
}

/** The mean colour of each group, of the atoms that are sure of it. */
function coloursOf(atoms: Atoms, { group, sure }: Pick<Agreed, 'group' | 'sure'>): Lab[] {
  const sums = Array.from({ length: Math.max(...group) + 1 }, () => [0, 0, 0, 0]);
  group.forEach((g, atom) => {
    const w = atoms.weight[atom]! * sure[atom]!;
    [w, w * atoms.L[atom]!, w * atoms.a[atom]!, w * atoms.b[atom]!].forEach((v, i) => {
      sums[g]![i]! += v;
    });
  });
  return sums.map(([w, L, a, b]) => labOfOklab([L! / w!, a! / w!, b! / w!]));
}

/** What trials agree on, and how near the nearest draw was. */
function tell(
  atoms: Atoms,
  nodes: Clusters,
  { trials, together }: Told,
  wanted: number | undefined,
): Pick<Agreed, 'group' | 'sure'> & { readonly nearest: number } {
  const shares = together.map((both) => both / trials.length);
  const first = begin(nodes, shares, wanted ?? 1);
  let { of } = first;
  let nearest = wanted === undefined ? first.nearest : Infinity;
  for (;;) {
    const seen = new Agreement(atoms, trials, of);
    const { count } = seen;
    const { told, beside } = seen.groups();
    const least = told.indexOf(Math.min(...told));
    if (wanted === undefined && count <= MOST)
      nearest = Math.min(nearest, Math.abs(told[least]! - TOLD));
    const enough = wanted === undefined ? told[least]! >= TOLD && count <= MOST : count <= wanted;
    if (enough || count === 1) return { ...seen.settled(), nearest };
    const to = beside[least]!;
    of = of.map((c) => {
      const kept = c === least ? to : c;
      return kept > least ? kept - 1 : kept;
    });
    of = new Agreement(atoms, trials, of).settled().group;
  }
}

/**
 * Nodes that are mostly together, joined by their average, down to what is told.
 * @param together the share of trials in which two nodes are; overwritten
 * @returns the group of each atom, and how near the nearest draw was between two that are both of some size
 */
function begin(
  nodes: Clusters,
  together: Float64Array,
  fewest: number,
): { readonly of: Uint8Array; readonly nearest: number } {
  const n = nodes.count;
  const at = (i: number, j: number) => (i < j ? i * n + j : j * n + i);
  const size = new Float64Array(n).fill(1);
  const weight = Float64Array.from(nodes.weight);
  const some = SOME * weight.reduce((sum, w) => sum + w, 0);
  let nearest = Infinity;
  const of = Uint8Array.from({ length: n }, (_, i) => i);
  let live = [...of].filter((i) => weight[i]! > 0);
  while (live.length > fewest) {
    let [first, second, most] = [-1, -1, -1];
    for (let k = 0; k < live.length; k++) {
      const row = live[k]! * n;
      for (let l = k + 1; l < live.length; l++) {
        const both = together[row + live[l]!]!;
        if (both > most) {
          most = both;
          first = live[k]!;
          second = live[l]!;
        }
      }
    }
    if (most < TOGETHER && live.length <= BEGIN) break;
    if (Math.min(weight[first]!, weight[second]!) > some)
      nearest = Math.min(nearest, Math.abs(most - TOGETHER));
    const [p, q] = [size[first]!, size[second]!];
    live = live.filter((k) => k !== second);
    for (const k of live)
      if (k !== first)
        together[at(first, k)] =
          (p * together[at(first, k)]! + q * together[at(second, k)]!) / (p + q);
    size[first] = p + q;
    weight[first]! += weight[second]!;
    for (let i = 0; i < n; i++) if (of[i] === second) of[i] = first;
  }
  const order = [...new Set(nodes.ofBin.map((node) => of[node]!))].sort((i, j) => i - j);
  return { of: nodes.ofBin.map((node) => order.indexOf(of[node]!)), nearest };
}

/** How a grouping of atoms and the trials' own agree. */
class Agreement {
  readonly count: number;
  private readonly trials: readonly Uint8Array[];
  private readonly of: Uint8Array;
  /** Weight of each group. */
  private readonly weight: Float64Array;
  /** For each trial, what its group g has of group c, at g × count + c. */
  private readonly shared: readonly Float64Array[];
  /** The same as a share of group c and of all trials. */
  private readonly parts: readonly Float64Array[];

  constructor(atoms: Atoms, trials: readonly Uint8Array[], of: Uint8Array) {
    const count = Math.max(...of) + 1;
    this.trials = trials;
    this.of = of;
    this.count = count;
    this.weight = new Float64Array(count);
    for (let atom = 0; atom < of.length; atom++) this.weight[of[atom]!]! += atoms.weight[atom]!;
    this.shared = trials.map((trial) => {
      const shared = new Float64Array(ROWS * count);
      for (let atom = 0; atom < of.length; atom++)
        shared[trial[atom]! * count + of[atom]!]! += atoms.weight[atom]!;
      return shared;
    });
    const per = this.weight.map((w) => 1 / (w * trials.length));
    this.parts = this.shared.map((shared) => shared.map((both, at) => both * per[at % count]!));
  }

  /** The share of trials that tells each group, and the other group that it is most with. */
  groups(): { readonly told: readonly number[]; readonly beside: readonly number[] } {
    const { count, weight } = this;
    const told = new Array<number>(count).fill(0);
    const together = new Float64Array(count * count);
    for (const shared of this.shared) {
      for (let c = 0; c < count; c++) {
        let same = 0;
        for (let row = 0; row < ROWS * count; row += count) {
          const both = shared[row + c]!;
          if (both === 0) continue;
          let all = weight[c]! - both;
          for (let d = 0; d < count; d++) {
            all += shared[row + d]!;
            together[c * count + d]! += (both * shared[row + d]!) / weight[d]!;
          }
          same = Math.max(same, both / all);
        }
        if (same > SAME) told[c]! += 1 / this.trials.length;
      }
    }
    const beside = told.map((_, c) => {
      let most = c === 0 ? 1 : 0;
      for (let d = 0; d < count; d++)
        if (d !== c && together[c * count + d]! > together[c * count + most]!) most = d;
      return most;
    });
    return { told, beside };
  }

  /**
   * Each atom with the group that it is most with, unchanged where that would leave a group empty, and how sure
   * that is.
   */
  settled(): Pick<Agreed, 'group' | 'sure'> {
    const { count, trials, parts } = this;
    const filled = new Uint8Array(count);
    const sure = new Float64Array(this.of.length);
    const withIt = new Float64Array(count);
    const group = this.of.map((_, atom) => {
      withIt.fill(0);
      for (let t = 0; t < trials.length; t++) {
        const row = trials[t]![atom]! * count;
        const part = parts[t]!;
        for (let c = 0; c < count; c++) withIt[c]! += part[row + c]!;
      }
      const [most, next] = firstTwo(withIt);
      const apart = withIt[most]! - (withIt[next] ?? 0);
      sure[atom] = surely(apart / withIt[most]!);
      filled[most] = 1;
      return most;
    });
    return { group: filled.includes(0) ? this.of : group, sure };
  }
}

/**
 * How sure an atom is of its group, of the part by which it is more with it than with the next best: the
 * fourth power of that, so that a thing is measured where the trials are nearly of one mind, and looks the
 * same whatever they make of its rim. (Multiplied out: engines differ in the last digit of `**`.)
 */
function surely(part: number): number {
  const square = part * part;
  return Math.max(LEAST_SURE, square * square);
}

/** Places of the largest and of the second, the first on ties; −1 where there is no second. */
function firstTwo(values: Float64Array): readonly [number, number] {
  let [most, next] = [0, -1];
  for (let i = 1; i < values.length; i++)
    if (values[i]! > values[most]!) [most, next] = [i, most];
    else if (next < 0 || values[i]! > values[next]!) next = i;
  return [most, next];
}
