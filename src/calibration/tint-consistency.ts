import { deltaE00 } from '../colour/difference.ts';
import { type Lab, xyzOfLab } from '../colour/lab.ts';
import { D65 } from '../colour/observer.ts';
import type { CalibrationFault } from './calibration-fault.ts';
import { type PaintedSwatch, soleOf, tintOf } from './painted-swatch.ts';

/** Tolerance, in units like L*, for camera errors and noise. */
const TINT_TOLERANCE = 5;

/**
 * Finds tints that contradict their stated composition. K and S add, so in each band, and in X, Y
 * and Z, an opaque tint lies between its paint and the white, and a tint with more white is nearer
 * to the white. Wrong ratios that keep this order are not detected; they appear as misfits of the
 * fit.
 *
 * @param labelOf display name of a swatch
 */
export function inconsistentTints(
  swatches: readonly PaintedSwatch[],
  white: string,
  whiteLab: Lab,
  labelOf: (swatch: PaintedSwatch) => string,
): CalibrationFault[] {
  const faults: CalibrationFault[] = [];
  const tints = swatches.flatMap((swatch) => {
    const tint = tintOf(swatch, white);
    return tint === null ? [] : [{ swatch, ...tint }];
  });
  for (const { swatch, pigment } of tints) {
    const alone = swatches.find((each) => soleOf(each) === pigment);
    if (alone && !isBetween(swatch.lab, alone.lab, whiteLab))
      faults.push({ code: 'tint-impossible', tint: labelOf(swatch), alone: labelOf(alone) });
  }
  for (const weak of tints)
    for (const strong of tints) {
      if (weak.pigment !== strong.pigment || !(weak.white > 1.5 * strong.white)) continue;
      if (!isBetween(weak.swatch.lab, strong.swatch.lab, whiteLab))
        faults.push({
          code: 'tint-order',
          weaker: labelOf(weak.swatch),
          stronger: labelOf(strong.swatch),
        });
    }
  return faults;
}

function isBetween(lab: Lab, one: Lab, other: Lab): boolean {
  // Compare cube roots of X, Y and Z, where noise is uniform.
  const [own, from, to] = [lab, one, other].map(rooted) as [number[], number[], number[]];
  const inside = own.every((v, i) => {
    const [low, high] = [Math.min(from[i]!, to[i]!), Math.max(from[i]!, to[i]!)];
    return v >= low - TINT_TOLERANCE && v <= high + TINT_TOLERANCE;
  });
  if (!inside) return false;
  // Unless the paint is itself nearly white, its tint must be nearer to the white than the paint
  // is.
  const apart = deltaE00(one, other);
  return apart < 12 || deltaE00(lab, other) < deltaE00(one, other) - 0.5;
}

const rooted = (lab: Lab): number[] =>
  xyzOfLab(lab, D65.white).map((v, i) => 116 * Math.cbrt(Math.max(v, 0) / D65.white[i]!));
