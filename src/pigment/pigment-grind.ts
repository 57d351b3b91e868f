import { fail, ok, type Result } from '../result.ts';
import { type Grind, OIL_DENSITY, type Oil } from './paste.ts';
import { pigmentOf } from './pigment-facts.ts';

/** Why a pigment cannot be weighed as oil paint. */
export type WeighFault =
  | { readonly code: 'weigh-unknown'; readonly pigment: string }
  | {
      readonly code: 'weigh-no-figures';
      readonly pigment: string;
      readonly name: string;
      readonly lacks: readonly ('density' | 'oil')[];
    };

/** The studio's measurements of a lot (g/cm3; g of oil per 100 g), preferred to the handbook. */
interface OwnFigures {
  readonly density?: number | undefined;
  readonly oil?: number | undefined;
}

/**
 * Density and oil of a pigment for pasteOf(): the studio's own measurements, else the handbook's
 * defaults.
 * @returns a fault if a figure is unknown in both; it is never guessed
 */
export function pigmentGrind(
  id: string,
  own: OwnFigures = {},
  oil: Oil = 'linseed',
): Result<Grind, WeighFault> {
  const facts = pigmentOf(id);
  const density = own.density ?? facts?.density?.value;
  const taken = own.oil ?? facts?.oil?.value;
  if (density !== undefined && taken !== undefined)
    return ok({ density, oil: taken, oilDensity: OIL_DENSITY[oil] });
  if (facts === null) return fail({ code: 'weigh-unknown', pigment: id });
  const lacks = [
    ...(density === undefined ? (['density'] as const) : []),
    ...(taken === undefined ? (['oil'] as const) : []),
  ];
  return fail({ code: 'weigh-no-figures', pigment: id, name: facts.name, lacks });
}
