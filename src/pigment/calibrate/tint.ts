import { deltaE00 } from '../../colour/difference.ts';
import { type Lab, xyzOfLab } from '../../colour/lab.ts';
import { D65 } from '../../colour/observer.ts';
import type { CalibrationFault } from './fault.ts';
import { type Painted, soleOf, tintOf } from './swatches.ts';

/** How far in L*-like units a tint may lie beyond its ends: noise and the camera, not the ratio. */
const SLACK = 5;

/**
 * Tints that cannot be what they are said to be. K and S add, so in each band a tint lies between its
 * paint and the white, and so do X, Y and Z of opaque swatches; and a tint with more white lies nearer
 * to it. Wrong ratios that keep this order are possible and not found here: the fit shows them as
 * misfits.
 *
 * @param labelOf what a painter calls a swatch
 */
export function tintFaults(
  swatches: readonly Painted[],
  white: string,
  whiteLab: Lab,
  labelOf: (swatch: Painted) => string,
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
  // Each of X, Y, Z by its own cube root, where noise is even; a whole masstone for a tint is none.
  const [own, from, to] = [lab, one, other].map(rooted) as [number[], number[], number[]];
  const inside = own.every((v, i) => {
    const [low, high] = [Math.min(from[i]!, to[i]!), Math.max(from[i]!, to[i]!)];
    return v >= low - SLACK && v <= high + SLACK;
  });
  if (!inside) return false;
  // A paint that is no white itself must have moved towards the white at all.
  const apart = deltaE00(one, other);
  return apart < 12 || deltaE00(lab, other) < deltaE00(one, other) - 0.5;
}

const rooted = (lab: Lab): number[] =>
  xyzOfLab(lab, D65.white).map((v, i) => 116 * Math.cbrt(Math.max(v, 0) / D65.white[i]!));
