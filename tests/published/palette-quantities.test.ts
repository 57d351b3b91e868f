import { describe, expect, test } from 'vitest';
import { amountOf, prepareCm3 } from '../../src/palette/pile-quantity.ts';
import { weigh } from '../../src/palette/stock-supply.ts';
import { entryOf, pileOf } from '../palette/made.ts';

// Worked examples of the handbook sheet (pigment facts, section 10, rows 4-8 and 16): densities and oil
// from Gettens & Stout 1942, Massey 1967, Church 1915, linseed 0.93; films are common practice.
// Printed to the digits below; half of the last digit is the tolerance.
const NONE = { tooth: 0, waste: 0, heapCm3: 0 };
const printed = (value: number, text: string) =>
  expect(value).toBeCloseTo(Number(text), (text.split('.')[1] ?? '').length);

function film(
  pigment: string,
  cm2: number,
  filmUm: number,
  spareOil = 0,
): { volume: number; paint: number; powder: number; oil: number; spareOil: number } {
  const pile = pileOf('pile', { [pigment]: 1 }, { cover: { cm2 }, filmUm, spareOil });
  const amount = amountOf(pile, { name: 'passage' }, NONE);
  if (!amount.ok) throw new Error('refused');
  const { paste, prepare } = amount.value;
  const tube = weigh(null, pigment, entryOf(pigment), paste);
  const jar = weigh(null, pigment, entryOf(pigment, { form: 'powder' }), paste);
  if (tube.as !== 'paste' || jar.as !== 'powder') throw new Error('not weighed');
  return {
    volume: prepare,
    paint: tube.grams!,
    powder: jar.pigmentGrams,
    oil: jar.oilGrams,
    spareOil: amount.value.spareOil,
  };
}

describe('worked examples of the handbook sheet, through a pile', () => {
  test('4: 50 x 70 cm at 40 um in lead white', () => {
    const { volume, paint, powder, oil } = film('lead_white', 3500, 40);
    printed(volume, '14.0');
    printed(paint, '54.73');
    printed(powder, '48.44');
    printed(oil, '6.30');
  });
  test('5: the same in yellow ochre', () => {
    const { paint, powder, oil } = film('yellow_ochre', 3500, 40);
    printed(paint, '24.11');
    printed(powder, '16.07');
    printed(oil, '8.04');
  });
  test('6: an imprimatura of burnt umber, 100 x 120 cm at 15 um', () => {
    const { volume, paint, powder, oil } = film('burnt_umber', 12000, 15);
    printed(volume, '18.0');
    printed(paint, '29.13');
    printed(powder, '16.65');
    printed(oil, '12.49');
  });
  test('7: a glaze of madder with twice its oil, 30 x 30 cm at 10 um', () => {
    // 100 g of oil beyond the paste's own 100 g, for 100 g of pigment: by volumes of oil and paste.
    const spare = 100 / 0.93 / (100 / 1.9 + 100 / 0.93);
    const { volume, powder, oil, spareOil } = film('madder_lake', 900, 10, spare);
    printed(volume, '0.90');
    printed(powder, '0.336');
    printed(oil + spareOil * 0.93, '0.672');
    printed(powder / 1.9 / volume, '0.1966');
  });
  test('8: impasto of lead white, 10 x 5 cm at 500 um', () => {
    const { volume, paint } = film('lead_white', 50, 500);
    printed(volume, '2.5');
    printed(paint, '9.77');
  });
  test('16: 5 cm3 net, tooth 0.10, waste 0.20, heap 0.5', () => {
    printed(prepareCm3(5, { tooth: 0.1, waste: 0.2, heapCm3: 0.5 }), '7.1');
    // The studio's defaults are those of the row.
    const amount = amountOf(pileOf('pile', { lead_white: 1 }, { cover: { cm2: 1250 } }), {
      name: 'passage',
    });
    printed(amount.ok ? amount.value.prepare : 0, '7.1');
  });
  test('19: saffron is never weighed', () => {
    const jar = weigh(null, 'saffron', entryOf('saffron', { form: 'powder' }), 1);
    expect(jar.as).toBe('unweighed');
    expect(weigh(null, 'saffron', entryOf('saffron'), 1)).toMatchObject({ grams: null });
  });
});
