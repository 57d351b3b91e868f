import { deltaE00 } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import { predictColour } from '../mixture/predict.ts';
import { masstone } from '../pigment/masstone.ts';
import type { LeftOff, PilePlan } from './day-plan.ts';
import type { DayRequest, Rules } from './day-request.ts';
import { groundDryness, groundOf, isDry } from './drying-time.ts';
import { needsDryGround } from './film-kinds.ts';
import { type LayerWarning, layerWarnings } from './layer-rules.ts';
import { type Passage, type PassagePile, type Studio, sharesOf } from './passage.ts';
import { clashes } from './pigment-clashes.ts';
import { hazardOf, isToxic } from './pigment-lookup.ts';
import { amountOf, spareOilOf } from './pile-quantity.ts';
import { nearestReplacement, type Replacement, toxicOf } from './replacement.ts';

/** A pile of unknown colour is drawn in middle grey. */
export const UNKNOWN: Lab = [50, 0, 0];

/**
 * Plans one pile for today, or says why it is left off.
 * @throws RangeError if the request was not checked (planDay in sheet/plan-day.ts)
 */
export function planPile(
  asked: PassagePile,
  passage: Passage,
  { date, rules }: DayRequest,
  studio: Studio,
): PilePlan | { readonly why: LeftOff['why'] } {
  if (asked.parts === null) return { why: { code: 'mixture-gone' } };
  const wettest = groundDryness(passage.layers, date);
  if (wettest !== null && needsDryGround(asked.film) && !isDry(wettest.dryness))
    return { why: { code: 'ground-wet', dryness: wettest.dryness } };
  const ground = groundOf(passage.layers);
  const wanted = pileColour({ ...asked, parts: asked.parts }, studio);
  const names = sharesOf(asked.parts, asked.letDowns).map(({ pigment }) => pigment);
  let pile = { ...asked, parts: asked.parts };
  let swap: Replacement | null = null;
  if (rules.pupils && names.some((name) => isToxic(hazardOf(studio.stock, name)))) {
    const toxic = toxicOf(studio);
    swap = wanted === null ? null : nearestReplacement(wanted, toxic, [], studio);
    if (swap === null) return { why: { code: 'toxic-alone' } };
    pile = { ...pile, parts: swap.parts, letDowns: swap.letDowns };
  }
  const lab = swap?.lab ?? wanted ?? UNKNOWN;
  const amount = amountOf(pile, passage, rules.allowances);
  if (!amount.ok) throw new RangeError(`${pile.name} was not checked`);
  const shares = sharesOf(pile.parts, pile.letDowns);
  const white = whiteOf(studio, rules);
  const mixed = shares.map(({ pigment }) => pigment);
  // With the pupils setting, coats below are not named: their pigments may be toxic.
  const below = new Set(
    ground.flatMap(({ parts }) => sharesOf(parts).map(({ pigment }) => pigment)),
  );
  const warnings = ground.flatMap((layer) => layerWarnings(pile, layer));
  return {
    key: asked.id,
    passage,
    pile,
    lab,
    amount: amount.value,
    pure: shares.length === 1 && spareOilOf(pile) === 0,
    tint: shares.some(({ pigment, share }) => pigment === white && share >= 0.5),
    swap,
    clashes: [
      ...clashes('pile', pile.name, mixed, null),
      ...(rules.pupils ? [] : clashes('layers', pile.name, mixed, [...below])),
    ],
    layerWarnings: warnings.filter(
      (one, i) => warnings.findIndex((other) => isSameWarning(one, other)) === i,
    ),
  };
}

const isSameWarning = (one: LayerWarning, other: LayerWarning): boolean =>
  one.rule === other.rule && one.pigments.join() === other.pigments.join();

/** Colour of a pile: as planned, otherwise as predicted by the shelf; null if neither is known. */
export function pileColour(
  { lab, parts, letDowns }: Pick<PilePlan['pile'], 'lab' | 'parts' | 'letDowns'>,
  { shelf }: Studio,
): Lab | null {
  if (lab !== undefined) return lab;
  const shares = sharesOf(parts, letDowns);
  const known = shares.every(({ pigment }) => shelf.paints.some((one) => one.pigment === pigment));
  if (!known) return null;
  return predictColour(
    shares.map(({ pigment, share }) => ({ pigment, amount: share })),
    shelf,
  );
}

/** The studio's white; with the pupils setting, the nearest one that is not toxic, or null. */
export function whiteOf(studio: Studio, { pupils }: Rules): string | null {
  const { shelf, stock } = studio;
  const { white } = shelf;
  if (white === null || !pupils || !isToxic(hazardOf(stock, white))) return white;
  const wanted = pileColour({ parts: [{ pigment: white, parts: 1 }] }, studio);
  const safe = shelf.paints
    .filter(({ pigment }) => !isToxic(hazardOf(stock, pigment)))
    .map(({ pigment, paint }) => ({ pigment, lab: masstone(paint, shelf.surface) }))
    .filter(({ lab }) => lab[0] >= 85);
  safe.sort((a, b) => deltaE00(wanted!, a.lab) - deltaE00(wanted!, b.lab));
  return safe[0]?.pigment ?? null;
}
