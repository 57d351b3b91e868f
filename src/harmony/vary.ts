import { chroma, hueDeg, hueTurnDeg, type Lab, labOfLCh } from '../colour/lab.ts';
import { linearOfOklab, oklabOfLinear } from '../colour/oklab.ts';
import { labOfLinear, linearOfLab } from '../colour/rgb.ts';
import { drift } from './drift.ts';

/** The six ways in which a colour is altered, each along one axis. */
export const WAYS = ['warmer', 'cooler', 'lighter', 'deeper', 'brighter', 'duller'] as const;
export type Way = (typeof WAYS)[number];
export const AMOUNTS = ['small', 'middle', 'large'] as const;
export type Amount = (typeof AMOUNTS)[number];

/** The way that leads back. */
export const OPPOSITE: Record<Way, Way> = {
  warmer: 'cooler',
  cooler: 'warmer',
  lighter: 'deeper',
  deeper: 'lighter',
  brighter: 'duller',
  duller: 'brighter',
};

/** Hue angles of the warm and the cool pole: Ou, Luo, Woodcock, Wright, Color Res. Appl. 29 (2004) 232. */
export const WARM_POLE = 50;
export const COOL_POLE = 230;

const LIGHTNESS: Record<Amount, number> = { small: 4, middle: 8, large: 14 };
const CHROMA: Record<Amount, number> = { small: 1.1, middle: 1.25, large: 1.5 };
const TURN_DEG: Record<Amount, number> = { small: 6, middle: 12, large: 20 };
/** Below this chroma there is no hue to turn: the colour moves along the axis between the poles. */
export const NEUTRAL_CHROMA = 8;
const NEUTRAL_MOVE: Record<Amount, number> = { small: 2, middle: 4, large: 7 };

/** A colour altered along one axis, before anyone asks whether paint reaches it. */
export interface Variant {
  readonly way: Way;
  readonly amount: Amount;
  readonly lab: Lab;
  /** Where the axis ended before the whole step was made: at a pole, at black or white, at neutral. */
  readonly stopped: 'warm pole' | 'cool pole' | 'white' | 'black' | 'neutral' | null;
}

/**
 * A colour altered in one way by one amount; CIELAB under D65 in and out. This is the wish; what paint
 * makes of it is told by variantOf (variant.ts). Where nothing stopped it, the opposite way by the same
 * amount leads back.
 */
export function vary(lab: Lab, way: Way, amount: Amount): Variant {
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

/** Hue turned the shorter way towards a pole at constant L* and C*, never past it; neutrals drift. */
function turned(lab: Lab, way: 'warmer' | 'cooler', amount: Amount): Altered {
  const pole = way === 'warmer' ? WARM_POLE : COOL_POLE;
  const end = way === 'warmer' ? 'warm pole' : 'cool pole';
  const C = chroma(lab);
  if (C < NEUTRAL_CHROMA) {
    const moved = drift(lab, pole, NEUTRAL_MOVE[amount], TURN_DEG[amount]);
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
 * The colour of the same OKLab hue that has the given CIELAB lightness and chroma. Hue is held in
 * OKLab because lines of constant CIELAB hue wander in the purple-blues.
 */
export function withLightnessAndChroma(lab: Lab, L: number, C: number): Lab {
  if (chroma(lab) < 1e-9 || C <= 0) return [L, 0, 0];
  const buffer = new Float64Array(3);
  const [r, g, b] = linearOfLab(lab);
  oklabOfLinear(r, g, b, buffer);
  return atHue(Math.atan2(buffer[2]!, buffer[1]!), L, C);
}

/** The colour of an OKLab hue (radians) that has the given CIELAB lightness and chroma. */
export function atHue(hue: number, L: number, C: number): Lab {
  if (C <= 0) return [L, 0, 0];
  const buffer = new Float64Array(3);
  const [cos, sin] = [Math.cos(hue), Math.sin(hue)];
  const at = (lightness: number, okChroma: number): Lab => {
    linearOfOklab(lightness, okChroma * cos, okChroma * sin, buffer);
    return labOfLinear(buffer[0]!, buffer[1]!, buffer[2]!);
  };
  // Both L* and C* rise with OKLab's own L and C: two nested bisections, plain and without a start to guess.
  const lightnessAt = (okChroma: number) => bisect(-0.2, 1.4, (okL) => at(okL, okChroma)[0] - L);
  const okC = bisect(0, 0.6, (okChroma) => chroma(at(lightnessAt(okChroma), okChroma)) - C);
  const [, a, bb] = at(lightnessAt(okC), okC);
  return [L, a, bb];
}

/** Where a rising function crosses zero between two ends, to the last bits that matter (1e-10). */
function bisect(from: number, to: number, f: (x: number) => number): number {
  let [low, high] = [from, to];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (f(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
