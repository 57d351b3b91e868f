import { deltaE00 } from '../colour/difference.ts';
import { chroma, hueTurnDeg, type Lab } from '../colour/lab.ts';
import { oklabHueDeg, oklabOfLab } from '../colour/oklab.ts';
import { isHueWithin } from '../harmony/hue-tolerance.ts';
import { colourAtHue } from '../harmony/variant-target.ts';
import type { Mixture } from '../mixture/mixture-types.ts';
import type { Shelf, ShelfPaint } from '../pigment/shelf.ts';
import { glazedColour, internalReflectance } from './glaze-selection.ts';

/** A pile seen through its glaze. */
export interface GlazedPile {
  readonly mixture: Mixture;
  /** Visible colours through the film: of the recipe and of its whole parts. */
  readonly seen: Lab;
  readonly partsSeen: Lab;
  readonly deltaE00: number;
  /** Whether the required hue is held. */
  readonly held: boolean;
}

/** Penalty for a turned hue, in CIEDE2000. */
const TURNED = 3;
/**
 * Score of a body colour under its glaze, lower is better: its difference, plus the penalty for a
 * turned hue.
 */
export const underpaintScore = ({ deltaE00, held }: GlazedPile): number =>
  deltaE00 + (held ? 0 : TURNED);

/** Most corrections, and the CIEDE2000 at which they stop. */
const ROUNDS = 6;
const MET = 0.5;

/** A film, and the hue that the result has to hold. */
interface Film {
  readonly paint: ShelfPaint;
  readonly filmMm: number;
  readonly hue?: Lab | undefined;
}

/** The visible colours of a pile through a film. */
function throughGlaze(mixture: Mixture, wish: Lab, film: Film, shelf: Shelf): GlazedPile {
  const over = (recipe: Mixture['recipe'] | Mixture['parts']) =>
    glazedColour(film.paint, film.filmMm, internalReflectance(recipe, shelf), shelf);
  const [seen, partsSeen] = [over(mixture.recipe), over(mixture.parts)];
  const { hue } = film;
  return {
    mixture,
    seen,
    partsSeen,
    deltaE00: deltaE00(wish, seen),
    held: hue === undefined || (isHueWithin(hue, seen) && isHueWithin(hue, partsSeen)),
  };
}

/**
 * Limits of an underpaint: its hue and chroma stay near its cloth's, because a glaze cannot mask
 * it. Turn in degrees, chroma as factors.
 */
const TURN_DEG = 35;
const WEAKEST = 0.5;
const STRONGEST = 1.4;

/**
 * Finds the body colour under a glaze by feedback: mixes a pile, views it through the film and
 * corrects the target by the error, a few times. Returns the best allowed try; one that holds the
 * hue comes first.
 * @param lay mixes a body colour; null if impossible
 * @param allowed whether a try is acceptable
 */
export function searchUnderpaint(
  wish: Lab,
  film: Film,
  shelf: Shelf,
  lay: (lab: Lab) => Mixture | null,
  allowed: (under: GlazedPile) => boolean,
): GlazedPile | null {
  const hue = oklabHueDeg(oklabOfLab(wish)) ?? 0;
  const C = chroma(wish);
  let [L, factor, turn] = [wish[0], 1, 0];
  let best: GlazedPile | null = null;
  for (let round = 0; round < ROUNDS; round++) {
    const mixture = lay(colourAtHue(((hue + turn) * Math.PI) / 180, L, factor * C));
    if (mixture === null) return best;
    const under = throughGlaze(mixture, wish, film, shelf);
    if (allowed(under) && (best === null || underpaintScore(under) < underpaintScore(best)))
      best = under;
    if (under.deltaE00 < MET && under.held) break;
    L = Math.min(96, Math.max(8, L + wish[0] - under.seen[0]));
    factor += C > 1 ? (C - chroma(under.seen)) / C : 0;
    factor = Math.min(STRONGEST, Math.max(WEAKEST, factor));
    const seen = oklabHueDeg(oklabOfLab(under.seen));
    if (seen !== null) turn += hueTurnDeg(seen, hue);
    turn = Math.min(TURN_DEG, Math.max(-TURN_DEG, turn));
  }
  return best;
}
