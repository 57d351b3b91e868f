import { joinWords, midSentence } from '../wording.ts';
import { pasteDays } from './drying-time.ts';
import { type Layer, labelIn, type Studio, sharesOf } from './passage.ts';
import { handbookId } from './pigment-lookup.ts';
import { filmUmOf, spareOilOf } from './pile-quantity.ts';

/** One coat, for comparing it with another. */
export type CoatRecipe = Pick<Layer, 'parts' | 'film' | 'filmUm' | 'spareOil'>;
export type LayerRule =
  | 'quick over slow'
  | 'black underneath'
  | 'Cassel earth underneath'
  | 'lake underneath'
  | 'zinc white underneath'
  | 'umber thick underneath'
  | 'lean over fat';
/** A warning of practice, with its sentence. */
export interface LayerWarning {
  readonly rule: LayerRule;
  readonly words: string;
}

/** Ratio of drying times below which an upper coat dries too fast over a lower one. */
const QUICKER = 0.55;
/** Difference of {@link fatnessOf} above which a lower coat counts as fatter. */
const FATTER = 0.05;

const BLACKS = ['bone_black', 'charcoal_black', 'lamp_black'];
const LAKES = ['yellow_lake', 'madder_lake', 'carmine_lake'];
const UMBERS = ['raw_umber', 'burnt_umber', 'raw_sienna'];
/** Share from which a pigment determines the character of a coat; for Cassel earth a tenth. */
const MARKED = 0.25;
const CASSEL = 0.1;
/** Thickness, micrometres, from which an umber coat counts as thick. */
const THICK_UM = 60;

/**
 * Fatness of a coat: oil beyond what its pigments' own paste needs, as a share of its volume, times
 * the cube root of its thickness over 40 micrometres; a thick oily film moves longest (the weight
 * of thickness is an estimate). Paste as ground is 0, whatever its oil content.
 */
export function fatnessOf(coat: CoatRecipe): number {
  const spare = spareOilOf(coat);
  return (spare / (1 + spare)) * Math.cbrt(filmUmOf(coat) / 40);
}

/** Warnings of common practice for painting `over` on top of `under`. */
export function layerWarnings(
  over: CoatRecipe,
  under: CoatRecipe,
  studio: Studio,
): readonly LayerWarning[] {
  const warnings: LayerWarning[] = [];
  const warn = (rule: LayerRule, words: string) => warnings.push({ rule, words });
  const share = (ids: readonly string[]) =>
    sharesOf(under.parts)
      .filter(({ pigment }) => ids.includes(handbookId(pigment)))
      .reduce((sum, one) => sum + one.share, 0);
  const names = (ids: readonly string[]) =>
    joinWords(
      sharesOf(under.parts)
        .filter(({ pigment }) => ids.includes(handbookId(pigment)))
        .map(({ pigment }) => midSentence(labelIn(studio, pigment))),
    );

  if (middle(over) < QUICKER * middle(under))
    warn(
      'quick over slow',
      'A quick drier over a slow one: the skin sets while the coat below still moves, and cracks. Let the lower coat dry through, or take a slower pigment.',
    );
  if (share(BLACKS) >= MARKED)
    warn(
      'black underneath',
      `There is much ${names(BLACKS)} underneath: it stays soft for long, and what lies over it cracks.`,
    );
  if (share(['cassel_earth']) >= CASSEL)
    warn(
      'Cassel earth underneath',
      'There is Cassel earth underneath: it hardly ever dries, wrinkles and cracks. Keep it for the last coat.',
    );
  if (share(LAKES) >= MARKED && over.film !== 'glaze')
    warn(
      'lake underneath',
      `There is much ${names(LAKES)} underneath: lakes dry slowly and keep best as the last glaze.`,
    );
  if (share(['zinc_white']) >= MARKED)
    warn(
      'zinc white underneath',
      'There is zinc white underneath: its film turns brittle and may part from what lies over it.',
    );
  if (share(UMBERS) >= MARKED && filmUmOf(under) >= THICK_UM)
    warn(
      'umber thick underneath',
      `There is ${names(UMBERS)} in a thick coat underneath: it holds much oil, and darkens and moves. Keep it thin in lower coats.`,
    );
  if (fatnessOf(over) < fatnessOf(under) - FATTER)
    warn(
      'lean over fat',
      'Lean over fat: the coat below holds more spare oil for its thickness than this one. Stir a little oil in, or leave oil out below next time.',
    );
  return warnings;
}

/** Geometric mean of the drying range, days. */
const middle = (coat: CoatRecipe): number => {
  const { least, most } = pasteDays(coat.parts);
  return Math.sqrt(least * most);
};
