import { chroma, type Lab } from './lab.ts';

const DEG = Math.PI / 180;

/** C^1.07 cos(h − 50°), computed without the angle because a neutral has no hue. */
function towardsWarm([, a, b]: Lab): number {
  const C = Math.sqrt(a * a + b * b);
  if (C === 0) return 0;
  return C ** 0.07 * (a * Math.cos(50 * DEG) + b * Math.sin(50 * DEG));
}

/**
 * Warm-cool score, higher is warmer. Every neutral scores −0.5. The warm pole is hue 50°, the cool
 * pole 230°.
 * @see L.-C. Ou, M. R. Luo, A. Woodcock, A. Wright, Color Res. Appl. 29 (2004) 232-240
 */
export const warmCool = (lab: Lab): number => -0.5 + 0.02 * towardsWarm(lab);

/**
 * Least distance of a score from the neutrals' −0.5 to count as warm or cool: chroma 2 at a pole.
 */
const LEAST_WARM_COOL_SCORE = 0.04;
/** The same as a share of the largest score at this chroma: greens and purples count as neutral. */
const NEUTRAL_HUE_SHARE = 0.2;

/** Warm, cool or neutral by {@link warmCool}; the limits are our own. */
export function temperatureOf(lab: Lab): 'warm' | 'cool' | 'neutral' {
  const beyond = warmCool(lab) + 0.5;
  const most = 0.02 * chroma(lab) ** 1.07;
  if (Math.abs(beyond) < Math.max(LEAST_WARM_COOL_SCORE, NEUTRAL_HUE_SHARE * most))
    return 'neutral';
  return beyond > 0 ? 'warm' : 'cool';
}

/** Heavy-light score, higher is heavier. @see Ou et al. 2004 */
export const heavyLight = (lab: Lab): number => -2.1 + 0.05 * (100 - lab[0]);

/** Active-passive score, higher is more active. @see Ou et al. 2004; the divisor 1.5 from memory */
export const activePassive = (lab: Lab): number =>
  -1.1 + 0.03 * Math.hypot(chroma(lab), (lab[0] - 50) / 1.5);

/**
 * Vividness: distance from black.
 * @see R. S. Berns, Color Res. Appl. 39 (2014) 322-330; from memory
 */
export const vividness = ([L, a, b]: Lab): number => Math.hypot(L, a, b);

/** Depth: distance from white. @see Berns 2014; from memory */
export const depth = ([L, a, b]: Lab): number => Math.hypot(100 - L, a, b);

/** Clarity: distance from the background's colour. @see Berns 2014; from memory */
export const clarity = (lab: Lab, background: Lab): number =>
  Math.hypot(lab[0] - background[0], lab[1] - background[1], lab[2] - background[2]);
