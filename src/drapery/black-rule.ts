import type { Lab } from '../colour/lab.ts';
import { type Declared, kindOf } from '../harmony/period-family.ts';
import type { Share } from '../mixture/mixture-types.ts';
import { masstonesOf } from '../pigment/nearest-masstone.ts';
import { pigmentOf } from '../pigment/pigment-facts.ts';
import type { Shelf } from '../pigment/shelf.ts';

/** Why black may deepen the shadows of a cloth. */
export type BlackWhy =
  | 'white cloth'
  | 'grey cloth'
  | 'black cloth'
  | 'brown cloth'
  | 'earth red cloth'
  | 'its local colour holds it'
  | 'the painter insists';

/** Outcome of the rule on black for one cloth. */
export interface BlackRule {
  /** Blacks of the shelf that may deepen this cloth. */
  readonly allowed: readonly string[];
  /** Blacks of the shelf that may not; charcoal with white is still allowed, as a cool tint. */
  readonly barred: readonly string[];
  /** null: no black may. */
  readonly why: BlackWhy | null;
}

/** Black pigments of a shelf: by the handbook, otherwise by name or by a masstone without hue. */
export function blacksOf(shelf: Shelf): string[] {
  const masstones = masstonesOf(shelf);
  return shelf.paints
    .filter(({ pigment, label }, i) => {
      const facts = pigmentOf(pigment);
      if (facts !== null) return facts.family === 'black';
      const [L, a, b] = masstones[i]!.lab;
      return /black|noir|schwarz/i.test(`${pigment} ${label}`) || (L < 28 && Math.hypot(a, b) < 2);
    })
    .map(({ pigment }) => pigment);
}

const isCharcoal = (shelf: Shelf, pigment: string): boolean =>
  /charcoal|vine/i.test(
    `${pigment} ${shelf.paints.find((one) => one.pigment === pigment)?.label ?? ''}`,
  );

/** Whether a pigment is the shelf's white or a white by the handbook. */
const isWhite = (shelf: Shelf, pigment: string): boolean =>
  pigment === shelf.white || pigmentOf(pigment)?.family === 'white';

/**
 * The rule on black: no black deepens a shadow unless the cloth is white, grey, black, brown or
 * earth red, its local colour already contains that black, or the painter insists. Common practice;
 * G. Field, Chromatography: keep black out of colour, glaze instead.
 * @param local CIELAB under D65
 * @param recipe of the local colour
 */
export function blackRule(
  local: Lab,
  recipe: readonly Share[],
  shelf: Shelf,
  { declared = null, insist = false }: { declared?: Declared | null; insist?: boolean } = {},
): BlackRule {
  const blacks = blacksOf(shelf);
  const all = (why: BlackWhy): BlackRule => ({ allowed: blacks, barred: [], why });
  const { family, earthRed } = kindOf(local, declared);
  if (family === 'white' || family === 'grey' || family === 'black' || family === 'brown')
    return all(`${family} cloth`);
  if (earthRed) return all('earth red cloth');
  if (insist) return all('the painter insists');
  const held = blacks.filter(
    (black) =>
      recipe.some(({ pigment }) => pigment === black) &&
      outsideRule(recipe, [black], shelf).length > 0,
  );
  return {
    allowed: held,
    barred: blacks.filter((black) => !held.includes(black)),
    why: held.length > 0 ? 'its local colour holds it' : null,
  };
}

/**
 * Blacks of a pile that the rule bars there. Charcoal with at least as much white is a cool tint
 * and always allowed.
 */
export function outsideRule(
  recipe: readonly Share[],
  barred: readonly string[],
  shelf: Shelf,
): string[] {
  const white = recipe
    .filter(({ pigment }) => isWhite(shelf, pigment))
    .reduce((sum, { share }) => sum + share, 0);
  return recipe
    .filter(
      ({ pigment, share }) =>
        barred.includes(pigment) && !(isCharcoal(shelf, pigment) && white >= share),
    )
    .map(({ pigment }) => pigment);
}

/** Barred blacks that no pile may contain; charcoal is left to {@link outsideRule}. */
export const neverIn = (barred: readonly string[], shelf: Shelf): string[] =>
  barred.filter((pigment) => !isCharcoal(shelf, pigment));
