import { type ColourSteps, stepsBetween, turnWords } from '../colour/difference-components.ts';
import { namedHueOf } from '../colour/hue-family.ts';
import { chroma, type Lab } from '../colour/lab.ts';
import { oklabHueDeg, oklabOfLab } from '../colour/oklab.ts';
import type { Shelf, ShelfPaint } from '../pigment/shelf.ts';
import { joinWords } from '../wording.ts';
import type { Constraints } from './constraints.ts';
import { type Mixture, REACHABLE_DELTA_E } from './mixture.ts';
import { nearestColourFinder } from './nearest-colour.ts';

type Axis = 'chroma' | 'lightness' | 'hue';

/** Why a shelf does not reach a target, from its nearest mixture. */
interface Shortfall {
  /** The axis that falls short most. */
  readonly axis: Axis;
  /** From the target to the mixture, in units of about 1 CIEDE2000. */
  readonly steps: ColourSteps;
  /** Axes on which the mixture is within {@link REACHABLE_DELTA_E} of the target. */
  readonly kept: readonly Axis[];
  readonly deltaE00: number;
  readonly target: Lab;
  readonly nearest: Lab;
}

/** C*ab below which a target has no hue or chroma to keep. */
const HUELESS = 6;

/** The shortfall of a mixture; null if it reaches its target. */
export function shortfallOf(
  target: Lab,
  mixture: Pick<Mixture, 'lab' | 'deltaE00'>,
): Shortfall | null {
  if (mixture.deltaE00 <= REACHABLE_DELTA_E) return null;
  const steps = stepsBetween(target, mixture.lab);
  const sizes: Record<Axis, number> = {
    chroma: Math.abs(steps.chroma),
    lightness: Math.abs(steps.value),
    hue: Math.abs(steps.hue),
  };
  const hued = chroma(target) >= HUELESS;
  const axes = (Object.keys(sizes) as Axis[]).sort((a, b) => sizes[b] - sizes[a]);
  return {
    axis: axes[0]!,
    steps,
    // The axis with the largest error always counts as given up.
    kept: axes
      .slice(1)
      .filter((axis) => sizes[axis] <= REACHABLE_DELTA_E && (axis === 'lightness' || hued))
      .reverse(),
    deltaE00: mixture.deltaE00,
    target,
    nearest: mixture.lab,
  };
}

/** One sentence: how the target exceeds the shelf, what the nearest mixture keeps and gives up. */
export function shortfallWords({ axis, steps, kept, target }: Shortfall): string {
  const { word, family } = namedHueOf(target);
  const any = ['grey', 'black', 'white'].includes(family) ? 'colour' : word;
  const beyond = {
    chroma: steps.chroma < 0 ? `brighter than any ${any}` : `greyer than any ${any}`,
    lightness: steps.value < 0 ? `lighter than any ${any}` : `deeper than any ${any}`,
    hue: `${turn(target, steps.hue)} than any colour so light and so bright`,
  }[axis];
  const lost = (
    Object.entries({ chroma: steps.chroma, lightness: steps.value, hue: steps.hue }) as [
      Axis,
      number,
    ][]
  )
    .filter(([name, size]) => name === axis || Math.abs(size) > 2 * REACHABLE_DELTA_E)
    .map(([name]) => name);
  const keeps = kept.length > 0 ? `keeps the ${joinWords(kept)} and ` : '';
  return `This is ${beyond} on the shelf; the nearest ${keeps}gives up ${joinWords(lost)}.`;
}

/** Word for the hue direction from the mixture to the target, opposite to the step. */
function turn(target: Lab, step: number): string {
  const [back, on] = turnWords(oklabHueDeg(oklabOfLab(target)) ?? 0);
  return step < 0 ? on : back;
}

/** The effect of adding one pigment to the shelf. */
export interface MissingPigment {
  readonly pigment: string;
  readonly label: string;
  readonly deltaE00: number;
  readonly reachable: boolean;
}

/** CIEDE2000 that a pigment must gain to be listed. */
const WORTH = 1;

/**
 * Pigments not on the shelf that would bring the nearest mixture closer to a target, best first.
 * @param further paints that could be bought; those already on the shelf are skipped
 */
export function missingPigmentsFor(
  target: Lab,
  shelf: Shelf,
  further: readonly ShelfPaint[],
  { most = 4, constraints = {} }: { most?: number; constraints?: Constraints } = {},
): MissingPigment[] {
  const { inStock, ...wishes } = constraints;
  const nearest = (paint?: ShelfPaint): number => {
    const paints = paint ? [...shelf.paints, paint] : shelf.paints;
    const all = { ...wishes, ...(inStock && { inStock: [...inStock, paint?.pigment ?? ''] }) };
    const on = nearestColourFinder({ ...shelf, paints }, most, all);
    return on.ok ? on.value.of(target, true)!.deltaE00 : Number.POSITIVE_INFINITY;
  };
  const now = nearest();
  const isHere = ({ pigment }: ShelfPaint) =>
    shelf.paints.some((p) => p.pigment === pigment) && (inStock?.includes(pigment) ?? true);
  return further
    .filter((paint) => !isHere(paint))
    .map((paint) => {
      const deltaE00 = nearest(paint);
      const { pigment, label } = paint;
      return { pigment, label, deltaE00, reachable: deltaE00 <= REACHABLE_DELTA_E };
    })
    .filter((lack) => lack.deltaE00 <= now - WORTH)
    .sort((a, b) => a.deltaE00 - b.deltaE00);
}
