/** Densities of the vehicles in g/cm3 (linseed from memory; walnut from CAMEO). */
export const OIL_DENSITY = { linseed: 0.93, walnut: 0.925 } as const;
export type Oil = keyof typeof OIL_DENSITY;

/** Composition of a paste: pigment ground in oil. */
export interface Grind {
  /** Of the dry pigment, g/cm3. */
  readonly density: number;
  /** Grams of oil per 100 g of dry pigment. */
  readonly oil: number;
  /** Of the oil, g/cm3; default linseed. */
  readonly oilDensity?: number;
}

/** Density and pigment volume of a paste. */
interface Paste {
  /** g/cm3 */
  readonly density: number;
  /** Pigment volume concentration (PVC), 0…1. */
  readonly pigmentShare: number;
}

/**
 * Density and PVC of a paste of 100 g of pigment and its oil, assuming that volumes add.
 * ρ = (100 + w) ÷ (100/ρp + w/ρo), share = (100/ρp) ÷ (100/ρp + w/ρo).
 * @throws RangeError for a density that is not above 0 or an oil that is not ≥ 0
 */
export function pasteOf({ density, oil, oilDensity = OIL_DENSITY.linseed }: Grind): Paste {
  if (!(density > 0) || !(oilDensity > 0) || !(oil >= 0))
    throw new RangeError(`no paste of density ${density}, oil ${oil}, oil density ${oilDensity}`);
  const pigment = 100 / density;
  const volume = pigment + oil / oilDensity;
  return { density: (100 + oil) / volume, pigmentShare: pigment / volume };
}

/** Grams of paint, dry pigment and oil in a volume of paste. */
interface Weights {
  readonly paint: number;
  readonly pigment: number;
  readonly oil: number;
}

/** Weights in a volume of paste. @throws RangeError as {@link pasteOf} */
export function weightsOf(volumeCm3: number, grind: Grind): Weights {
  const paint = volumeCm3 * pasteOf(grind).density;
  return {
    paint,
    pigment: (paint * 100) / (100 + grind.oil),
    oil: (paint * grind.oil) / (100 + grind.oil),
  };
}

/** Volume of a film in cm3: area in cm2, thickness in micrometres. */
export const filmCm3 = (areaCm2: number, filmUm: number): number => areaCm2 * filmUm * 1e-4;

/** Area in cm2 that a volume in cm3 covers at a thickness in micrometres. */
export const coverageCm2 = (volumeCm3: number, filmUm: number): number =>
  volumeCm3 / (filmUm * 1e-4);

/**
 * Combines dry pigments that are ground together, by weight: volumes add and each takes its own oil
 * (common practice; in reality coarse and fine pigment together need less).
 * @throws RangeError when no weight is above 0
 */
export function grindOf(
  parts: readonly { readonly grams: number; readonly grind: Grind }[],
): Grind {
  const total = parts.reduce((sum, { grams }) => sum + grams, 0);
  if (!(total > 0)) throw new RangeError('no weight is above zero');
  const sum = (of: (grind: Grind) => number) =>
    parts.reduce((all, { grams, grind }) => all + (grams / total) * of(grind), 0);
  return { density: 1 / sum(({ density }) => 1 / density), oil: sum(({ oil }) => oil) };
}

/**
 * Critical pigment volume concentration (CPVC): above it the oil no longer fills the gaps and the
 * film is chalky. 1 ÷ (1 + OA·ρp/93.5), OA by spatula, 93.5 = 100 × 0.935 (linseed), as printed in
 * coatings texts.
 */
export const criticalShare = (oilAbsorption: number, density: number): number =>
  1 / (1 + (oilAbsorption * density) / 93.5);

/** Oil per 100 g of pigment from parts of oil and of pigment by weight (32 to 68). */
export const oilOfParts = (oil: number, pigment: number): number => (100 * oil) / pigment;
/** Oil per 100 g of pigment from oil in per cent of the paste by weight. */
export const oilOfPercent = (percent: number): number => oilOfParts(percent, 100 - percent);
/** Oil per 100 g of pigment from the weight of pigment per weight of oil. */
export const oilOfRatio = (ratio: number): number => 100 / ratio;
