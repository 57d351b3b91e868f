import { chroma, hueTurnDeg, type Lab } from '../colour/lab.ts';
import { oklabHueDeg, oklabOfLab } from '../colour/oklab.ts';

/** Loss of a harmony's intervals in mixing: means over its pairs; all 0 if they are preserved. */
export interface IntervalLoss {
  /** L*, against the original differences times one common factor. */
  readonly lightness: number;
  /** Degrees of OKLab hue, over pairs that have one. */
  readonly hueDeg: number;
  /** Natural logarithm of the ratio of two chromas: 0.1 is about a tenth. */
  readonly chroma: number;
}

/** Below this C*ab a colour counts as having no hue, and its chroma is not compared. */
const HUELESS = 5;

/**
 * How much of the intervals between colours was lost.
 * @param from the harmony as seen, CIELAB under D65
 * @param to the harmony as mixed, in the same order
 */
export function intervalLoss(from: readonly Lab[], to: readonly Lab[]): IntervalLoss {
  const turn = (a: Lab, b: Lab) =>
    hueTurnDeg(oklabHueDeg(oklabOfLab(a)) ?? 0, oklabHueDeg(oklabOfLab(b)) ?? 0);
  const steps: [number, number][] = [];
  const hues: number[] = [];
  const ratios: number[] = [];
  for (let i = 0; i < from.length; i++) {
    for (let j = i + 1; j < from.length; j++) {
      const [a, b, A, B] = [from[i]!, from[j]!, to[i]!, to[j]!];
      steps.push([a[0] - b[0], A[0] - B[0]]);
      if (Math.min(chroma(a), chroma(b)) < HUELESS) continue;
      const off = Math.abs(turn(A, B) - turn(a, b));
      hues.push(Math.min(off, 360 - off));
      const tiny = 1e-3;
      const ratio = (chroma(A) + tiny) / (chroma(B) + tiny);
      ratios.push(Math.abs(Math.log((ratio * chroma(b)) / chroma(a))));
    }
  }
  const mean = (all: readonly number[]) =>
    all.length > 0 ? all.reduce((sum, v) => sum + v, 0) / all.length : 0;
  const scale = steps.reduce((sum, [a]) => sum + a * a, 0);
  const factor = scale > 0 ? steps.reduce((sum, [a, A]) => sum + a * A, 0) / scale : 1;
  return {
    lightness: mean(steps.map(([a, A]) => Math.abs(A - factor * a))),
    hueDeg: mean(hues),
    chroma: mean(ratios),
  };
}
