import { LADDER_STEPS, type Step } from '../harmony/harmony.ts';

/** Fabrics of a garment. */
export const FABRICS = ['linen', 'wool', 'satin', 'velvet'] as const;
export type Fabric = (typeof FABRICS)[number];

/**
 * How a fabric reflects light. Common practice, no published source: satin gathers its darks and
 * flashes; wool spreads everything; velvet keeps its body dark and lights its edges; linen breaks
 * in crisp planes.
 */
interface FabricSheen {
  /** Position of the highlight between the local colour (0) and the shelf's lightest (1). */
  readonly top: number;
  /** Position of the light between local colour (0) and highlight (1). */
  readonly light: number;
  /** Position of the deepest fold between the local colour (0) and the deepest of the hue (1). */
  readonly depth: number;
  /** Positions of half-tone and shadow between local colour (0) and deepest fold (1). */
  readonly halfTone: number;
  readonly shadow: number;
  /** Share of the cloth of each step, in the order of the ladder; they sum to 1. */
  readonly shares: readonly [number, number, number, number, number, number];
  /** Edge of the highlight: 0 melts into the light, 1 is sharp. */
  readonly sharpness: number;
}

/** Sheen of each fabric; estimates of common practice. */
export const FABRIC_SHEENS: Record<Fabric, FabricSheen> = {
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

/** Share of the cloth that a step covers, 0…1. */
export const shareOf = (stuff: Fabric, step: Step): number =>
  FABRIC_SHEENS[stuff].shares[LADDER_STEPS.indexOf(step)]!;

/**
 * L* of the six steps.
 * @param local L* of the local colour, between the two ends
 * @param ends L* of the lightest and deepest colour of the hue on this shelf, and of its white
 * @param even spaced evenly above and below the local colour, instead of as the fabric does
 */
export function lightnesses(
  local: number,
  ends: { readonly lightest: number; readonly deepest: number; readonly white: number },
  stuff: Fabric,
  even: boolean,
): readonly number[] {
  const { top, light, depth, halfTone, shadow } = FABRIC_SHEENS[stuff];
  let up = Math.max(top * (ends.lightest - local), Math.min(LEAST_UP, ends.lightest - local));
  // Whole parts cannot mix a tint just below white: use white itself.
  if (local + up > ends.white - NEAR_WHITE) up = ends.white - local;
  const down = Math.max(depth * (local - ends.deepest), Math.min(LEAST_DOWN, local - ends.deepest));
  const [l, h, s] = even ? [1 / 2, 1 / 3, 2 / 3] : [light, halfTone, shadow];
  const second = Math.min(local + l * up, ends.white - NEAR_WHITE - 1);
  return [local + up, second, local, local - h * down, local - s * down, local - down];
}

/** Least L* that the lights (two steps) and the shadows (three) need to be distinct. */
export const LEAST_UP = 5;
export const LEAST_DOWN = 7;
/**
 * L* by which the lightest whole-part tint (31 parts white, one of the weakest pigment) is darker
 * than white, about.
 */
const NEAR_WHITE = 4;
/** Least L* between the local colour and white, for a light and a gleam. */
export const UNDER_WHITE = 10;
