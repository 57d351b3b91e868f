import { expect, test } from 'vitest';
import {
  type Calibration,
  calibratePaints,
  type PaintToFit,
} from '../../src/calibration/calibrate-paints.ts';
import { evidenceOfFit } from '../../src/calibration/curve-evidence.ts';
import type { PaintedSwatch } from '../../src/calibration/painted-swatch.ts';
import { median } from '../../src/calibration/robust-mean.ts';
import { suggestSwatches } from '../../src/calibration/suggest-swatches.ts';
import { deltaE00 } from '../../src/colour/difference.ts';
import { type Lab, labOf } from '../../src/colour/lab.ts';
import { suggestionWords } from '../../src/messages/calibration-messages.ts';
import { plainNumber } from '../../src/number-format.ts';
import type { Paint } from '../../src/optics/opaque.ts';
import { predictReflectance } from '../../src/optics/swatch-residuals.ts';
import { random } from '../optics/random.ts';
import {
  measuredPaints,
  neighbourOf,
  randomPile,
  MEASURED_SURFACE as surface,
} from '../tools/measured-paints.ts';

type Bars = readonly [median: number, tenth: number];

/** What is tried, and how near to the truth mixtures must come. */
export interface Recovery {
  /** Which of the 27 measured paints, the white (0) first. */
  readonly paints: readonly number[];
  /** Seeds of the noise. */
  readonly draws: readonly number[];
  readonly piles: number;
  readonly mixtures: number;
  readonly bars: {
    readonly unnamed: Bars;
    readonly named: Bars;
    readonly noiseless: Bars;
    readonly logged: Bars;
  };
  /** The seven paints, of those tried, that suggestions are made for. */
  readonly few: readonly number[];
}

/**
 * The fit recovers its own model: paints that obey the fitted optics exactly (K and S of Y. Okumura,
 * Rochester, 2005) are seen as colours of a masstone and a tint of 1:4 with noise, fitted, and judged on
 * random mixtures. No simulation of a studio, but a check of the sums: a mistake in the fit's slopes, priors
 * or weights shows here. Paints that are otherwise: tests/simulation/calibration-studio.test.ts.
 */
export function recoversItsOwnModel({
  paints: tried,
  draws,
  piles,
  mixtures,
  bars,
  few,
}: Recovery): void {
  const all = measuredPaints();
  const truth = tried.map((i) => all[i]!);
  const names = truth.map((_, i) => `paint ${i}`);
  const white = names[0]!;
  const labTrue = (parts: ArrayLike<number>) =>
    labOf(predictReflectance({ parts }, truth, surface));

  function painted(parts: number[], sigma: number, normal: () => number, more = {}): PaintedSwatch {
    return {
      id: parts.join(),
      parts: parts.flatMap((p, i) => (p > 0 ? [{ pigment: names[i]!, parts: p }] : [])),
      kind: 'photographed',
      lab: labTrue(parts).map((v) => v + sigma * normal()) as unknown as Lab,
      R: null,
      sd: Math.max(sigma, 0.1),
      ...more,
    };
  }
  const only = (whiteParts: number, i: number) =>
    truth.map((_, at) => (at === i ? 1 : at === 0 ? whiteParts : 0));
  const swatchesOf = (sigma: number, normal: () => number, tints: readonly number[] = [4]) =>
    truth.flatMap((_, i) =>
      i === 0
        ? [painted(only(1, 0), sigma, normal)]
        : [0, ...tints].map((tint) => painted(only(tint, i), sigma, normal)),
    );
  const unnamed = names.map((pigment): PaintToFit => ({ pigment, label: pigment, named: null }));

  function fitted(paints: readonly PaintToFit[], swatches: readonly PaintedSwatch[]): Calibration {
    const result = calibratePaints(white, paints, swatches, surface);
    if (!result.ok) throw new Error(result.fault.code);
    return result.value;
  }

  function differences(found: readonly Paint[], count = mixtures): number[] {
    const { uniform } = random(77);
    return Array.from({ length: count }, () => {
      const parts = randomPile(truth.length, uniform);
      return deltaE00(labTrue(parts), labOf(predictReflectance({ parts }, found, surface)));
    });
  }
  const quantiles = (of: readonly number[]): [median: number, tenth: number] => {
    const sorted = of.toSorted((a, b) => a - b);
    return [median(sorted), sorted[Math.floor(0.9 * sorted.length)]!];
  };
  const say = (what: string, of: readonly number[]) =>
    console.log(`${what}: ${of.map((v) => v.toFixed(2)).join(', ')}`);
  const paintsOf = ({ paints }: Calibration) => paints.map(({ paint }) => paint);

  test.each<[string, number, boolean, Bars]>([
    ['noise 1, nothing known', 1, false, bars.unnamed],
    ['noise 1, the pigments named', 1, true, bars.named],
    ['no noise, nothing known', 0, false, bars.noiseless],
  ])(
    'masstone and one tint, %s',
    (what, sigma, named, [most, mostTenth]) => {
      // Without noise one draw is as another.
      const off = (sigma === 0 ? draws.slice(0, 1) : draws).flatMap((seed) => {
        const { normal } = random(seed);
        const paints = unnamed.map((paint, i) =>
          // Of a named white its violet edge is known, as in the study.
          named ? { ...paint, named: i === 0 ? truth[0]! : neighbourOf(truth[i]!, normal) } : paint,
        );
        return differences(paintsOf(fitted(paints, swatchesOf(sigma, normal))));
      });
      const [middle, tenth] = quantiles(off);
      say(what, [middle, tenth]);
      expect(middle).toBeLessThanOrEqual(most);
      expect(tenth).toBeLessThanOrEqual(mostTenth);
    },
    600_000,
  );

  test(`with ${piles} logged mixtures`, () => {
    const off = draws.slice(0, 2).flatMap((seed) => {
      const { normal, uniform } = random(seed);
      const swatches = swatchesOf(1, normal);
      const logged = Array.from({ length: piles }, () =>
        painted(randomPile(truth.length, uniform), 1, normal, { logged: true }),
      );
      return differences(paintsOf(fitted(unnamed, [...swatches, ...logged])));
    });
    const [middle, tenth] = quantiles(off);
    say('logged mixtures', [middle, tenth]);
    expect(middle).toBeLessThanOrEqual(bars.logged[0]);
    expect(tenth).toBeLessThanOrEqual(bars.logged[1]);
  }, 600_000);

  test('with true spectra instead of photographs', () => {
    const swatches = truth.flatMap((_, i) =>
      (i === 0 ? [only(1, 0)] : [only(0, i), only(4, i)]).map((parts): PaintedSwatch => {
        const R = predictReflectance({ parts }, truth, surface);
        const { normal } = random(1);
        return { ...painted(parts, 0, normal), kind: 'measured', lab: labOf(R), R, sd: 0.1 };
      }),
    );
    const [middle, tenth] = quantiles(differences(paintsOf(fitted(unnamed, swatches))));
    say('true spectra', [middle, tenth]);
    expect(middle).toBeLessThan(0.5);
  });

  test('a masstone alone is called rough, and a tint takes that away', () => {
    const { normal } = random(1);
    const rough = fitted(unnamed, swatchesOf(1, normal, []));
    say('masstone alone', quantiles(differences(paintsOf(rough))));
    for (const paint of rough.paints.slice(1)) {
      const trust = evidenceOfFit(paint, '2026-05-01');
      expect(trust.rough).toBe(true);
      expect(trust.expected.tenth).toBeGreaterThanOrEqual(16);
    }
    const better = fitted(unnamed, swatchesOf(1, normal));
    expect(better.paints.some((paint) => evidenceOfFit(paint, '2026-05-01').rough)).toBe(false);
  });

  test('the error that it expects is the error that it makes', () => {
    const { normal } = random(5);
    const found = fitted(unnamed, swatchesOf(1, normal));
    const expected = median(found.paints.map((paint) => paint.expected.median));
    const tenth = median(found.paints.map((paint) => paint.expected.tenth));
    const real = quantiles(differences(paintsOf(found)));
    say('expected', [expected, tenth]);
    say('made', real);
    expect(expected / real[0]).toBeGreaterThan(0.6);
    expect(expected / real[0]).toBeLessThan(1.7);
    expect(tenth / real[1]).toBeGreaterThan(0.5);
    expect(tenth / real[1]).toBeLessThan(1.8);
  });

  test('suggested piles teach more than second tints in white', () => {
    const { normal } = random(6);
    const paints = few.map((i) => unnamed[i]!);
    const all = swatchesOf(1, normal).filter(({ parts }) =>
      parts.every(({ pigment }) => paints.some((paint) => paint.pigment === pigment)),
    );
    const before = fitted(paints, all);
    const asked = suggestSwatches(before, { count: 6 });
    expect(asked).toHaveLength(6);
    for (const suggestion of asked) {
      const { parts, before: now, after } = suggestion;
      expect(after).toBeLessThan(now);
      expect(suggestionWords(suggestion, plainNumber)).toMatch(/^[A-Za-z].{40,}\.$/);
      expect(parts.every((part) => Number.isInteger(part.parts))).toBe(true);
    }
    // A mixture with another colour teaches more than white: most of what is asked for is one.
    const coloured = asked.filter(({ parts }) => parts.every(({ pigment }) => pigment !== white));
    expect(coloured.length).toBeGreaterThanOrEqual(4);

    const brushed = (parts: readonly { pigment: string; parts: number }[]) =>
      painted(
        names.map((name) => parts.find(({ pigment }) => pigment === name)?.parts ?? 0),
        1,
        normal,
      );
    const taught = fitted(paints, [...all, ...asked.map(({ parts }) => brushed(parts))]);
    const tinted = fitted(paints, [
      ...all,
      ...paints.slice(1).map(({ pigment }) =>
        brushed([
          { pigment, parts: 1 },
          { pigment: white, parts: 16 },
        ]),
      ),
    ]);
    const off = (calibration: Calibration) => {
      const { uniform } = random(9);
      const own = few.map((i) => truth[i]!);
      return median(
        Array.from({ length: 300 }, () => {
          const parts = randomPile(own.length, uniform);
          const is = labOf(predictReflectance({ parts }, own, surface));
          return deltaE00(is, labOf(predictReflectance({ parts }, paintsOf(calibration), surface)));
        }),
      );
    };
    const [first, suggested, white16] = [off(before), off(taught), off(tinted)];
    say('before, suggested, 1:16 tints', [first, suggested, white16]);
    expect(suggested).toBeLessThan(first);
    expect(suggested).toBeLessThan(white16);
  });
}
