import type { Lab } from '../colour/lab.ts';
import type { Constraints } from '../mixture/constraint.ts';
import { nearestOn } from '../mixture/nearest.ts';
import { reachingSets } from '../mixture/sets.ts';
import { type MixFault, notAColour, type WorkOptions } from '../mixture/work.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { fail, ok, type Result } from '../result.ts';
import { Cover, type Palette } from './cover.ts';
import { type Amount, vary, WAYS, type Way } from './vary.ts';

/** One colour that a palette has to mix: a colour of the harmony, or a variant of one. */
export interface Sought {
  /** Index of the harmony's colour. */
  readonly of: number;
  /** null for the colour itself. */
  readonly way: Way | null;
  readonly lab: Lab;
}

/** The best that so many pigments do for a harmony. */
export interface FewestStep {
  readonly count: number;
  readonly pigments: readonly string[];
  /** CIEDE2000 of each colour sought, in their order. */
  readonly deltaE00: readonly number[];
  readonly worst: number;
  readonly mean: number;
}

export interface Fewest {
  /** What was to be mixed: the harmony's colours in their order, then their variants. */
  readonly sought: readonly Sought[];
  /** From one pigment on, until one more stops helping; differences never rise. */
  readonly curve: readonly FewestStep[];
  /** The first step of the curve within the stated difference; null where none is. */
  readonly enough: FewestStep | null;
  /** What the whole shelf does for each: a colour beyond `within` here is out of reach. */
  readonly shelf: readonly number[];
}

export interface FewestOptions extends WorkOptions {
  /**
   * The stated difference, CIEDE2000; 2 where not given. A colour that the whole shelf misses by more
   * is asked only to come within 1 of the best that the shelf does.
   */
  readonly within?: number;
  /** Also the variants of each colour, all six ways by this amount. */
  readonly variants?: Amount;
  /** Longest palette looked for; 12 where not given. */
  readonly longest?: number;
}

/** Differences under this are not seen: a pigment that buys no more stops helping. */
const SEEN = 0.1;
/** A colour out of the shelf's reach may lose this much more. */
const LOSS = 1;
/** Share of the work that the whole shelf takes. */
const FIRST = 0.7;

/**
 * The fewest pigments that mix all colours of a harmony, and their variants where asked for, as a
 * curve: the limited palette of the old studios, computed. Palettes of each length are grown from the
 * best shorter ones and by exchanges, judged by which sets of pigments reach each colour; the curve's
 * figures are searched anew. What the constraints want in every pile stands in every palette, and the
 * curve begins with it.
 */
export function fewest(
  colours: readonly Lab[],
  shelf: Shelf,
  options: FewestOptions = {},
): Result<Fewest, MixFault> {
  const { within = 2, most = 4, longest = 12, constraints = {}, stopped, onProgress } = options;
  const odd = notAColour(colours);
  if (odd) return odd;
  const sought = soughtOf(colours, options.variants);
  const labs = sought.map(({ lab }) => lab);
  const sets = reachingSets(labs, shelf, most, {
    constraints,
    ...(stopped ? { stopped } : {}),
    onProgress: (done) => onProgress?.(FIRST * done),
  });
  if (!sets.ok) return sets;
  const judge = new Cover(sets.value, shelf, constraints);
  const curve: FewestStep[] = [];
  let palettes: Palette[] = [judge.first];
  const held = judge.first.members.length;
  const last = Math.min(Math.max(longest, held), judge.names.length);
  for (let count = Math.max(1, held); count <= last; count++) {
    if (stopped?.()) return fail({ code: 'stopped' });
    if (count > held) palettes = judge.longer(palettes);
    const names = judge.namesOf(palettes[0]!);
    const step = stepOf(labs, shelf, names, most, constraints, stopped);
    if (!step) return fail({ code: 'stopped' });
    const before = curve.at(-1);
    // A longer palette holds no less than a shorter: where it was found worse, the shorter stands.
    if (before && step.mean > before.mean) {
      curve.push({ ...before, count, pigments: [...before.pigments, ...extra(before, names)] });
    } else curve.push(step);
    onProgress?.(FIRST + ((1 - FIRST) * count) / last);
    const now = curve.at(-1)!;
    if (now.deltaE00.every((d, i) => d <= judge.shelf[i]! + SEEN)) break;
  }
  const fits = (step: FewestStep) =>
    step.deltaE00.every((d, i) => d <= Math.max(within, judge.shelf[i]! + LOSS * outside(i)));
  const outside = (i: number) => (judge.shelf[i]! > within ? 1 : 0);
  return ok({ sought, curve, enough: curve.find(fits) ?? null, shelf: judge.shelf });
}

/** Colours, then what each of the six ways makes of them; a way that changes nothing is left out. */
function soughtOf(colours: readonly Lab[], amount: Amount | undefined): Sought[] {
  const own = colours.map((lab, of): Sought => ({ of, way: null, lab }));
  if (amount === undefined) return own;
  const changed = (lab: Lab, other: Lab) => lab.some((v, i) => Math.abs(v - other[i]!) > 1e-6);
  const varied = colours.flatMap((from, of) =>
    WAYS.map((way): Sought => ({ of, way, lab: vary(from, way, amount).lab })).filter(({ lab }) =>
      changed(lab, from),
    ),
  );
  return [...own, ...varied];
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
