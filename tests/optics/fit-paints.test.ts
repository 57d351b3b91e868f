import { expect, test } from 'vitest';
import { BANDS, bandNm, type Spectrum, spectrum } from '../../src/colour/grid.ts';
import { labOf } from '../../src/colour/lab.ts';
import { namedPaint, UNKNOWN_PAINT } from '../../src/optics/curve-prior.ts';
import {
  evaluateFit,
  type ParametricObservations,
  posteriorNormalEquations,
} from '../../src/optics/fit-cost.ts';
import { fitExperiment, fitPaints } from '../../src/optics/fit-paints.ts';
import { type FitPaint, unknownsOf } from '../../src/optics/fit-unknowns.ts';
import type { Paint } from '../../src/optics/opaque.ts';
import { NO_SURFACE, removeSurface, type Surface } from '../../src/optics/surface.ts';
import { predictReflectance, type Swatch } from '../../src/optics/swatch-residuals.ts';
import { flat, flatPaint } from './flat.ts';
import { random } from './random.ts';

const curve = <Kind extends string>(of: (nm: number) => number): Spectrum<Kind> =>
  spectrum<Kind>(Float64Array.from({ length: BANDS }, (_, band) => of(bandNm(band))));
const edge = (nm: number, at: number) => 1 / (1 + Math.exp((at - nm) / 15));

const white = flatPaint(0.002, 1);
const red: Paint = {
  K: curve<'K'>((nm) => 0.03 + 1.8 * (1 - edge(nm, 590))),
  S: curve<'S'>((nm) => 0.3 - 0.0002 * (nm - 380)),
};
const blue: Paint = {
  K: curve<'K'>((nm) => 0.05 + 1.2 * edge(nm, 540)),
  S: curve<'S'>(() => 0.15),
};
const surface: Surface = { k1: 0.03, k2: 0.65, specular: 'included' };
const truth = [white, red, blue];
const paints: FitPaint[] = [{ known: white }, { prior: UNKNOWN_PAINT }, { prior: UNKNOWN_PAINT }];

const measured = (parts: number[], sd = 0.1, film?: Swatch['film']): Swatch => {
  const made = film ? { parts, film } : { parts };
  return { ...made, spectrum: { R: predictReflectance(made, truth, surface), sd } };
};
const photographed = (parts: number[], sd = 0.3): Swatch => ({
  parts,
  lab: { lab: labOf(predictReflectance({ parts }, truth, surface)), sd },
});
const worst = (found: Float64Array, wanted: Float64Array) => {
  expect(found).toHaveLength(BANDS);
  return Math.max(...found.map((v, band) => Math.abs(Math.log(v / wanted[band]!))));
};

test('K and S come back from measured masstones and tints', () => {
  const swatches = [
    [0, 1, 0],
    [4, 1, 0],
    [0, 0, 1],
    [4, 0, 1],
  ].map((p) => measured(p, 0.02));
  const fit = fitPaints({ swatches, surface }, paints);
  expect(fit.converged).toBe(true);
  expect(fit.paints[0]).toBe(white);
  for (const i of [1, 2]) {
    expect(worst(fit.paints[i]!.K, truth[i]!.K)).toBeLessThan(0.02);
    expect(worst(fit.paints[i]!.S, truth[i]!.S)).toBeLessThan(0.02);
  }
  expect(fit.swatches.map(({ R }) => R.length)).toEqual([BANDS, BANDS, BANDS, BANDS]);
});

test('K and S come back, per millimetre, from thin films over black and over white', () => {
  const film = (Rg: number) => ({ filmMm: 0.003, ground: flat(Rg) });
  const swatches = [0.02, 0.85].map((Rg) => measured([0, 1, 0], 0.01, film(Rg)));
  const fit = fitPaints({ swatches, surface }, [
    { known: white },
    { prior: UNKNOWN_PAINT },
    { known: blue },
  ]);
  expect(worst(fit.paints[1]!.K, red.K)).toBeLessThan(0.03);
  expect(worst(fit.paints[1]!.S, red.S)).toBeLessThan(0.03);
});

test('photographs of masstones and tints foresee a mixture; logged mixtures foresee it better', () => {
  const swatches = [
    [0, 1, 0],
    [4, 1, 0],
    [0, 0, 1],
    [4, 0, 1],
  ].map((p) => photographed(p));
  const wanted = labOf(predictReflectance({ parts: [2, 1, 2] }, truth, surface));
  const off = (more: Swatch[]) => {
    const fit = fitPaints({ swatches: [...swatches, ...more], surface }, paints);
    const lab = labOf(predictReflectance({ parts: [2, 1, 2] }, fit.paints, surface));
    return Math.hypot(...lab.map((v, i) => v - wanted[i]!));
  };
  const before = off([]);
  const after = off([photographed([0, 1, 3]), photographed([1, 1, 1]), photographed([0, 3, 1])]);
  expect(before).toBeLessThan(4);
  expect(after).toBeLessThan(0.5 * before);
});

test('a named pigment needs one swatch to be put right', () => {
  const library = { K: spectrum<'K'>(red.K.map((v) => 1.4 * v)), S: red.S };
  const fit = fitPaints({ swatches: [photographed([4, 1, 0])], surface }, [
    { known: white },
    { prior: namedPaint(library) },
    { known: blue },
  ]);
  const error = (paint: Paint) => {
    const lab = labOf(predictReflectance({ parts: [1, 1, 0] }, [white, paint, blue], surface));
    const wanted = labOf(predictReflectance({ parts: [1, 1, 0] }, truth, surface));
    return Math.hypot(...lab.map((v, i) => v - wanted[i]!));
  };
  expect(error(fit.paints[1]!)).toBeLessThan(0.3 * error(library));
});

/** Swatches of every kind at once, and a surface and a strength that are not well known. */
function everything(): ParametricObservations {
  const { uniform } = random(3);
  const ground = flat(0.4 + 0.4 * uniform());
  return {
    settings: [
      { start: 0, sd: 0.5 },
      { start: Math.log(0.03), sd: 0.3 },
    ],
    at: ([strength, k1]) => ({
      surface: { ...surface, k1: Math.exp(k1!) },
      swatches: [
        { ...measured([0, 1, 0], 2), weight: 3 },
        { ...measured([0, 2 * Math.exp(strength!), 1], 3), ...photographed([0, 2, 1]) },
        photographed([3, 1, 1]),
        measured([0, Math.exp(strength!), 2], 4, { filmMm: 0.02 * Math.exp(strength!), ground }),
      ].map((swatch, i) =>
        i === 1 ? { ...swatch, parts: [0, 2 * Math.exp(strength!), 1] } : swatch,
      ),
    }),
  };
}

test('the gradient and the curvature are those of the cost', () => {
  const experiment = everything();
  // What was seen stays as it is: freeze it, or the finite difference would move the target too.
  const fixed = experiment.at(Float64Array.of(0, Math.log(0.03))).swatches;
  const frozen: ParametricObservations = {
    ...experiment,
    at: (settings) => {
      const observations = experiment.at(settings);
      const swatches = observations.swatches.map((swatch, i) => {
        const { lab, spectrum } = fixed[i]!;
        return { ...swatch, ...(lab ? { lab } : {}), ...(spectrum ? { spectrum } : {}) };
      });
      return { ...observations, swatches };
    },
  };
  const unknowns = unknownsOf(paints, 2);
  expect(unknowns.size).toBeGreaterThan(2);
  const { normal } = random(8);
  const x = Float64Array.from({ length: unknowns.size }, () => 0.3 * normal());
  x[unknowns.settingsAt + 1]! += Math.log(0.03);
  for (const robust of [undefined, 3]) {
    const cost = (at: Float64Array) => evaluateFit(frozen, paints, unknowns, at, robust).cost;
    const { gradient } = posteriorNormalEquations(
      frozen,
      unknowns,
      x,
      evaluateFit(frozen, paints, unknowns, x, robust),
    );
    const largest = Math.max(...gradient.map(Math.abs));
    for (let i = 0; i < unknowns.size; i++) {
      const at = (h: number) => cost(x.map((v, j) => (i === j ? v + h : v)));
      const slope = (at(1e-4) - at(-1e-4)) / 2e-4;
      // The cost is a sum of squares: its slope is twice the gradient of the normal equations.
      expect(Math.abs(slope - 2 * gradient[i]!)).toBeLessThan(2e-3 * largest);
    }
  }
});

test('settings that are not well known are found with the paints', () => {
  const strong = (strength: number): Swatch['film'] => ({
    filmMm: 0.01 * strength,
    ground: removeSurface(flat(0.7), surface).R,
  });
  const seenAt = [0.5, 1, 2, 4].map((amount) => ({
    amount,
    R: predictReflectance({ parts: [0, 1, 0], film: strong(amount ** 0.8)! }, truth, surface),
  }));
  const fit = fitExperiment(
    {
      settings: [{ start: 1, sd: 0.3 }],
      at: ([exponent]) => ({
        surface,
        swatches: seenAt.map(({ amount, R }) => ({
          parts: [0, 1, 0],
          film: strong(amount ** exponent!)!,
          spectrum: { R, sd: 0.05 },
        })),
      }),
    },
    paints,
  );
  expect(fit.settings[0]).toBeCloseTo(0.8, 2);
});

test('one wild swatch is forgiven when asked', () => {
  const good = [
    [0, 1, 0],
    [4, 1, 0],
    [2, 1, 0],
    [8, 1, 0],
    [1, 1, 0],
  ].map((p) => measured(p, 1));
  const wild: Swatch = { parts: [4, 1, 0], spectrum: { R: flat(0.1), sd: 1 } };
  const joint = (robust?: number) =>
    fitPaints({ swatches: [...good, wild], surface }, paints, robust ? { robust } : {});
  const strict = joint();
  const forgiving = joint(36);
  expect(worst(forgiving.paints[1]!.K, red.K)).toBeLessThan(
    0.3 * worst(strict.paints[1]!.K, red.K),
  );
  expect(forgiving.swatches[5]!.trust).toBeLessThan(0.05);
  expect(forgiving.swatches[0]!.trust).toBeGreaterThan(0.9);
});

test('it says how sure it is: surer with more, unsure where nothing was seen', () => {
  const sure = (swatches: Swatch[]) =>
    fitPaints({ swatches, surface }, paints, { posterior: true }).sd!;
  const few = sure([photographed([0, 1, 0])]);
  const more = sure([photographed([0, 1, 0]), photographed([4, 1, 0])]);
  expect(few[0]).toBeNull();
  const at = 20;
  for (const spread of [more[1]!.K[at], more[1]!.S[at]]) expect(spread).toBeGreaterThan(0);
  expect(more[1]!.K[at]).toBeLessThan(few[1]!.K[at]!);
  expect(more[1]!.S[at]).toBeLessThan(few[1]!.S[at]!);
  const prior = Math.sqrt(UNKNOWN_PAINT.K.covariance.get(at, at));
  expect(few[2]!.K[at]! / prior).toBeCloseTo(1, 2);
});

test('the same twice, and it can be stopped', () => {
  const observations = { swatches: [photographed([0, 1, 0]), photographed([4, 1, 0])], surface };
  expect(fitPaints(observations, paints)).toEqual(fitPaints(observations, paints));
  const costs: number[] = [];
  const stopped = fitPaints(observations, paints, {
    proceed: (_, cost) => costs.push(cost) < 2,
  });
  expect(stopped.converged).toBe(false);
  expect(stopped.rounds).toBe(2);
  expect(costs[1]).toBeLessThan(costs[0]!);
});

test('what is no swatch is refused, and named', () => {
  const good = photographed([0, 1, 0]);
  const refuse = (bad: Swatch, what: string) =>
    expect(() => fitPaints({ swatches: [good, bad], surface }, paints)).toThrow(what);
  refuse({ parts: [0, 1, 0] }, 'swatch 1: neither');
  refuse({ ...good, parts: [1] }, '1 parts for 3 paints');
  refuse({ ...good, weight: 0 }, 'a weight of 0');
  refuse({ ...good, lab: { lab: [50, Number.NaN, 0], sd: 1 } }, 'a colour of');
  refuse({ ...good, lab: { lab: [50, 0, 0], sd: 0 } }, 'a standard deviation of 0');
  refuse({ ...good, film: { filmMm: -1, ground: flat(0.5) } }, 'a film -1 mm');
  refuse({ ...good, film: { filmMm: 1, ground: flat(2) } }, 'a ground');
  const none = { ...NO_SURFACE, k1: Number.NaN };
  expect(() => fitPaints({ swatches: [good], surface: none }, paints)).toThrow(RangeError);
});
