import type { Lab } from '../colour/lab.ts';
import type { Constraints, Contradiction } from '../mixture/constraint.ts';
import { nearestOn } from '../mixture/nearest.ts';
import { type ReachingSet, reachingSets } from '../mixture/sets.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { fail, ok, type Result } from '../result.ts';

/** The best that so many pigments do for a harmony. */
export interface FewestStep {
  readonly count: number;
  readonly pigments: readonly string[];
  /** CIEDE2000 of each colour, in their order. */
  readonly deltaE00: readonly number[];
  readonly worst: number;
  readonly mean: number;
}

export interface Fewest {
  /** From one pigment on, until one more stops helping; differences never rise. */
  readonly curve: readonly FewestStep[];
  /** The first step of the curve within the stated difference; null where none is. */
  readonly enough: FewestStep | null;
  /** What the whole shelf does for each colour: a colour beyond `within` here is out of reach. */
  readonly shelf: readonly number[];
}

export interface FewestOptions {
  /**
   * The stated difference, CIEDE2000; 2 where not given. A colour that the whole shelf misses by more
   * is asked only to come within 1 of the best that the shelf does.
   */
  readonly within?: number;
  /** Most pigments in one mixture; 4 where not given. */
  readonly most?: number;
  /** Longest palette looked for; 12 where not given. */
  readonly longest?: number;
  readonly constraints?: Constraints;
  readonly stopped?: () => boolean;
  readonly onProgress?: (done: number) => void;
}

export type FewestFault =
  | Contradiction
  | { readonly code: 'not-a-colour'; readonly index: number }
  | { readonly code: 'stopped' };

/** Differences under this are not seen: a pigment that buys no more stops helping. */
const SEEN = 0.1;
/** Palettes kept at each length while the next is looked for. */
const BEAM = 60;
/** A colour out of the shelf's reach may lose this much more. */
const LOSS = 1;

/**
 * The fewest pigments that mix all colours of a harmony, as a curve: the limited palette of the old
 * studios, computed. Palettes of each length are grown from the best shorter ones and by exchanges,
 * judged by which sets of pigments reach each colour; the curve's figures are searched anew.
 */
export function fewest(
  colours: readonly Lab[],
  shelf: Shelf,
  options: FewestOptions = {},
): Result<Fewest, FewestFault> {
  const { within = 2, most = 4, longest = 12, constraints = {}, stopped, onProgress } = options;
  const index = colours.findIndex((lab) => !lab.every(Number.isFinite));
  if (index >= 0) return fail({ code: 'not-a-colour', index });
  const how = stopped ? { constraints, stopped } : { constraints };
  const sets = reachingSets(colours, shelf, most, how);
  if (!sets.ok) return sets;
  onProgress?.(0.5);
  const judge = new Cover(sets.value, shelf, constraints);
  const curve: FewestStep[] = [];
  let palettes: Palette[] = [judge.empty];
  const last = Math.min(longest, judge.names.length);
  for (let count = 1; count <= last; count++) {
    if (stopped?.()) return fail({ code: 'stopped' });
    palettes = judge.longer(palettes);
    const names = judge.namesOf(palettes[0]!);
    const step = stepOf(colours, shelf, names, most, constraints, stopped);
    if (!step) return fail({ code: 'stopped' });
    const before = curve.at(-1);
    // A longer palette holds no less than a shorter: where it was found worse, the shorter stands.
    if (before && step.mean > before.mean) {
      curve.push({ ...before, count, pigments: [...before.pigments, ...extra(before, names)] });
    } else curve.push(step);
    onProgress?.(0.5 + (0.5 * count) / last);
    const now = curve.at(-1)!;
    if (now.deltaE00.every((d, i) => d <= judge.shelf[i]! + SEEN)) break;
  }
  const fits = (step: FewestStep) =>
    step.deltaE00.every((d, i) => d <= Math.max(within, judge.shelf[i]! + LOSS * outside(i)));
  const outside = (i: number) => (judge.shelf[i]! > within ? 1 : 0);
  return ok({ curve, enough: curve.find(fits) ?? null, shelf: judge.shelf });
}

/** One name that fills a palette up, for the rare step where the longer search found nothing better. */
const extra = (before: FewestStep, names: readonly string[]): string[] =>
  names.filter((name) => !before.pigments.includes(name)).slice(0, 1);

function stepOf(
  colours: readonly Lab[],
  shelf: Shelf,
  names: readonly string[],
  most: number,
  constraints: Constraints,
  stopped?: () => boolean,
): FewestStep | null {
  const on = nearestOn(shelf, most, { ...constraints, inStock: names }, stopped);
  if (!on.ok) return null;
  const deltaE00: number[] = [];
  for (const lab of colours) {
    const near = on.value.of(lab);
    if (!near) return null;
    deltaE00.push(near.deltaE00);
  }
  return {
    count: names.length,
    pigments: names,
    deltaE00,
    worst: Math.max(...deltaE00),
    mean: deltaE00.reduce((sum, d) => sum + d, 0) / deltaE00.length,
  };
}

interface Palette {
  readonly members: readonly number[];
  readonly cost: number;
}

/** Judges palettes by the sets of pigments that they hold whole. */
class Cover {
  readonly names: readonly string[];
  /** Best of all sets, by colour. */
  readonly shelf: readonly number[];
  readonly empty: Palette = { members: [], cost: Number.POSITIVE_INFINITY };
  private readonly sets: readonly { mask: Int32Array; deltaE00: number }[][];

  constructor(found: readonly ReachingSet[][], shelf: Shelf, { inStock }: Constraints) {
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
  }

  namesOf = ({ members }: Palette): string[] => members.map((m) => this.names[m]!);

  /** The best palettes of one pigment more, best first. */
  longer(shorter: readonly Palette[]): Palette[] {
    const seen = new Map<string, Palette>();
    const look = (members: readonly number[]) => {
      const sorted = [...new Set(members)].sort((a, b) => a - b);
      const key = sorted.join();
      if (sorted.length === members.length && !seen.has(key)) seen.set(key, this.judged(sorted));
    };
    const all = [...this.names.keys()];
    for (const { members } of shorter) for (const j of all) look([...members, j]);
    // Exchanges: what was right among few pigments need not be among more.
    for (let round = 0; round < 3; round++) {
      const best = [...seen.values()].sort(byCost).slice(0, 8);
      for (const { members } of best)
        for (const out of members)
          for (const j of all) look([...members.filter((m) => m !== out), j]);
    }
    return [...seen.values()].sort(byCost).slice(0, BEAM);
  }

  /** By the colour that loses most against the whole shelf, then by what all lose. */
  private judged(members: readonly number[]): Palette {
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

  /** Members as bits. */
  private mask(members: readonly number[]): Int32Array {
    const bits = new Int32Array(Math.ceil(this.names.length / WORD));
    for (const m of members) bits[Math.floor(m / WORD)]! |= 1 << (m % WORD);
    return bits;
  }
}

const WORD = 31;

/** Whether a palette holds a set whole. */
function holds(palette: Int32Array, set: Int32Array): boolean {
  for (let i = 0; i < set.length; i++) if ((set[i]! & ~palette[i]!) !== 0) return false;
  return true;
}

const byCost = (a: Palette, b: Palette): number => a.cost - b.cost;
