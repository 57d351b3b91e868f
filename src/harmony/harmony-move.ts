import { chroma, type Lab } from '../colour/lab.ts';
import { labOfOklab, oklabChroma, oklabHueDeg, oklabOfLab, oklabOfLCh } from '../colour/oklab.ts';

/**
 * A move of a whole harmony: L* → mean + lightness·(L* − mean) + shift, C* × chroma, hue + turn.
 * One move for all colours preserves the order and proportions of lightness differences, the hue
 * differences and the ratios of chroma.
 */
export interface HarmonyMove {
  /** Factor on lightness differences, 0…1. */
  readonly lightness: number;
  /** Added to every L*. */
  readonly shift: number;
  /** Factor on every chroma, 0…1. */
  readonly chroma: number;
  /** Rotation of every hue, OKLab degrees. */
  readonly turnDeg: number;
}

/** The identity. */
export const IDENTITY_MOVE: HarmonyMove = { lightness: 1, shift: 0, chroma: 1, turnDeg: 0 };

/** Applies a move to a harmony; CIELAB under D65 in and out. */
export function moveAll(colours: readonly Lab[], move: HarmonyMove): Lab[] {
  const mean = colours.reduce((sum, [L]) => sum + L, 0) / Math.max(1, colours.length);
  return colours.map((lab) => {
    const L = mean + move.lightness * (lab[0] - mean) + move.shift;
    if (move.chroma === 1 && move.turnDeg === 0 && L === lab[0]) return lab;
    return placed(lab, L, move.chroma * chroma(lab), move.turnDeg);
  });
}

/**
 * The colour with the given L* and C* at the rotated OKLab hue: OKLab holds hue where CIELAB's
 * drifts.
 */
function placed(lab: Lab, L: number, C: number, turnDeg: number): Lab {
  const ok0 = oklabOfLab(lab);
  const hue = oklabHueDeg(ok0);
  if (hue === null || C < 1e-9) return [L, 0, 0];
  let okL = ok0[0] + (L - lab[0]) / 100;
  let okC = (oklabChroma(ok0) * C) / Math.max(chroma(lab), 1e-9);
  let at: Lab = lab;
  // L* and C* respond almost proportionally, so a few corrections converge to 1e-6.
  for (let round = 0; round < 40; round++) {
    at = labOfOklab(oklabOfLCh(okL, okC, hue + turnDeg));
    const [dL, ratio] = [L - at[0], C / Math.max(chroma(at), 1e-12)];
    if (Math.abs(dL) < 1e-7 && Math.abs(ratio - 1) < 1e-9) break;
    okL += dL / 115;
    okC *= Math.min(2, Math.max(0.5, ratio));
  }
  return [L, at[1], at[2]];
}
