import type { Formula } from '../drapery/formula.ts';
import type { Mixture } from '../mixture/mixture-types.ts';
import { pilePartsOf } from '../mixture/pile-parts.ts';
import type { PilePlan } from './day-plan.ts';
import { type Cover, type Layer, type PassagePile, sharesOf } from './passage.ts';
import { filmUmOf, spareOilOf } from './pile-quantity.ts';

/** A pile from a colour of a harmony, a fold of a drapery, or anything else with a mixture. */
export const pileFromMixture = ({
  mixture,
  ...rest
}: { readonly mixture: Mixture } & Pick<PassagePile, 'id' | 'name' | 'cover' | 'film'> &
  Partial<PassagePile>): PassagePile => ({ ...pilePartsOf(mixture), ...rest });

/**
 * The piles of a formula, coat by coat, each for the same area at first.
 * @param prefix makes their ids unique within the day
 */
export function pilesOfFormula(
  { passages }: Formula,
  cover: Cover,
  prefix: string,
): readonly PassagePile[] {
  return passages.flatMap(({ name, layers }, i) =>
    layers.map(({ film, mixture, filmMm }, k) =>
      pileFromMixture({
        id: `${prefix}-${i}-${k}`,
        name: layers.length > 1 ? `${name}, ${film}` : name,
        mixture,
        cover,
        film,
        ...(filmMm === undefined ? {} : { filmUm: 1000 * filmMm }),
      }),
    ),
  );
}

/** The coat that a painted pile leaves on its passage. */
export const layerOfPile = ({ pile }: Pick<PilePlan, 'pile'>, date: string): Layer => ({
  date,
  film: pile.film,
  filmUm: filmUmOf(pile),
  spareOil: spareOilOf(pile),
  parts: sharesOf(pile.parts, pile.letDowns).map(({ pigment, share }) => ({
    pigment,
    parts: share,
  })),
});
