import { describe, expect, test } from 'vitest';
import {
  acceptCalibration,
  paintsToFit,
  removeCalibration,
} from '../../src/calibration/accept-calibration.ts';
import { calibratePaints } from '../../src/calibration/calibrate-paints.ts';
import {
  evidenceOfCurve,
  evidenceOfFit,
  HANDBOOK_EVIDENCE,
  mixtureError,
} from '../../src/calibration/curve-evidence.ts';
import {
  accuracyOf,
  type LoggedPile,
  pilesOfCurrentLots,
} from '../../src/calibration/logged-pile.ts';
import type { PaintedSwatch, Part } from '../../src/calibration/painted-swatch.ts';
import { suggestSwatches } from '../../src/calibration/suggest-swatches.ts';
import { deltaE00 } from '../../src/colour/difference.ts';
import { spectrum } from '../../src/colour/grid.ts';
import { type Lab, labOf } from '../../src/colour/lab.ts';
import { calibrationFaultWords } from '../../src/messages/calibration-messages.ts';
import {
  accuracyWords,
  errorWords,
  evidenceWords,
} from '../../src/messages/curve-evidence-text.ts';
import { plainNumber } from '../../src/number-format.ts';
import { predictReflectance } from '../../src/optics/swatch-residuals.ts';
import { builtInPaintOf } from '../../src/pigment/built-in-curves.ts';
import { mixtureShelfOf } from '../../src/pigment/mixing-shelf.ts';
import { starterStock, STARTER_SURFACE as surface } from '../../src/pigment/starter-shelf.ts';

const WHITE = 'lead_white';
// The tubes on the shelf are not the handbook's.
const STRENGTHS: Record<string, number> = { yellow_ochre: 1.6, ultramarine: 0.7, red_earth: 1.2 };
const tube = (pigment: string) => {
  const { K, S } = builtInPaintOf(pigment)!;
  return { K: spectrum<'K'>(K.map((k) => (STRENGTHS[pigment] ?? 1) * k)), S };
};
const colour = (...parts: Part[]): Lab =>
  labOf(
    predictReflectance(
      { parts: parts.map((p) => p.parts) },
      parts.map((p) => tube(p.pigment)),
      surface,
    ),
  );
const part = (pigment: string, parts: number): Part => ({ pigment, parts });
const swatch = (...parts: Part[]): PaintedSwatch => ({
  id: parts.map((p) => `${p.pigment} ${p.parts}`).join(),
  parts,
  kind: 'photographed',
  lab: colour(...parts),
  R: null,
});
const stock = starterStock();
const entries = stock.entries.filter(({ id }) => id === WHITE || id in STRENGTHS);
const paints = paintsToFit(stock, entries);
const card = [
  swatch(part(WHITE, 1)),
  ...Object.keys(STRENGTHS).flatMap((id) => [
    swatch(part(id, 1)),
    swatch(part(id, 1), part(WHITE, 4)),
  ]),
];
const fitted = (swatches: readonly PaintedSwatch[], of = paints) => {
  const result = calibratePaints(WHITE, of, swatches, surface);
  if (!result.ok) throw new Error(calibrationFaultWords(result.fault, plainNumber));
  return result.value;
};
const faultOf = (swatches: readonly PaintedSwatch[], of = paints) => {
  const result = calibratePaints(WHITE, of, swatches, surface);
  if (result.ok) throw new Error('it was fitted');
  expect(calibrationFaultWords(result.fault, plainNumber)).toMatch(/^[A-Z].{25,}\.$/s);
  return result.fault;
};

describe('a calibration', () => {
  const calibration = fitted(card);

  test('shows each swatch foreseen beside seen', () => {
    expect(calibration.swatches.map(({ painted }) => painted)).toEqual(card);
    for (const { deltaE00: off, foreseen, painted, unlikely } of calibration.swatches) {
      expect(off).toBeCloseTo(deltaE00(foreseen, painted.lab), 12);
      expect(off).toBeLessThan(1);
      expect(unlikely).toBe(false);
    }
  });

  test('is accepted, mixtures change for the better, and undone', () => {
    const before = JSON.stringify(stock);
    const accepted = acceptCalibration(stock, calibration, '2026-05-01');
    if (!accepted.ok) throw new Error('not accepted');
    const pile = [part('yellow_ochre', 1), part('ultramarine', 1), part(WHITE, 2)];
    const off = (of: typeof stock) => {
      const shelf = mixtureShelfOf(of);
      const own = pile.map((p) => shelf.paints.find(({ pigment }) => pigment === p.pigment)!.paint);
      const lab = labOf(predictReflectance({ parts: pile.map((p) => p.parts) }, own, surface));
      return deltaE00(lab, colour(...pile));
    };
    expect(off(stock)).toBeGreaterThan(4);
    expect(off(accepted.value)).toBeLessThan(1);
    expect(JSON.stringify(stock)).toBe(before);
    const changed = accepted.value.entries.filter(({ curve }) => curve !== null);
    expect(changed.map(({ id }) => id).sort()).toEqual([WHITE, ...Object.keys(STRENGTHS)].sort());
    const ultramarine = changed.find(({ id }) => id === 'ultramarine')!;
    expect(evidenceOfCurve(ultramarine.curve)).toMatchObject({
      known: 'photographed',
      date: '2026-05-01',
      rough: false,
      swatches: 2,
      piles: 0,
    });
    // Calibrated again, it begins from the handbook's curve once more.
    const again = paintsToFit(accepted.value, entries);
    expect(again[1]!.named).toEqual(paints[1]!.named);
    // And the way back: the handbook's curves, whatever was accepted.
    const ids = changed.map(({ id }) => id);
    expect(removeCalibration(accepted.value, ids)).toEqual(stock);
    const gone = acceptCalibration({ ...stock, entries: [] }, calibration, '2026-05-01');
    expect(gone.ok ? '' : gone.fault.code).toBe('swatch-paint-unknown');
  });

  test('the same twice, and it can be stopped', () => {
    expect(fitted(card).paints).toEqual(calibration.paints);
    const stopped = calibratePaints(WHITE, paints, card, surface, { proceed: () => false });
    expect(stopped).toEqual({ ok: false, fault: { code: 'stopped' } });
  });

  test('a measured swatch makes its paint measured', () => {
    const parts = [part('ultramarine', 1), part(WHITE, 4)];
    const R = predictReflectance({ parts: [1, 4] }, [tube('ultramarine'), tube(WHITE)], surface);
    const more = fitted([...card, { ...swatch(...parts), kind: 'measured', R }]);
    const known = (id: string) => more.paints.find(({ pigment }) => pigment === id)!.known;
    expect([known('ultramarine'), known('red_earth'), known(WHITE)]).toEqual([
      'measured',
      'photographed',
      'photographed',
    ]);
  });

  test('a pile with a wrong ratio is forgiven and pointed out', () => {
    const wrong = {
      ...swatch(part('red_earth', 1), part('ultramarine', 1)),
      lab: colour(part('red_earth', 1), part(WHITE, 2)),
      logged: true,
    };
    const found = fitted([...card, wrong]);
    expect(found.swatches.at(-1)!.unlikely).toBe(true);
    for (const { deltaE00: off } of found.swatches.slice(0, -1)) expect(off).toBeLessThan(2.5);
  });
});

describe('what cannot be is refused', () => {
  test('no swatch, no white, a stranger', () => {
    expect(faultOf([]).code).toBe('swatch-nothing');
    const strange = swatch(part('smalt', 1));
    expect(faultOf([...card, strange])).toEqual({ code: 'swatch-paint-unknown', pigment: 'smalt' });
    const unknown = paints.map((paint) => ({ ...paint, named: null }));
    expect(faultOf(card.slice(1), unknown).code).toBe('swatch-white-missing');
    expect(fitted(card.slice(1)).paints).toHaveLength(4);
  });

  test('tints that are impossible', () => {
    const put = (id: string, lab: Lab) =>
      card.map((each) => (each.id === id ? { ...each, lab } : each));
    const tint = 'ultramarine 1,lead_white 4';
    // Darker than the paint alone; of another hue; masstone and tint in each other's places.
    expect(faultOf(put(tint, [8, 5, -10])).code).toBe('tint-impossible');
    expect(faultOf(put(tint, [60, 45, 50])).code).toBe('tint-impossible');
    expect(faultOf(put(tint, colour(part('ultramarine', 1)))).code).toBe('tint-impossible');
    const more = swatch(part('ultramarine', 1), part(WHITE, 16));
    const swapped = [...card, more].map((each) => {
      if (each === more) return { ...each, lab: colour(part('ultramarine', 1), part(WHITE, 1)) };
      return each;
    });
    expect(faultOf(swapped).code).toBe('tint-order');
  });
});

describe('trust', () => {
  test('a masstone alone is rough, more is better', () => {
    const alone = fitted([card[0]!, swatch(part('ultramarine', 1))]);
    const blue = evidenceOfFit(
      alone.paints.find(({ pigment }) => pigment === 'ultramarine')!,
      '2026-05-01',
    );
    expect(blue.rough).toBe(true);
    expect(evidenceWords(blue, plainNumber)).toMatch(/Rough: its masstone alone/);
    expect(evidenceWords(blue, plainNumber)).toMatch(
      /^Photographed \(2026-05-01\), from one swatch\./,
    );
    const whole = evidenceOfFit(fitted(card).paints[1]!, '2026-05-01');
    expect(whole.expected.median).toBeLessThan(blue.expected.median);
    expect(evidenceWords(HANDBOOK_EVIDENCE, plainNumber)).toMatch(/^From the handbook/);
  });

  test('a mixture carries the errors of its paints by their part in it', () => {
    const sure = { ...HANDBOOK_EVIDENCE, expected: { median: 0.5, tenth: 1 } };
    const error = (blue: number) =>
      mixtureError(
        [part('ultramarine', blue), part('yellow_ochre', 1)],
        (id) => (id === 'ultramarine' ? HANDBOOK_EVIDENCE : sure),
        (id) => builtInPaintOf(id)!,
        { median: 0, tenth: 0 },
      );
    expect(error(1000).median).toBeCloseTo(4, 1);
    expect(error(0.0001).median).toBeCloseTo(0.5, 1);
    expect(error(1).tenth).toBeLessThan(error(3).tenth);
    expect(() =>
      mixtureError(
        [],
        () => sure,
        (id) => builtInPaintOf(id)!,
      ),
    ).toThrow(RangeError);
    expect(errorWords({ median: 0.8, tenth: 2 }, plainNumber)).toMatch(/no difference/);
    expect(errorWords({ median: 2, tenth: 5 }, plainNumber)).toMatch(
      /trained eye.*about 2\.0.*worse than 5/,
    );
    expect(errorWords(HANDBOOK_EVIDENCE.expected, plainNumber)).toMatch(/plain/);
  });
});

describe('piles', () => {
  const pile = (day: number, off: number): LoggedPile => ({
    ...swatch(part('ultramarine', 1), part(WHITE, 2)),
    id: `pile ${day}`,
    logged: true,
    date: `2026-05-${String(day).padStart(2, '0')}`,
    lab: [50 + off, 0, 0],
    foreseen: [50, 0, 0],
    lots: [{ pigment: 'ultramarine', lot: day > 10 ? '2' : '1' }],
  });

  test('accuracy over time', () => {
    expect(accuracyWords(accuracyOf([]), plainNumber)).toBe('');
    expect(accuracyOf([pile(1, 3)]).lately).toBeNull();
    const many = Array.from({ length: 20 }, (_, i) => pile(20 - i, i >= 10 ? 4 : 1));
    const accuracy = accuracyOf(many);
    expect(accuracy.piles.map(({ id }) => id)[0]).toBe('pile 1');
    expect(accuracy.atFirst!.median).toBeCloseTo(deltaE00([54, 0, 0], [50, 0, 0]), 6);
    expect(accuracy.lately!.median).toBeCloseTo(deltaE00([51, 0, 0], [50, 0, 0]), 6);
    expect(accuracyWords(accuracy, plainNumber)).toMatch(
      /last 10 piles half came out within 1\.0.*first it was 4\.0/,
    );
  });

  test('of another lot are left out', () => {
    const many = [pile(9, 1), pile(11, 1)];
    expect(pilesOfCurrentLots(many, () => '2').map(({ id }) => id)).toEqual(['pile 11']);
  });

  test('logged piles improve the fit, and what would teach most is suggested', () => {
    const unnamed = paints.map((paint) => ({ ...paint, named: null }));
    const before = fitted(card, unnamed);
    const [best, second] = suggestSwatches(before, { count: 2 });
    expect(best!.after).toBeLessThan(best!.before);
    expect(second!.before).toBeCloseTo(best!.after, 6);
    const after = fitted([...card, swatch(...best!.parts)], unnamed);
    const sum = (of: typeof before) => of.paints.reduce((all, p) => all + p.expected.median, 0);
    expect(sum(after)).toBeLessThan(sum(before));
    for (const { parts } of suggestSwatches(before, { pigments: ['red_earth'] }))
      expect(parts.some(({ pigment }) => pigment === 'red_earth')).toBe(true);
  });
});
