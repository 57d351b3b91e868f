import { warmCool } from '../colour/appearance.ts';
import { changeWords } from '../colour/change-words.ts';
import { deltaE00 } from '../colour/difference.ts';
import { chroma, type Lab } from '../colour/lab.ts';
import { type Mixture, REACHABLE_DELTA_E } from '../mixture/mixture-types.ts';
import { mixtureOnly, pigmentsOf, rescored, wholePartShares } from '../mixture/normalise.ts';
import type { MixFault } from '../mixture/search-options.ts';
import type { Shelf } from '../pigment/shelf.ts';
import type { Result } from '../result.ts';
import { type PileChange, pileChange } from './pile-change.ts';
import { type PileSearch, type PileSearchOptions, withPileSearch } from './pile-search.ts';
import { searchVariant } from './variant-search.ts';
import {
  type Variant,
  type VariantAmount,
  type VariantWay,
  variantTarget,
} from './variant-target.ts';

/** A colour with its mixture, from which a variant starts. */
export interface Origin {
  /**
   * The target colour. If the mixture visibly misses it, the variant alters the mixture's own
   * colour.
   */
  readonly lab: Lab;
  readonly mixture: Mixture;
}

/** How much of a variant the shelf makes. */
export type Granted =
  /** All of it: no visible difference. */
  | 'whole'
  /** The right direction, but not far enough. */
  | 'part'
  /** The shelf makes no such change; the mixture is the origin's own. */
  | 'nothing';

/** A variant as the shelf makes it, with its origin. */
export interface MixedVariant {
  readonly way: VariantWay;
  readonly amount: VariantAmount;
  readonly origin: Origin;
  /** The target: the origin altered by the full amount. */
  readonly wish: Lab;
  readonly stopped: Variant['stopped'];
  /** What the shelf makes; its differences are from the target. */
  readonly mixture: Mixture;
  readonly granted: Granted;
  /** What falls short of the target. */
  readonly short: readonly ('chroma' | 'turn' | 'lightness')[];
  /** Mixed only from the origin's pigments. */
  readonly samePigments: boolean;
  /** Change of the pile in whole parts. */
  readonly pile: PileChange;
  /** Visible change: "lighter, a little duller". */
  readonly seen: string;
}

/**
 * Alters one colour in one direction and mixes the result: from the origin's own pigments if they
 * come near enough, otherwise with as many of them as possible. The direction also holds for the
 * mixtures: a warmer variant never scores lower on the published warm-cool scale than its origin's
 * mixture, and so on. What the shelf cannot do is reported as `part` or `nothing` (worded in
 * messages/variant-limits.ts).
 */
export function variantOf(
  origin: Origin,
  way: VariantWay,
  amount: VariantAmount,
  shelf: Shelf,
  options: PileSearchOptions = {},
): Result<MixedVariant, MixFault> {
  return withPileSearch(shelf, options, (bench) => mixVariant(origin, way, amount, bench));
}

/**
 * Alters colours in several ways: a whole harmony in one, or one colour in all. Each result reports
 * its own shortfall. Order: every colour for the first way, then for the next.
 */
export function variantsOf(
  origins: readonly Origin[],
  asks: readonly { readonly way: VariantWay; readonly amount: VariantAmount }[],
  shelf: Shelf,
  options: PileSearchOptions & { readonly onProgress?: (done: number) => void } = {},
): Result<MixedVariant[], MixFault> {
  const all = asks.flatMap((ask) => origins.map((origin) => ({ ...ask, origin })));
  return withPileSearch(shelf, options, (bench) =>
    all.map(({ origin, way, amount }, i) => {
      const one = mixVariant(origin, way, amount, bench);
      options.onProgress?.((i + 1) / all.length);
      return one;
    }),
  );
}

/**
 * The mixture that a colour starts from; `simple` takes the fewest pigments that are nearly as
 * good.
 */
export function originOf(
  lab: Lab,
  shelf: Shelf,
  options: PileSearchOptions & { readonly simple?: boolean } = {},
): Result<Origin, MixFault> {
  return withPileSearch(shelf, options, (bench) => {
    const answer = bench.mix(lab)!;
    return { lab, mixture: options.simple ? answer.simplest : mixtureOnly(answer) };
  });
}

function mixVariant(
  origin: Origin,
  way: VariantWay,
  amount: VariantAmount,
  bench: PileSearch,
): MixedVariant {
  const { shelf } = bench;
  const from = origin.mixture.lab;
  // If the mixture meets the target, start from the target: invisible errors then never add up.
  const isMet = deltaE00(origin.lab, from) <= REACHABLE_DELTA_E;
  const { lab: wish, stopped } = variantTarget(isMet ? origin.lab : from, way, amount);
  const made = searchVariant(origin.mixture, way, wish, bench);
  const mixture = rescored(wish, made ?? origin.mixture);
  const granted = made === null ? 'nothing' : mixture.reachable ? 'whole' : 'part';
  const own = pigmentsOf(origin.mixture, shelf);
  return {
    way,
    amount,
    origin,
    wish,
    stopped,
    mixture,
    granted,
    short: granted === 'whole' ? [] : shortOf(way, from, wish, mixture.lab),
    samePigments: pigmentsOf(mixture, shelf).every((one) => own.includes(one)),
    pile: pileChange(wholePartShares(origin.mixture, shelf), wholePartShares(mixture, shelf)),
    seen: changeWords(from, mixture.lab),
  };
}

/** Axes on which a mixture falls visibly short of the target. */
function shortOf(way: VariantWay, from: Lab, wish: Lab, to: Lab): MixedVariant['short'] {
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
