import { deltaE00 } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { type MixturePart, REACHABLE_DELTA_E } from './mixture-types.ts';
import { ofParts, predictColour } from './predict.ts';

/** A measuring error of one part: its actual amount is `factor` times the stated one. */
export interface MeasuringError {
  readonly pigment: string;
  readonly factor: number;
}

/** A slip must leave at most this share of the difference, and at most 1.5 {@link REACHABLE_DELTA_E}. */
const EXPLAINS = 0.5;

/** The measuring error of a single part that explains the observed colour; null if none does. */
export function likelyMeasuringError(
  parts: readonly MixturePart[],
  seen: Lab,
  shelf: Shelf,
): MeasuringError | null {
  const off = (pigment: string, log: number) =>
    deltaE00(
      seen,
      predictColour(
        ofParts(parts).map((a) =>
          a.pigment === pigment ? { ...a, amount: a.amount * Math.exp(log) } : a,
        ),
        shelf,
      ),
    );
  const stated = deltaE00(seen, predictColour(ofParts(parts), shelf));
  if (parts.length < 2 || stated <= REACHABLE_DELTA_E) return null;
  let best = { pigment: '', log: 0, left: Number.POSITIVE_INFINITY };
  for (const { pigment } of parts) {
    let at = 0;
    for (let log = -2.4; log <= 2.4; log += 0.1) if (off(pigment, log) < off(pigment, at)) at = log;
    for (let step = 0.05; step > 1e-4; step /= 2) {
      if (off(pigment, at + step) < off(pigment, at)) at += step;
      else if (off(pigment, at - step) < off(pigment, at)) at -= step;
    }
    const left = off(pigment, at);
    if (left < best.left) best = { pigment, log: at, left };
  }
  if (best.left > EXPLAINS * stated || best.left > 1.5 * REACHABLE_DELTA_E) return null;
  return { pigment: best.pigment, factor: Math.exp(best.log) };
}
