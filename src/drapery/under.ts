import { deltaE00 } from '../colour/difference.ts';
import { chroma, hueTurnDeg, type Lab } from '../colour/lab.ts';
import { oklabHueDeg, oklabOfLab } from '../colour/oklab.ts';
import { hueHeld } from '../harmony/held.ts';
import { atHue } from '../harmony/vary.ts';
import type { Mixture } from '../mixture/mixture.ts';
import type { Shelf, ShelfPaint } from '../pigment/shelf.ts';
import { filmOver, insideOf } from './glaze.ts';

/** A pile seen through its glaze. */
export interface Under {
  readonly mixture: Mixture;
  /** Of the recipe, and of its whole parts, through the film. */
  readonly seen: Lab;
  readonly partsSeen: Lab;
  readonly deltaE00: number;
  /** The hue that is to be held, is. */
  readonly held: boolean;
}

/** A hue that turns is worth so much difference to avoid. */
const TURNED = 3;
/** What speaks against one: its difference, and a hue that turns. */
export const againstIt = ({ deltaE00, held }: Under): number => deltaE00 + (held ? 0 : TURNED);

const ROUNDS = 6;
const MET = 0.5;

/** A film as it is looked through, and the hue that what is seen shall hold. */
export interface Film {
  readonly paint: ShelfPaint;
  readonly filmMm: number;
  readonly hue?: Lab | undefined;
}

/** A pile through a film. */
export function through(mixture: Mixture, wish: Lab, film: Film, shelf: Shelf): Under {
  const over = (recipe: Mixture['recipe'] | Mixture['parts']) =>
    filmOver(film.paint, film.filmMm, insideOf(recipe, shelf), shelf);
  const [seen, partsSeen] = [over(mixture.recipe), over(mixture.parts)];
  const { hue } = film;
  return {
    mixture,
    seen,
    partsSeen,
    deltaE00: deltaE00(wish, seen),
    held: hue === undefined || (hueHeld(hue, seen) && hueHeld(hue, partsSeen)),
  };
}

/** An underpaint is of its cloth's hue, or of a neighbour's, and of its strength: a glaze is no mask. */
const TURN_DEG = 35;
const WEAKEST = 0.5;
const STRONGEST = 1.4;

/**
 * Finds the body colour under a glaze: a pile is laid, seen through the film, and its wish corrected by
 * what is missing, a few times; the best try that is allowed is kept, one that holds the hue before others.
 * @param lay     the pile for a wished body colour; null where there is none
 * @param allowed whether a try may be kept
 */
export function underOf(
  wish: Lab,
  film: Film,
  shelf: Shelf,
  lay: (lab: Lab) => Mixture | null,
  allowed: (under: Under) => boolean,
): Under | null {
  const hue = oklabHueDeg(oklabOfLab(wish)) ?? 0;
  const C = chroma(wish);
  let [L, factor, turn] = [wish[0], 1, 0];
  let best: Under | null = null;
  for (let round = 0; round < ROUNDS; round++) {
    const mixture = lay(atHue(((hue + turn) * Math.PI) / 180, L, factor * C));
    if (mixture === null) return best;
    const under = through(mixture, wish, film, shelf);
    if (allowed(under) && (best === null || againstIt(under) < againstIt(best))) best = under;
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
