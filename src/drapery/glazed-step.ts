import type { Lab } from '../colour/lab.ts';
import type { PileSearch } from '../harmony/pile-search.ts';
import type { ShelfPaint } from '../pigment/shelf.ts';
import { type ClothRequest, DraperyFaultError } from './cloth-types.ts';
import {
  glazeFor,
  glazesOf,
  glazeThickness,
  glazeThicknesses,
  internalReflectance,
  thinnerFilms,
} from './glaze-selection.ts';
import type { ClothPileSearch, FinishedStep } from './ladder-search.ts';
import { type GlazedPile, searchUnderpaint, underpaintScore } from './underpaint.ts';

/** Neighbours and constraints of a glazed step. */
interface StepNeighbours {
  readonly over?: FinishedStep | undefined;
  readonly under?: FinishedStep | undefined;
  readonly glaze: GlazeCoat;
  readonly hue: Lab | undefined;
  readonly laid: readonly (FinishedStep | undefined)[];
}

/**
 * Body colour and glaze film of one step; a thinner film is used if the planned one turns the hue.
 * @returns null if no film keeps the step's place in the order
 */
export function glazedStep(
  i: number,
  aim: Lab,
  { over, under, glaze, hue, laid }: StepNeighbours,
  layer: ClothPileSearch,
  bench: PileSearch,
): Omit<FinishedStep, 'wish'> | null {
  const between = ({ seen, partsSeen }: GlazedPile) =>
    (over === undefined || (seen[0] < over.lab[0] && partsSeen[0] < over.partsLab[0])) &&
    (under === undefined || (seen[0] > under.lab[0] && partsSeen[0] > under.partsLab[0]));
  const { paint, filmsMm } = glaze;
  const laidMm = laid.map((one) => one?.glaze?.filmMm);
  let best: { readonly found: GlazedPile; readonly filmMm: number } | null = null;
  for (const filmMm of thinnerFilms(i, filmsMm[i]!, laidMm, hue !== undefined)) {
    const through = { paint, filmMm, hue };
    const found = searchUnderpaint(aim, through, bench.shelf, (lab) => layer.find(lab), between);
    if (found && (best === null || underpaintScore(found) < underpaintScore(best.found)))
      best = { found, filmMm };
    if (best?.found.held) break;
  }
  if (best === null) return null;
  const { found, filmMm } = best;
  layer.take(found.mixture);
  return {
    mixture: found.mixture,
    lab: found.seen,
    partsLab: found.partsSeen,
    glaze: { pigment: paint.pigment, filmMm },
  };
}

/** A glaze and its thickness on each step. */
export interface GlazeCoat {
  readonly paint: ShelfPaint;
  readonly filmsMm: readonly number[];
}

/**
 * L* that the trial body colour is lighter than the target, to measure the strength of the glaze.
 */
const TRIED = 8;

/**
 * The glaze of a cloth, with the thickness for each step.
 * @throws Snag if the shelf has no suitable glaze or no body colour
 */
export function coatOf(
  wish: ClothRequest,
  wishes: readonly Lab[],
  layer: ClothPileSearch,
  bench: PileSearch,
): GlazeCoat {
  const paint = chooseGlaze(wish, bench);
  const [L, a, b] = wishes[2]!;
  const body = layer.find([Math.min(92, L + TRIED), a, b]);
  if (body === null) throw new DraperyFaultError({ code: 'no-range', name: wish.name });
  const filmsMm = glazeThicknesses(
    glazeThickness(paint, internalReflectance(body.recipe, bench.shelf), bench.shelf),
  );
  return { paint, filmsMm };
}

/**
 * The painter's glaze, or the one nearest to the cloth's hue.
 * @throws Snag if there is none
 */
export function chooseGlaze(
  { name, lab, glaze, pigments }: ClothRequest,
  { shelf }: PileSearch,
): ShelfPaint {
  const all = glazesOf(shelf).filter(({ pigment }) => pigments?.includes(pigment) ?? true);
  const chosen = glaze
    ? all.find(({ pigment }) => pigment === glaze)
    : glazeFor(lab, { ...shelf, paints: all });
  if (!chosen) throw new DraperyFaultError({ code: 'no-glaze', name, pigment: glaze ?? null });
  return chosen;
}
