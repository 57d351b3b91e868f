import { expect, test } from 'vitest';
import { deltaE00 } from '../../src/colour/difference.ts';
import { BANDS, type Spectrum, spectrum } from '../../src/colour/grid.ts';
import { type Lab, labOf } from '../../src/colour/lab.ts';
import { fitPaints } from '../../src/optics/fit.ts';
import type { Paint } from '../../src/optics/opaque.ts';
import { curvePrior, namedPaint, UNKNOWN_PAINT } from '../../src/optics/prior.ts';
import type { Surface } from '../../src/optics/surface.ts';
import { type Swatch, seen } from '../../src/optics/swatch.ts';
import { random } from '../optics/random.ts';
import { describeShared, readShared } from '../shared.ts';

const soak = process.env.KINGCUP_SOAK === '1';
const surface: Surface = { k1: 0.03, k2: 0.65, specular: 'included' };

/** 27 measured artists' paints, titanium white first; K = 0 is lifted to what has a logarithm. */
function measuredPaints(): Paint[] {
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

/** A curve as another maker's paint of that name has it: stronger or weaker, shifted, waved. */
function neighbour(of: Float64Array, normal: () => number): Float64Array {
  const strength = 0.35 * normal();
  const shift = 0.6 * normal();
  const waves = [0.12 * normal(), 0.12 * normal()];
  const logs = of.map(Math.log);
  return logs.map((_, band) => {
    const at = Math.min(Math.max(band + shift, 0), BANDS - 1);
    const low = Math.min(Math.floor(at), BANDS - 2);
    const log = logs[low]! + (at - low) * (logs[low + 1]! - logs[low]!);
    return Math.exp(
      log + strength + waves[0]! * Math.sin(band / 5) + waves[1]! * Math.cos(band / 8),
    );
  });
}

// What a camera can give: the measured K and S of Y. Okumura (Rochester, 2005) are the truth, seen as
// the colours of a masstone and one tint of 1:4 with noise; judged on mixtures of 2 or 3 paints. The
// bars are those that the study of these data found possible.
describeShared('paints calibrated from colours alone', () => {
  const truth = measuredPaints();
  const lab = (parts: number[], paints: Paint[]) => labOf(seen({ parts }, paints, surface));

  /** Differences of mixtures that the calibrated paints predict, sorted. */
  function differences(sigma: number, named: boolean): number[] {
    const { normal, uniform } = random(2026);
    const sd = Math.max(sigma, 0.1);
    const shot = (parts: number[], paints: Paint[]): Swatch['lab'] & object => {
      const exact = lab(parts, paints);
      return { lab: exact.map((v) => v + sigma * normal()) as unknown as Lab, sd };
    };
    const white = named ? truth[0]! : calibrateWhite(shot([1], [truth[0]!]));
    const found = truth.map((paint, i) => {
      if (i === 0) return white;
      const library = {
        K: spectrum<'K'>(neighbour(paint.K, normal)),
        S: spectrum<'S'>(neighbour(paint.S, normal)),
      };
      const swatches = [
        { parts: [0, 1], lab: shot([1], [paint]) },
        { parts: [4, 1], lab: shot([4, 1], [truth[0]!, paint]) },
      ];
      const prior = named ? namedPaint(library) : UNKNOWN_PAINT;
      return fitPaints({ swatches, surface }, [{ known: white }, { prior }]).paints[1]!;
    });
    return Array.from({ length: soak ? 2000 : 300 }, () => {
      const chosen = new Set<number>();
      const count = uniform() < 0.5 ? 2 : 3;
      while (chosen.size < count) chosen.add(Math.floor(truth.length * uniform()));
      const parts = [...chosen].map(() => 2 ** (5 * uniform()));
      const of = (paints: readonly Paint[]) =>
        lab(
          parts,
          [...chosen].map((i) => paints[i]!),
        );
      return deltaE00(of(truth), of(found));
    }).sort((a, b) => a - b);
  }

  /** A white of which only its masstone's colour is seen; S = 1 is the scale of all others. */
  function calibrateWhite(seenAs: Swatch['lab'] & object): Paint {
    const level = (value: number) => new Float64Array(BANDS).fill(value);
    const prior = {
      K: curvePrior(level(Math.log(0.002)), { level: 1, shape: 1, lengthNm: 90 }),
      S: curvePrior(level(0), { level: 0.02, shape: 0.1, lengthNm: 150 }),
    };
    return fitPaints({ swatches: [{ parts: [1], lab: seenAs }], surface }, [{ prior }]).paints[0]!;
  }

  test.each([
    [0, false, 1.6, 5],
    [1, false, 2.5, 6.5],
    [1, true, 1.5, 3],
  ])(
    'noise %d, pigment named %s: median at most %d, one in ten over %d',
    (sigma, named, ...bars) => {
      const sorted = differences(sigma, named);
      expect(sorted[Math.floor(0.5 * sorted.length)]).toBeLessThanOrEqual(bars[0]!);
      expect(sorted[Math.floor(0.9 * sorted.length)]).toBeLessThanOrEqual(bars[1]!);
    },
  );
});
