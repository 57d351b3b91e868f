import { warmCool } from '../colour/appearance.ts';
import { deltaE00 } from '../colour/difference.ts';
import { chroma, type Lab } from '../colour/lab.ts';
import { type Mixture, REACHABLE_DELTA_E } from '../mixture/mixture-types.ts';
import { mixtureOnly, pigmentsOf } from '../mixture/normalise.ts';
import { changesInDirection } from './hue-tolerance.ts';
import { bisectFurthest, type PileSearch } from './pile-search.ts';
import { NEUTRAL_CHROMA, type VariantWay, withLightnessAndChroma } from './variant-target.ts';

/** CIEDE2000 up to which a colour counts as mixable, during the search for the limit. */
const MAX_MISS = 0.4;
/** Smallest visible change (CIEDE2000). */
const SEEN = 1;

/**
 * Finds the mixture for a variant's target, or the nearest in its direction. Of all mixtures
 * without a visible difference it prefers the fewest new pigments: the origin's own, then with the
 * studio white, then with one other.
 * @returns null if the shelf cannot make the change
 */
export function searchVariant(
  from: Mixture,
  way: VariantWay,
  wish: Lab,
  bench: PileSearch,
): Mixture | null {
  const own = pigmentsOf(from, bench.shelf);
  const good = (mixture: Mixture) => changesInDirection(way, from.lab, mixture.lab);
  const serves = (mixture: Mixture | null, within = REACHABLE_DELTA_E): mixture is Mixture =>
    mixture !== null && mixture.deltaE00 <= within && good(mixture);
  const strangers = (mixture: Mixture): number =>
    pigmentsOf(mixture, bench.shelf).filter((pigment) => !own.includes(pigment)).length;
  const ask = (lab: Lab): Mixture | null => {
    const same = bench.mix(lab, { of: own });
    if (serves(same)) return mixtureOnly(same);
    const { white } = bench.shelf;
    if (white !== null && !own.includes(white)) {
      const letDown = bench.mix(lab, { of: [...own, white] });
      if (serves(letDown)) return mixtureOnly(letDown);
    }
    const wide = bench.mix(lab, { alternatives: 5 });
    if (wide === null) return same && good(same) ? mixtureOnly(same) : null;
    const limit = Math.max(wide.deltaE00, REACHABLE_DELTA_E);
    const near = [wide, wide.simplest, ...wide.alternatives].filter((one) => serves(one, limit));
    if (near.length === 0) return null;
    const kin = near.reduce((p, q) => (strangers(q) < strangers(p) ? q : p));
    return mixtureOnly((strangers(kin) > 1 && withOne(lab)) || kin);
  };
  /** Best mixture of the origin's pigments and one more; null if none serves. */
  const withOne = (lab: Lab): Mixture | null => {
    let best: Mixture | null = null;
    for (const { pigment } of bench.shelf.paints) {
      if (own.includes(pigment)) continue;
      const found = bench.mix(lab, { of: [...own, pigment], quick: true });
      if (serves(found) && found.deltaE00 < (best?.deltaE00 ?? REACHABLE_DELTA_E)) best = found;
    }
    return best;
  };
  const whole = ask(wish);
  if (whole && whole.deltaE00 <= REACHABLE_DELTA_E) return whole;

  // Out of reach: give way along the axes that matter least for this direction.
  const passes = (lab: Lab): Lab | null =>
    serves(bench.mix(lab, { quick: true }), MAX_MISS) ? lab : null;
  const cut = within(way, from.lab, wish, passes);
  if (cut === null || deltaE00(from.lab, cut) < SEEN) return null;
  const part = ask(cut);
  if (part === null || !good(part) || deltaE00(from.lab, part.lab) < SEEN) return null;
  return part;
}

/** The farthest point from the origin towards the target that the shelf reaches; null if none. */
function within(
  way: VariantWay,
  from: Lab,
  wish: Lab,
  passes: (lab: Lab) => Lab | null,
): Lab | null {
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
        bisectFurthest((t) => passes(withLightnessAndChroma(from, from[0], C0 + t * (C1 - C0))))
          ?.value ?? null
      );
    }
    case 'warmer':
    case 'cooler': {
      // Either the full turn with less chroma, or less of the turn: whichever goes further on the
      // warm-cool scale.
      const duller = bisectFurthest((t) => passes(scaled(wish, 0.6 + 0.4 * t)), 5)?.value;
      const less = bisectFurthest((t) => passes(turnedPart(from, wish, t)), 5)?.value;
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
        const found = bisectFurthest(
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

/** Part of a turn at constant chroma. */
function turnedPart(from: Lab, wish: Lab, t: number): Lab {
  const C = chroma(from);
  const a = from[1] + t * (wish[1] - from[1]);
  const b = from[2] + t * (wish[2] - from[2]);
  const made = Math.hypot(a, b);
  const aim = C + t * (chroma(wish) - C);
  return made < 1e-9 ? [from[0], 0, 0] : [from[0], (a * aim) / made, (b * aim) / made];
}
