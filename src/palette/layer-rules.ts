import { pasteDays } from './drying-time.ts';
import { type Layer, sharesOf } from './passage.ts';
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
/** A warning of practice, with the pigments underneath that cause it, where it names them. */
export interface LayerWarning {
  readonly rule: LayerRule;
  readonly pigments: readonly string[];
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
export function layerWarnings(over: CoatRecipe, under: CoatRecipe): readonly LayerWarning[] {
  const warnings: LayerWarning[] = [];
  const below = (ids: readonly string[]) =>
    sharesOf(under.parts).filter(({ pigment }) => ids.includes(handbookId(pigment)));
  const warn = (rule: LayerRule, ids: readonly string[] = []) =>
    warnings.push({ rule, pigments: below(ids).map(({ pigment }) => pigment) });
  const share = (ids: readonly string[]) => below(ids).reduce((sum, one) => sum + one.share, 0);

  if (middle(over) < QUICKER * middle(under)) warn('quick over slow');
  if (share(BLACKS) >= MARKED) warn('black underneath', BLACKS);
  if (share(['cassel_earth']) >= CASSEL) warn('Cassel earth underneath');
  if (share(LAKES) >= MARKED && over.film !== 'glaze') warn('lake underneath', LAKES);
  if (share(['zinc_white']) >= MARKED) warn('zinc white underneath');
  if (share(UMBERS) >= MARKED && filmUmOf(under) >= THICK_UM)
    warn('umber thick underneath', UMBERS);
  if (fatnessOf(over) < fatnessOf(under) - FATTER) warn('lean over fat');
  return warnings;
}

/** Geometric mean of the drying range, days. */
const middle = (coat: CoatRecipe): number => {
  const { least, most } = pasteDays(coat.parts);
  return Math.sqrt(least * most);
};
