import { deltaE00 } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import { LADDER_STEPS } from '../harmony/harmony.ts';
import type { PileSearch } from '../harmony/pile-search.ts';
import type { Mixture } from '../mixture/mixture-types.ts';
import { rescored } from '../mixture/normalise.ts';
import { FINE_PARTS } from '../mixture/whole-parts.ts';
import { type ClothRequest, DraperyFaultError, type Fold } from './cloth-types.ts';
import { shareOf } from './fabric.ts';
import { reflection } from './fold-model.ts';
import { coatOf, type GlazeCoat, glazedStep } from './glazed-step.ts';
import {
  type ClothPileSearch,
  type FinishedStep,
  reduceChroma,
  type StepConstraints,
} from './ladder-search.ts';

/** Input of the ladder search. */
interface LadderTargets {
  readonly wish: ClothRequest;
  /** Six target colours, lightest first. */
  readonly wishes: readonly Lab[];
  /** For shot cloth: the hue that its shadows hold. */
  readonly shadowHue: Lab | undefined;
}

/**
 * Order of the steps: local colour first, then the ends, then those between, so that later steps
 * reuse its pigments.
 */
const STEP_ORDER = [2, 5, 3, 4, 0, 1] as const;
/**
 * Offsets to try if a step cannot be mixed as targeted, as fractions of the gap to its neighbours.
 */
const TARGET_OFFSETS = [0, 0.2, -0.2, 0.4, -0.4] as const;

/**
 * Mixes the six folds of a cloth, and the reflected light of its neighbour.
 * @throws Snag if the shelf has no six lightnesses for it
 */
export function mixFolds(
  order: LadderTargets,
  layer: ClothPileSearch,
  bench: PileSearch,
): { readonly folds: readonly Fold[]; readonly reflected: Fold | null } {
  const { wish, wishes } = order;
  const coat = wish.way === 'underpaint and glaze' ? coatOf(wish, wishes, layer, bench) : null;
  const laid: (FinishedStep | undefined)[] = [];
  for (const i of STEP_ORDER) laid[i] = step(i, order, laid, coat, layer, bench);
  const piles = measurable(laid as FinishedStep[]);
  const folds = laid.map(
    (one, i): Fold => ({
      step: LADDER_STEPS[i]!,
      wish: wishes[i]!,
      lab: one!.lab,
      deltaE00: deltaE00(wishes[i]!, one!.lab),
      mixture: piles[i]!,
      glaze: one!.glaze,
      share: shareOf(wish.stuff, LADDER_STEPS[i]!),
    }),
  );
  return { folds, reflected: reflect(wish, folds, laid as FinishedStep[], layer) };
}

/** More let-downs than this are more trouble than measuring a knife-tip by eye. */
const LET_DOWNS = 2;

/**
 * Piles that a knife can measure. A let-down replaces plain parts if their ratio is too large to
 * measure and it keeps the pile's place in the order; under a glaze only plain parts are used.
 */
function measurable(laid: readonly FinishedStep[]): Mixture[] {
  return laid.map(({ mixture, glaze }, i) => {
    const { letDown, ...parts } = mixture;
    const seen = (one: FinishedStep | undefined) =>
      one ? [one.lab, one.partsLab, one.mixture.letDown?.lab ?? one.lab].map(([L]) => L) : [];
    const [over, under] = [seen(laid[i - 1]), seen(laid[i + 1])];
    const L = letDown?.lab[0];
    if (letDown === undefined || L === undefined || glaze !== null) return parts;
    const counts = mixture.parts.map((one) => one.parts);
    const past = Math.max(...counts) > FINE_PARTS.ratio * Math.min(...counts);
    const inOrder = over.every((l) => L < l) && under.every((l) => L > l);
    return past && inOrder && letDown.letDowns.length <= LET_DOWNS ? mixture : parts;
  });
}

/**
 * Mixes one step between its neighbours.
 * @throws Snag if no offset works
 */
function step(
  i: number,
  { wish, wishes, shadowHue }: LadderTargets,
  laid: readonly (FinishedStep | undefined)[],
  coat: GlazeCoat | null,
  layer: ClothPileSearch,
  bench: PileSearch,
): FinishedStep {
  const glaze = coat !== null && coat.filmsMm[i]! > 0 ? coat : null;
  const over = laid.slice(0, i).findLast((one) => one !== undefined);
  const under = laid.slice(i + 1).find((one) => one !== undefined);
  const around = [wishes[i - 1]?.[0], wishes[i + 1]?.[0]].filter((L) => L !== undefined);
  const gap = Math.min(...around.map((L) => Math.abs(L - wishes[i]![0])));
  const hue = hueFor(i, wish, wishes, shadowHue);
  for (const give of TARGET_OFFSETS) {
    const [L, a, b] = wishes[i]!;
    const aim: Lab = [L + give * gap, a, b];
    const made =
      glaze === null
        ? body(aim, { below: over, above: under, hue, slack: Math.min(1, gap / 3) }, layer)
        : glazedStep(
            i,
            aim,
            { over, under, glaze, hue: i >= 3 ? hue : undefined, laid },
            layer,
            bench,
          );
    if (made !== null) return { ...made, wish: wishes[i]! };
  }
  throw new DraperyFaultError({ code: 'no-range', name: wish.name });
}

/**
 * The hue that a step holds: below the local colour that of the local colour; in shot cloth's
 * shadows their own; in `as nature had it` the step's own.
 */
function hueFor(
  i: number,
  { way }: ClothRequest,
  wishes: readonly Lab[],
  shadowHue: Lab | undefined,
): Lab | undefined {
  if (way === 'as nature had it') return wishes[i];
  if (way !== 'shot cloth') return i >= 3 ? wishes[2] : wishes[i];
  return i >= 4 ? shadowHue : i === 3 ? undefined : wishes[i];
}

function body(
  aim: Lab,
  bounds: StepConstraints,
  layer: ClothPileSearch,
): Omit<FinishedStep, 'wish'> | null {
  const mixture = layer.pile(aim, bounds);
  return mixture && { mixture, lab: mixture.lab, partsLab: mixture.partsLab, glaze: null };
}

/**
 * Reflected light: the neighbour's colour in the shadow, lighter than the shadow and darker than
 * the half-tone.
 */
function reflect(
  { neighbour, name }: ClothRequest,
  folds: readonly Fold[],
  laid: readonly FinishedStep[],
  layer: ClothPileSearch,
): Fold | null {
  if (!neighbour) return null;
  const [half, shadow] = [laid[3]!, laid[4]!];
  const top = Math.min(half.lab[0], half.partsLab[0]);
  const foot = Math.max(shadow.lab[0], shadow.partsLab[0]);
  const own = folds[3]!.lab;
  for (const t of [0.5, 0.6, 0.4, 0.7, 0.3]) {
    const wish = reflection(own, neighbour, foot + t * (top - foot));
    const near = reduceChroma(wish, (lab) => layer.reaches(lab)) ?? wish;
    const bounds: StepConstraints = {
      below: { lab: half.lab, partsLab: half.partsLab },
      above: { lab: shadow.lab, partsLab: shadow.partsLab },
    };
    const found = layer.pile(near, bounds);
    if (found === null) continue;
    const { letDown: _, ...mixture } = found;
    return {
      step: 'reflected light',
      wish,
      lab: mixture.lab,
      deltaE00: deltaE00(wish, mixture.lab),
      mixture: rescored(near, mixture),
      glaze: null,
      share: 0,
    };
  }
  throw new DraperyFaultError({ code: 'no-range', name });
}
