import type { Constraints } from '../mixture/constraints.ts';
import type { ReachingSet } from '../mixture/reaching-sets.ts';
import type { Shelf } from '../pigment/shelf.ts';

/** Beam width: sets kept at each size while the next is searched. */
const BEAM = 60;

/** A set of pigments, as indices into {@link PigmentSetSearch.names}, with its cost. */
export interface PigmentSet {
  readonly members: readonly number[];
  readonly cost: number;
}

/** Scores pigment sets by the mixtures that they contain completely. */
export class PigmentSetSearch {
  readonly names: readonly string[];
  /** Smallest difference of each colour over all mixtures (CIEDE2000). */
  readonly shelf: readonly number[];
  /** Pigments that the constraints require in every pile; often none. */
  readonly first: PigmentSet;
  private readonly sets: readonly { mask: Int32Array; deltaE00: number }[][];

  constructor(
    found: readonly ReachingSet[][],
    shelf: Shelf,
    { inStock, mustHold = [] }: Constraints,
  ) {
    const used = new Set(found.flat().flatMap((set) => set.pigments));
    this.names = shelf.paints
      .map((p) => p.pigment)
      .filter((name) => used.has(name) && (inStock?.includes(name) ?? true));
    this.shelf = found.map((sets) => sets[0]!.deltaE00);
    this.sets = found.map((sets) =>
      sets.map(({ pigments, deltaE00 }) => ({
        mask: this.mask(pigments.map((p) => this.names.indexOf(p))),
        deltaE00,
      })),
    );
    this.first = this.judged([...new Set(mustHold)].map((p) => this.names.indexOf(p)).sort(rising));
  }

  namesOf = ({ members }: PigmentSet): string[] => members.map((m) => this.names[m]!);

  /** The best sets with one more pigment, best first (beam search). */
  longer(shorter: readonly PigmentSet[]): PigmentSet[] {
    const seen = new Map<string, PigmentSet>();
    const look = (members: readonly number[]) => {
      const sorted = [...new Set(members)].sort(rising);
      const key = sorted.join();
      if (sorted.length === members.length && !seen.has(key)) seen.set(key, this.judged(sorted));
    };
    const all = [...this.names.keys()];
    for (const { members } of shorter) for (const j of all) look([...members, j]);
    // Exchanges: a pigment that is right in a small set need not be right in a larger one.
    for (let round = 0; round < 3; round++) {
      const best = [...seen.values()].sort(byCost).slice(0, 8);
      for (const { members } of best)
        for (const out of members.filter((m) => !this.first.members.includes(m)))
          for (const j of all) look([...members.filter((m) => m !== out), j]);
    }
    return [...seen.values()].sort(byCost).slice(0, BEAM);
  }

  /** Cost of a set: the largest loss of any colour against the whole shelf, plus the mean loss. */
  private judged(members: readonly number[]): PigmentSet {
    const palette = this.mask(members);
    let worst = 0;
    let sum = 0;
    for (const [i, sets] of this.sets.entries()) {
      let loss = 200;
      for (const set of sets) {
        if (!holds(palette, set.mask)) continue;
        loss = set.deltaE00 - this.shelf[i]!;
        break;
      }
      worst = Math.max(worst, loss);
      sum += loss;
    }
    return { members, cost: worst + sum / this.sets.length };
  }

  /** Indices as a bit mask, {@link WORD} bits per word. */
  private mask(members: readonly number[]): Int32Array {
    const bits = new Int32Array(Math.ceil(this.names.length / WORD));
    for (const m of members) bits[Math.floor(m / WORD)]! |= 1 << (m % WORD);
    return bits;
  }
}

/** Bits per word of a mask; 31 keep the words non-negative. */
const WORD = 31;

/** Whether a palette contains a whole set. */
function holds(palette: Int32Array, set: Int32Array): boolean {
  for (let i = 0; i < set.length; i++) if ((set[i]! & ~palette[i]!) !== 0) return false;
  return true;
}

const byCost = (a: PigmentSet, b: PigmentSet): number => a.cost - b.cost;
const rising = (a: number, b: number): number => a - b;
