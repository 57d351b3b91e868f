import { warmCool } from '../colour/appearance.ts';
import { changeWords } from '../colour/change.ts';
import { deltaE00 } from '../colour/difference.ts';
import { chroma, hueTurnDeg, type Lab } from '../colour/lab.ts';
import { oklabHueDeg, oklabOfLab } from '../colour/oklab.ts';
import type { Answer, Mixture, Share } from '../mixture/mixture.ts';
import type { MixFault } from '../mixture/work.ts';
import type { Shelf } from '../pigment/shelf.ts';
import type { Result } from '../result.ts';
import { atBench, type Bench, type BenchOptions, furthest } from './bench.ts';
import { pileWords } from './pile.ts';
import { spokenOn } from './spoken.ts';
import {
  type Amount,
  NEUTRAL_CHROMA,
  type Variant,
  vary,
  type Way,
  withLightnessAndChroma,
} from './vary.ts';

/** A colour that has its pile: where a variant begins. */
export interface Origin {
  /** What was wanted; only kept, the pile is what is altered. */
  readonly lab: Lab;
  readonly mixture: Mixture;
}

/** How much of the wish the shelf granted. */
export type Granted =
  /** All of it: no difference would be seen. */
  | 'whole'
  /** The way is right, but it falls short. */
  | 'part'
  /** The shelf makes no such change: the mixture is the origin's own. */
  | 'nothing';

/** A variant as the shelf makes it, beside its origin. */
export interface Mixed {
  readonly way: Way;
  readonly amount: Amount;
  readonly origin: Origin;
  /** What was wished: the origin's pile altered by the whole amount. */
  readonly wish: Lab;
  readonly stopped: Variant['stopped'];
  /** What the shelf makes; differences in it are from the wish. */
  readonly mixture: Mixture;
  readonly granted: Granted;
  /** What fell short of the wish, in the order of what was given up. */
  readonly short: readonly ('chroma' | 'turn' | 'lightness')[];
  /** Mixed from no other pigments than the origin. */
  readonly samePigments: boolean;
  /** What changes in the pile of whole parts: "a little red earth more, less lead white". */
  readonly pile: string;
  /** What changes to the eye: "lighter, a little duller". */
  readonly seen: string;
}

/** Up to here a pile counts as the colour asked for: well under what an eye sees, so that steps do not add up errors. */
const MET = 0.4;
/** The same pigments stay up to here: others, however near, would gain nothing that is seen. */
const STAY = 0.6;
/** A change smaller than this is none. */
const SEEN = 1;
const HUE_HELD_DEG = 5;

/**
 * One colour altered in one way, mixed from the shelf: from the origin's own pigments where these come
 * near enough, else from as many of them as serve. Signs hold for the piles themselves: a warmer variant
 * never scores lower on the published warm-cool scale than its origin's pile, and so on; what the shelf
 * cannot do comes back as `part` or `nothing` (limit.ts says it).
 */
export function variantOf(
  origin: Origin,
  way: Way,
  amount: Amount,
  shelf: Shelf,
  options: BenchOptions = {},
): Result<Mixed, MixFault> {
  return atBench(shelf, options, (bench) => mixed(origin, way, amount, bench));
}

/** Every colour of a harmony altered in the same way. Each says for itself what it could not do. */
export function variantsOf(
  origins: readonly Origin[],
  way: Way,
  amount: Amount,
  shelf: Shelf,
  options: BenchOptions & { readonly onProgress?: (done: number) => void } = {},
): Result<Mixed[], MixFault> {
  return atBench(shelf, options, (bench) =>
    origins.map((origin, i) => {
      const one = mixed(origin, way, amount, bench);
      options.onProgress?.((i + 1) / origins.length);
      return one;
    }),
  );
}

/** The pile that a colour starts from; `simple` takes the fewest pigments that are nearly as good. */
export function originOf(
  lab: Lab,
  shelf: Shelf,
  options: BenchOptions & { readonly simple?: boolean } = {},
): Result<Origin, MixFault> {
  return atBench(shelf, options, (bench) => {
    const answer = bench.mix(lab)!;
    return { lab, mixture: options.simple ? answer.simplest : plain(answer) };
  });
}

function mixed(origin: Origin, way: Way, amount: Amount, bench: Bench): Mixed {
  const from = origin.mixture.lab;
  const { lab: wish, stopped } = vary(from, way, amount);
  const made = make(origin, way, from, wish, bench);
  const mixture = against(wish, made ?? origin.mixture);
  const nameOf = spokenOn(bench.shelf);
  const granted = made === null ? 'nothing' : mixture.reachable ? 'whole' : 'part';
  return {
    way,
    amount,
    origin,
    wish,
    stopped,
    mixture,
    granted,
    short: granted === 'whole' ? [] : shortOf(way, from, wish, mixture.lab),
    samePigments: pigmentsOf(mixture).every((one) => pigmentsOf(origin.mixture).includes(one)),
    pile: pileWords(inShares(origin.mixture), inShares(mixture), nameOf),
    seen: changeWords(from, mixture.lab),
  };
}

/** The pile for a wish, or the furthest towards it; null where the shelf makes no such change. */
function make(origin: Origin, way: Way, from: Lab, wish: Lab, bench: Bench): Mixture | null {
  const own = pigmentsOf(origin.mixture);
  const good = (mixture: Mixture) => keeps(way, from, mixture.lab);
  const ask = (lab: Lab): Mixture | null => {
    const same = bench.mix(lab, { of: own });
    if (same && same.deltaE00 <= MET && good(same)) return plain(same);
    const { white } = bench.shelf;
    if (white !== null && !own.includes(white)) {
      const letDown = bench.mix(lab, { of: [...own, white] });
      if (letDown && letDown.deltaE00 <= MET && good(letDown)) return plain(letDown);
    }
    const wide = bench.mix(lab, { alternatives: 5 });
    if (wide === null) return same && good(same) ? plain(same) : null;
    const limit = Math.max(wide.deltaE00, MET);
    const near = [wide, wide.simplest, ...wide.alternatives].filter(
      (one) => one.deltaE00 <= limit && good(one),
    );
    const kin = near.toSorted((p, q) => strangers(p, own) - strangers(q, own))[0];
    if (same && good(same) && same.deltaE00 <= STAY) return plain(same);
    return kin ? plain(kin) : null;
  };
  const whole = ask(wish);
  if (whole && whole.deltaE00 <= 1) return whole;

  // Out of reach: give up along the axes that the way does not hold dear.
  const passes = (lab: Lab): Lab | null => {
    const found = bench.mix(lab, { quick: true });
    return found !== null && found.deltaE00 <= MET && good(found) ? lab : null;
  };
  const cut = within(way, from, wish, passes);
  if (cut === null || deltaE00(from, cut) < SEEN) return null;
  const part = ask(cut);
  if (part === null || !good(part) || deltaE00(from, part.lab) < SEEN) return null;
  return part;
}

/** How far from the origin towards the wish the shelf goes. */
function within(way: Way, from: Lab, wish: Lab, passes: (lab: Lab) => Lab | null): Lab | null {
  const between = (t: number): Lab => [
    from[0] + t * (wish[0] - from[0]),
    from[1] + t * (wish[1] - from[1]),
    from[2] + t * (wish[2] - from[2]),
  ];
  switch (way) {
    case 'brighter':
    case 'duller': {
      const [C0, C1] = [chroma(from), chroma(wish)];
      return (
        furthest((t) => passes(withLightnessAndChroma(from, from[0], C0 + t * (C1 - C0))))?.value ??
        null
      );
    }
    case 'warmer':
    case 'cooler': {
      // The whole turn with less chroma, or less of the turn: whichever goes further on the scale.
      const duller = furthest((t) => passes(scaled(wish, 0.6 + 0.4 * t)), 5)?.value;
      const less = furthest((t) => passes(turnedPart(from, wish, t)), 5)?.value;
      const gain = (lab: Lab) => Math.abs(warmCool(lab) - warmCool(from));
      return [duller, less]
        .filter((lab) => lab !== undefined)
        .reduce<Lab | null>((best, lab) => (best && gain(best) >= gain(lab) ? best : lab), null);
    }
    case 'lighter':
    case 'deeper': {
      const C = chroma(from);
      const least = C < NEUTRAL_CHROMA ? 0 : 0.1;
      for (const part of [1, 0.75, 0.5, 0.25]) {
        const L = between(part)[0];
        const found = furthest(
          (t) => passes(withLightnessAndChroma(from, L, C * (least + (1 - least) * t))),
          5,
        );
        if (found) return found.value;
      }
      return null;
    }
  }
}

const scaled = ([L, a, b]: Lab, factor: number): Lab => [L, a * factor, b * factor];

/** A part of a turn at constant chroma. */
function turnedPart(from: Lab, wish: Lab, t: number): Lab {
  const C = chroma(from);
  const a = from[1] + t * (wish[1] - from[1]);
  const b = from[2] + t * (wish[2] - from[2]);
  const made = Math.hypot(a, b);
  const aim = C + t * (chroma(wish) - C);
  return made < 1e-9 ? [from[0], 0, 0] : [from[0], (a * aim) / made, (b * aim) / made];
}

/** Whether a pile lies on the right side of its origin, on the published scale where there is one. */
export function keeps(way: Way, from: Lab, to: Lab): boolean {
  switch (way) {
    case 'warmer':
      return warmCool(to) >= warmCool(from);
    case 'cooler':
      return warmCool(to) <= warmCool(from);
    case 'lighter':
      return to[0] >= from[0] && hueHeld(from, to);
    case 'deeper':
      return to[0] <= from[0] && hueHeld(from, to);
    case 'brighter':
      return chroma(to) >= chroma(from) && hueHeld(from, to);
    case 'duller':
      return chroma(to) <= chroma(from) && hueHeld(from, to);
  }
}

/** OKLab hue held within 5 degrees; a neutral (C* under 8) has none to hold. */
export function hueHeld(from: Lab, to: Lab, withinDeg = HUE_HELD_DEG): boolean {
  if (Math.min(chroma(from), chroma(to)) < NEUTRAL_CHROMA) return true;
  const [h1, h2] = [oklabHueDeg(oklabOfLab(from)), oklabHueDeg(oklabOfLab(to))];
  return h1 === null || h2 === null || Math.abs(hueTurnDeg(h1, h2)) <= withinDeg;
}

function shortOf(way: Way, from: Lab, wish: Lab, to: Lab): Mixed['short'] {
  const short: ('chroma' | 'turn' | 'lightness')[] = [];
  const asked = Math.abs(wish[0] - from[0]);
  if (asked > 0.5 && Math.abs(to[0] - from[0]) < 0.9 * asked) short.push('lightness');
  if (way === 'warmer' || way === 'cooler') {
    const turn = Math.abs(warmCool(wish) - warmCool(from));
    if (Math.abs(warmCool(to) - warmCool(from)) < 0.9 * turn) short.push('turn');
  }
  if (chroma(to) < chroma(wish) - 1) short.push('chroma');
  if (way === 'duller' && chroma(to) > chroma(wish) + 1) short.push('chroma');
  return short;
}

/** Of the recipe and of its whole parts, which may be of others. */
const pigmentsOf = ({ recipe, parts }: Mixture): string[] => [
  ...new Set([...recipe, ...parts].map(({ pigment }) => pigment)),
];

/** What the painter lays out: whole parts, as shares. */
function inShares({ recipe, parts }: Mixture): readonly Share[] {
  const sum = parts.reduce((all, one) => all + one.parts, 0);
  return sum > 0 ? parts.map((one) => ({ pigment: one.pigment, share: one.parts / sum })) : recipe;
}

const strangers = (mixture: Mixture, own: readonly string[]): number =>
  pigmentsOf(mixture).filter((pigment) => !own.includes(pigment)).length;

/** A mixture alone, without what an answer carries beside it. */
export function plain(mixture: Mixture | Answer): Mixture {
  const { recipe, lab, deltaE00, reachable, parts, partsLab, partsDeltaE00 } = mixture;
  return { recipe, lab, deltaE00, reachable, parts, partsLab, partsDeltaE00 };
}

/** The same mixture, its differences told from another wish. */
export function against(wish: Lab, mixture: Mixture): Mixture {
  const difference = deltaE00(wish, mixture.lab);
  return {
    ...mixture,
    deltaE00: difference,
    reachable: difference <= SEEN,
    partsDeltaE00: deltaE00(wish, mixture.partsLab),
  };
}
