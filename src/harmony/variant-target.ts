import { bisect } from '../bisection.ts';
import { chroma, hueDeg, hueTurnDeg, type Lab, labOfLCh } from '../colour/lab.ts';
import { linearOfOklab, oklabOfLinear } from '../colour/oklab.ts';
import { labOfLinear, linearOfLab } from '../colour/rgb.ts';
import { shiftNeutral } from './neutral-shift.ts';

/** The six directions of a variant, each along one axis. */
export const VARIANT_WAYS = [
  'warmer',
  'cooler',
  'lighter',
  'deeper',
  'brighter',
  'duller',
] as const;
export type VariantWay = (typeof VARIANT_WAYS)[number];
export const AMOUNTS = ['small', 'middle', 'large'] as const;
export type VariantAmount = (typeof AMOUNTS)[number];

/**
 * Hue angles of the warm and the cool pole, degrees: Ou, Luo, Woodcock, Wright, Color Res. Appl. 29
 * (2004) 232.
 */
const WARM_POLE = 50;
const COOL_POLE = 230;

/** Size of each amount: change of L*, factor on C*, turn of hue in degrees. */
const LIGHTNESS: Record<VariantAmount, number> = { small: 4, middle: 8, large: 14 };
const CHROMA: Record<VariantAmount, number> = { small: 1.1, middle: 1.25, large: 1.5 };
const TURN_DEG: Record<VariantAmount, number> = { small: 6, middle: 12, large: 20 };
/**
 * C* below which a colour has no hue to turn: it moves along the axis between the poles, by these
 * C*.
 */
export const NEUTRAL_CHROMA = 8;
const NEUTRAL_MOVE: Record<VariantAmount, number> = { small: 2, middle: 4, large: 7 };

/** A colour altered along one axis, before mixing. */
export interface Variant {
  readonly way: VariantWay;
  readonly amount: VariantAmount;
  readonly lab: Lab;
  /** Where the axis ended before the full step: at a pole, at black or white, or at neutral. */
  readonly stopped: 'warm pole' | 'cool pole' | 'white' | 'black' | 'neutral' | null;
}

/**
 * Alters a colour in one direction by one amount; CIELAB under D65 in and out. This is the target;
 * variantOf (mixed-variant.ts) mixes it. Unless it was stopped, the opposite way by the same amount
 * leads back.
 */
export function variantTarget(lab: Lab, way: VariantWay, amount: VariantAmount): Variant {
  switch (way) {
    case 'warmer':
    case 'cooler':
      return { way, amount, ...turned(lab, way, amount) };
    case 'lighter':
    case 'deeper':
      return {
        way,
        amount,
        ...shifted(lab, way === 'lighter' ? LIGHTNESS[amount] : -LIGHTNESS[amount]),
      };
    case 'brighter':
    case 'duller': {
      const factor = way === 'brighter' ? CHROMA[amount] : 1 / CHROMA[amount];
      return {
        way,
        amount,
        lab: withLightnessAndChroma(lab, lab[0], chroma(lab) * factor),
        stopped: chroma(lab) < 1e-9 ? 'neutral' : null,
      };
    }
  }
}

type Altered = Pick<Variant, 'lab' | 'stopped'>;

/**
 * Turns the hue the shorter way towards a pole, never past it, at constant L* and C*; neutrals
 * drift.
 */
function turned(lab: Lab, way: 'warmer' | 'cooler', amount: VariantAmount): Altered {
  const pole = way === 'warmer' ? WARM_POLE : COOL_POLE;
  const end = way === 'warmer' ? 'warm pole' : 'cool pole';
  const C = chroma(lab);
  if (C < NEUTRAL_CHROMA) {
    const moved = shiftNeutral(lab, pole, NEUTRAL_MOVE[amount], TURN_DEG[amount]);
    return { lab: moved.lab, stopped: moved.stopped ? end : null };
  }
  const h = hueDeg(lab)!;
  const whole = hueTurnDeg(h, pole);
  const step = Math.min(TURN_DEG[amount], Math.abs(whole));
  return {
    lab: labOfLCh(lab[0], C, h + Math.sign(whole) * step),
    stopped: step < TURN_DEG[amount] ? end : null,
  };
}

function shifted(lab: Lab, by: number): Altered {
  const wanted = lab[0] + by;
  const L = Math.min(100, Math.max(0, wanted));
  return {
    lab: withLightnessAndChroma(lab, L, chroma(lab)),
    stopped: wanted > 100 ? 'white' : wanted < 0 ? 'black' : null,
  };
}

/**
 * The colour of the same OKLab hue with the given CIELAB lightness and chroma. Hue is held in
 * OKLab, because lines of constant CIELAB hue curve in the purple-blues.
 */
export function withLightnessAndChroma(lab: Lab, L: number, C: number): Lab {
  if (chroma(lab) < 1e-9 || C <= 0) return [L, 0, 0];
  const buffer = new Float64Array(3);
  const [r, g, b] = linearOfLab(lab);
  oklabOfLinear(r, g, b, buffer);
  return colourAtHue(Math.atan2(buffer[2]!, buffer[1]!), L, C);
}

/** The colour of an OKLab hue (radians) with the given CIELAB lightness and chroma. */
export function colourAtHue(hue: number, L: number, C: number): Lab {
  if (C <= 0) return [L, 0, 0];
  const buffer = new Float64Array(3);
  const [cos, sin] = [Math.cos(hue), Math.sin(hue)];
  const at = (lightness: number, okChroma: number): Lab => {
    linearOfOklab(lightness, okChroma * cos, okChroma * sin, buffer);
    return labOfLinear(buffer[0]!, buffer[1]!, buffer[2]!);
  };
  // L* and C* are monotonic in OKLab's L and C: two nested bisections need no initial guess.
  const lightnessAt = (okChroma: number) => rootIn(-0.2, 1.4, (okL) => at(okL, okChroma)[0] - L);
  const okC = rootIn(0, 0.6, (okChroma) => chroma(at(lightnessAt(okChroma), okChroma)) - C);
  const [, a, bb] = at(lightnessAt(okC), okC);
  return [L, a, bb];
}

/** Where a rising function crosses zero between two ends, to 1e-12 of their distance. */
function rootIn(from: number, to: number, f: (x: number) => number): number {
  const [low, high] = bisect(from, to, (x) => f(x) < 0, 40);
  return (low + high) / 2;
}
