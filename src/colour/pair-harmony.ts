import { chroma, hueDeg, type Lab } from './lab.ts';

const DEG = Math.PI / 180;

/** Two-colour harmony score and its terms, which add up to the score. */
export interface PairHarmony {
  /** About −1.2…1.5. It favours similar colours, so it is shown as information, never maximised. */
  readonly score: number;
  /** Term for similar hue and chroma. */
  readonly likeness: number;
  /** Term for the lightness of the pair. */
  readonly lightness: number;
  /** Term for the difference in lightness. */
  readonly contrast: number;
  /** Term for the hue of each colour. */
  readonly hues: readonly [number, number];
}

/**
 * Two-colour harmony model for CIELAB (D65) colours on a middle grey.
 * @see L.-C. Ou, M. R. Luo, Color Res. Appl. 31 (2006) 191-204
 */
export function pairHarmony(x: Lab, y: Lab): PairHarmony {
  const dC = chroma(x) - chroma(y);
  // Metric hue difference ΔH*ab, squared, not degrees. Rounding can make it negative.
  const dH2 = Math.max(0, (x[1] - y[1]) ** 2 + (x[2] - y[2]) ** 2 - dC ** 2);
  const likeness = 0.04 + 0.53 * Math.tanh(0.8 - 0.045 * Math.sqrt(dH2 + (dC / 1.46) ** 2));
  const lightness = 0.28 + 0.54 * Math.tanh(-3.88 + 0.029 * (x[0] + y[0]));
  const contrast = 0.14 + 0.15 * Math.tanh(-2 + 0.2 * Math.abs(x[0] - y[0]));
  const hues = [ownHue(x), ownHue(y)] as const;
  return {
    score: likeness + lightness + contrast + hues[0] + hues[1],
    likeness,
    lightness,
    contrast,
    hues,
  };
}

function ownHue(lab: Lab): number {
  const h = hueDeg(lab) ?? 0;
  const u = (90 - h) / 10;
  const weight = 0.5 + 0.5 * Math.tanh(-2 + 0.5 * chroma(lab));
  const hue = -0.08 - 0.14 * Math.sin((h + 50) * DEG) - 0.07 * Math.sin((2 * h + 90) * DEG);
  const yellow = ((0.22 * lab[0] - 12.8) / 10) * Math.exp(u - Math.exp(u));
  return weight * (hue + yellow);
}

/**
 * Mean score over all pairs; null for fewer than two colours. Averaging: Ou et al. 2011, from
 * memory.
 */
export function meanPairHarmony(labs: readonly Lab[]): number | null {
  if (labs.length < 2) return null;
  let sum = 0;
  let pairs = 0;
  for (let i = 0; i < labs.length; i++)
    for (let j = 0; j < i; j++) {
      sum += pairHarmony(labs[i]!, labs[j]!).score;
      pairs++;
    }
  return sum / pairs;
}
