import { BANDS, type Spectrum, spectrum } from '../../src/colour/grid.ts';
import type { Paint } from '../../src/optics/opaque.ts';
import type { Surface } from '../../src/optics/surface.ts';
import { readShared } from '../shared.ts';

/** The surface that belongs to these paints. */
export const MEASURED_SURFACE: Surface = { k1: 0.03, k2: 0.65, specular: 'included' };

/**
 * K and S of 27 artists' paints, titanium white first: Y. Okumura, MS thesis, Rochester Institute of
 * Technology, 2005. K = 0 is lifted to what has a logarithm.
 */
export function measuredPaints(): Paint[] {
  const lines = readShared('reference/artist-ks-rit2005.csv')
    .split(/\r?\n/)
    .filter((line) => line !== '' && !line.startsWith('#'))
    .slice(1);
  const curve = <Kind extends string>(line: string): Spectrum<Kind> =>
    spectrum<Kind>(
      line
        .split(',')
        .slice(3)
        .map((v) => Math.max(Number(v), 1e-6)),
    );
  return lines.flatMap((line, i) =>
    i % 2 === 0 ? [{ K: curve<'K'>(line), S: curve<'S'>(lines[i + 1]!) }] : [],
  );
}

/**
 * A curve as another maker's paint of that name has it: 35 % stronger or weaker, its edges moved by 6 nm,
 * with 17 % of wave (the errors that the study of these paints simulated).
 */
export function neighbourOf({ K, S }: Paint, normal: () => number): Paint {
  const moved = (of: Float64Array) => {
    const strength = 0.35 * normal();
    const shift = 0.6 * normal();
    const waves = [0.12 * normal(), 0.12 * normal()];
    const logs = of.map(Math.log);
    return logs.map((_, band) => {
      const at = Math.min(Math.max(band + shift, 0), BANDS - 1);
      const low = Math.min(Math.floor(at), BANDS - 2);
      const log = logs[low]! + (at - low) * (logs[low + 1]! - logs[low]!);
      const wave = waves[0]! * Math.sin(band / 5) + waves[1]! * Math.cos(band / 8);
      return Math.exp(log + strength + wave);
    });
  };
  return { K: spectrum<'K'>(moved(K)), S: spectrum<'S'>(moved(S)) };
}

/** Parts of all paints, 2 or 3 of them above 0, from 1 to 32. */
export function randomPile(count: number, uniform: () => number): number[] {
  const parts = new Array<number>(count).fill(0);
  let missing = uniform() < 0.5 ? 2 : 3;
  while (missing > 0) {
    const i = Math.floor(count * uniform());
    if (parts[i] !== 0) continue;
    parts[i] = 2 ** (5 * uniform());
    missing--;
  }
  return parts;
}
