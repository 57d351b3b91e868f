import { STEPS, type Step } from '../harmony/harmony.ts';

/** What a garment is made of. */
export const STUFFS = ['linen', 'wool', 'satin', 'velvet'] as const;
export type Stuff = (typeof STUFFS)[number];

/**
 * How a stuff takes the light. Common practice, no published source: satin gathers its darks and flashes;
 * wool spreads everything; velvet keeps its body dark and lights its edges; linen breaks in crisp planes.
 */
export interface Sheen {
  /** How far the highlight goes from the local colour (0) to the lightest that the shelf has (1). */
  readonly top: number;
  /** Where the light stands between local colour (0) and highlight (1). */
  readonly light: number;
  /** How far the deepest fold goes from the local colour (0) to the deepest of the hue (1). */
  readonly depth: number;
  /** Where half-tone and shadow stand between local colour (0) and deepest fold (1). */
  readonly halfTone: number;
  readonly shadow: number;
  /** How the steps mass: shares of the cloth, in the order of the ladder; they sum to 1. */
  readonly shares: readonly [number, number, number, number, number, number];
  /** Edge of the highlight: 0 melts into the light, 1 is cut sharp. */
  readonly sharpness: number;
}

export const SHEENS: Record<Stuff, Sheen> = {
  linen: {
    top: 0.8,
    light: 0.5,
    depth: 0.85,
    halfTone: 0.32,
    shadow: 0.66,
    shares: [0.07, 0.27, 0.28, 0.19, 0.13, 0.06],
    sharpness: 0.55,
  },
  wool: {
    top: 0.5,
    light: 0.48,
    depth: 0.9,
    halfTone: 0.34,
    shadow: 0.68,
    shares: [0.03, 0.21, 0.36, 0.22, 0.13, 0.05],
    sharpness: 0.2,
  },
  satin: {
    top: 0.95,
    light: 0.38,
    depth: 1,
    halfTone: 0.38,
    shadow: 0.78,
    shares: [0.06, 0.16, 0.29, 0.19, 0.18, 0.12],
    sharpness: 0.95,
  },
  velvet: {
    top: 0.55,
    light: 0.4,
    depth: 1,
    halfTone: 0.46,
    shadow: 0.8,
    shares: [0.03, 0.09, 0.22, 0.27, 0.24, 0.15],
    sharpness: 0.7,
  },
};

/** Share of the cloth that a step holds. */
export const shareOf = (stuff: Stuff, step: Step): number =>
  SHEENS[stuff].shares[STEPS.indexOf(step)]!;

/**
 * L* of the six steps.
 * @param local L* of the local colour, between the two ends
 * @param ends  L* of the lightest and of the deepest that the hue has on this shelf, and of its white
 * @param even  evenly spaced above and below the local colour, instead of as the stuff masses
 */
export function lightnesses(
  local: number,
  ends: { readonly lightest: number; readonly deepest: number; readonly white: number },
  stuff: Stuff,
  even: boolean,
): readonly number[] {
  const { top, light, depth, halfTone, shadow } = SHEENS[stuff];
  let up = Math.max(top * (ends.lightest - local), Math.min(LEAST_UP, ends.lightest - local));
  // No whole parts lie just under white: what comes so near is white itself.
  if (local + up > ends.white - NEAR_WHITE) up = ends.white - local;
  const down = Math.max(depth * (local - ends.deepest), Math.min(LEAST_DOWN, local - ends.deepest));
  const [l, h, s] = even ? [1 / 2, 1 / 3, 2 / 3] : [light, halfTone, shadow];
  const second = Math.min(local + l * up, ends.white - NEAR_WHITE - 1);
  return [local + up, second, local, local - h * down, local - s * down, local - down];
}

/** Least L* that lights and shadows need to be told apart, two steps and three. */
export const LEAST_UP = 5;
export const LEAST_DOWN = 7;
/** A tint of 31 parts white and one of the weakest pigment is about so much darker than white. */
const NEAR_WHITE = 4;
/** The local colour stays so far under the white: room for a light and a gleam. */
export const UNDER_WHITE = 10;
