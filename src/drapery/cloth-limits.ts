import type { Lab } from '../colour/lab.ts';
import type { PileSearch } from '../harmony/pile-search.ts';
import { blackRule, blacksOf } from './black-rule.ts';
import { type ClothRequest, DraperyFaultError } from './cloth-types.ts';
import { LEAST_DOWN } from './fabric.ts';
import { shadowsOf } from './fold-model.ts';
import { glazedColour, internalReflectance, THICKEST_MM } from './glaze-selection.ts';
import { chooseGlaze } from './glazed-step.ts';
import { HueRange, type LightnessEnds } from './hue-range.ts';

/**
 * The rule on black for a cloth. Its local colour is mixed without black if possible; then no black
 * may deepen it.
 */
export function ruleFor(lab: Lab, wish: ClothRequest, bench: PileSearch) {
  const { shelf } = bench;
  const blacks = blacksOf(shelf);
  const of = wish.pigments ? { of: wish.pigments } : {};
  const clean = bench.mix(lab, { without: blacks, ...of });
  const any = bench.mix(lab, of);
  const local = clean && any && clean.deltaE00 <= Math.max(1, any.deltaE00 + 1) ? clean : any;
  return blackRule(lab, local?.recipe ?? [], shelf, {
    declared: wish.declared ?? null,
    insist: wish.insistBlack ?? false,
  });
}

/**
 * What the shelf can do with a colour's hue, or with the hue of the nearest mixture if it has none
 * of it; null if nothing mixes.
 */
export function tonesFor(
  lab: Lab,
  { pigments }: ClothRequest,
  barred: readonly string[],
  bench: PileSearch,
): HueRange | null {
  const tones = new HueRange(bench, lab, barred, pigments);
  if (tones.ends() !== null) return tones;
  const nearest = bench.mix(lab, { without: barred, ...(pigments ? { of: pigments } : {}) });
  return nearest && new HueRange(bench, nearest.lab, barred, pigments);
}

/**
 * Targets for the shadows of shot cloth: deepened in their own hue, below the half-tone where both
 * hues meet.
 * @throws Snag if the shelf has no range for them
 */
export function shotShadows(
  wish: ClothRequest,
  local: Lab,
  steps: readonly number[],
  bench: PileSearch,
) {
  const { name, shadows } = wish;
  const barred = ruleFor(shadows!, { ...wish, lab: shadows! }, bench).barred;
  const tones = tonesFor(shadows!, { ...wish, lab: shadows! }, barred, bench);
  const ends = tones?.ends() ?? null;
  if (tones === null || ends === null) throw new DraperyFaultError({ code: 'no-range', name });
  const lowest = Math.min(steps[5]!, local[0] - LEAST_DOWN);
  const deep = Math.max(ends.deepest, lowest);
  if (local[0] - deep < 3) throw new DraperyFaultError({ code: 'no-range', name });
  const span = local[0] - deep;
  const fraction = (i: number) => (steps[2]! - steps[i]!) / (steps[2]! - steps[5]!);
  const L = [3, 4, 5].map((i) => local[0] - span * fraction(i));
  return { half: L[0]!, wishes: shadowsOf(tones, shadows!, [L[1]!, L[2]!]) };
}

/**
 * Limits of a glazed cloth. A film over a body colour deeper than its own pigment lightens it, so
 * the cloth gets no deeper than that.
 */
export function underGlaze(
  ends: LightnessEnds,
  tones: HueRange,
  wish: ClothRequest,
  bench: PileSearch,
): LightnessEnds {
  const body = bench.mix(tones.at(ends.deepest, tones.alive), { quick: true });
  if (body === null) return ends;
  const glaze = chooseGlaze(wish, bench);
  const ground = internalReflectance(body.recipe, bench.shelf);
  const foot = glazedColour(glaze, THICKEST_MM, ground, bench.shelf)[0] + 0.5;
  return { ...ends, deepest: Math.max(ends.deepest, foot) };
}
