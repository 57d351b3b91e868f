import { BANDS, bandNm, type Spectrum, spectrum } from '../colour/grid.ts';
import type { Paint } from '../optics/opaque.ts';

/**
 * One feature of ln K. An edge is a logistic absorption edge: its height is added below `nm`. A
 * band is a Gaussian centred on `nm`. `height` is in ln K, `nm` and `width` in nanometres.
 */
export interface Feature {
  readonly kind: 'edge' | 'band';
  readonly height: number;
  readonly nm: number;
  readonly width: number;
}

/**
 * Parametric K and S of a pigment: a line plus features in ln K and a line in ln S, over
 * x = (λ − 550 nm) ÷ 100 nm, relative to titanium-white paste (mean S over 450-650 nm = 1).
 */
export interface KsCurveModel {
  readonly lnK: {
    readonly level: number;
    readonly slope: number;
    readonly features: readonly Feature[];
  };
  readonly lnS: { readonly level: number; readonly slope: number };
}

/**
 * K and S of a curve on the grid, newly allocated. The logarithms keep both above 0.
 *   ln K = level + slope·x + Σ height ÷ (1 + e^((λ − nm) ÷ width))   for an edge
 *                          + Σ height · e^(−½((λ − nm) ÷ width)²)     for a band
 *   ln S = level + slope·x
 */
export function paintOf({ lnK, lnS }: KsCurveModel): Paint {
  const K: Spectrum<'K'> = spectrum();
  const S: Spectrum<'S'> = spectrum();
  for (let band = 0; band < BANDS; band++) {
    const nm = bandNm(band);
    const x = (nm - 550) / 100;
    let k = lnK.level + lnK.slope * x;
    for (const feature of lnK.features) k += featureValue(feature, nm);
    K[band] = Math.exp(k);
    S[band] = Math.exp(lnS.level + lnS.slope * x);
  }
  return { K, S };
}

function featureValue({ kind, height, nm: centre, width }: Feature, nm: number): number {
  const z = (nm - centre) / width;
  return kind === 'edge' ? height / (1 + Math.exp(z)) : height * Math.exp(-0.5 * z * z);
}
