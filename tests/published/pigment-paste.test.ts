import { describe, expect, test } from 'vitest';
import { weighFaultWords } from '../../src/messages/stock-faults.ts';
import {
  coverageCm2,
  criticalShare,
  filmCm3,
  grindOf,
  oilOfParts,
  oilOfPercent,
  oilOfRatio,
  pasteOf,
  weightsOf,
} from '../../src/pigment/paste.ts';
import { pairWarningOf, pigmentOf } from '../../src/pigment/pigment-facts.ts';
import { pigmentGrind } from '../../src/pigment/pigment-grind.ts';

const grind = (id: string, oil: 'linseed' | 'walnut' = 'linseed') => {
  const found = pigmentGrind(id, {}, oil);
  if (!found.ok) throw new Error(weighFaultWords(found.fault));
  return found.value;
};
const paste = (id: string) => pasteOf(grind(id));
/** The sheet's tolerance: half a per cent. */
const near = (value: number, printed: number) =>
  expect(Math.abs(value / printed - 1)).toBeLessThanOrEqual(0.005);

// Check values of the handbook sheet by their row; linseed 0.93, the sheet's defaults.
// Formulas: volumes add; CPVC as coatings references print it.
describe('check values of the handbook sheet', () => {
  test('1: lead white takes less oil than raw sienna, over all their ranges', () => {
    const [white, sienna] = [pigmentOf('lead_white')!.oil!, pigmentOf('raw_sienna')!.oil!];
    expect([white.value, sienna.value]).toEqual([13, 57]);
    expect(white.max).toBeLessThan(sienna.min);
  });
  test('2, 3: pigment share and density of paste', () => {
    near(paste('lead_white').pigmentShare, 0.5164);
    near(paste('lead_white').density, 3.91);
    near(paste('raw_sienna').pigmentShare, 0.3419);
    near(paste('raw_sienna').density, 1.686);
  });
  test('4: 50 x 70 cm in lead white at 40 um', () => {
    const volume = filmCm3(50 * 70, 40);
    near(volume, 14);
    const { paint, pigment, oil } = weightsOf(volume, grind('lead_white'));
    near(paint, 54.73);
    near(pigment, 48.44);
    near(oil, 6.3);
  });
  test('5: the same in yellow ochre', () => {
    const { paint, pigment, oil } = weightsOf(14, grind('yellow_ochre'));
    near(paint, 24.11);
    near(pigment, 16.07);
    near(oil, 8.04);
  });
  test('6: an imprimatura of burnt umber, 100 x 120 cm at 15 um', () => {
    const volume = filmCm3(100 * 120, 15);
    near(volume, 18);
    const { paint, pigment, oil } = weightsOf(volume, grind('burnt_umber'));
    near(paint, 29.13);
    near(pigment, 16.65);
    near(oil, 12.49);
  });
  test('7: a glaze of madder with twice its weight of oil, 30 x 30 cm at 10 um', () => {
    const volume = filmCm3(30 * 30, 10);
    near(volume, 0.9);
    const glaze = { ...grind('madder_lake'), oil: 200 };
    const { pigment, oil } = weightsOf(volume, glaze);
    near(pigment, 0.336);
    near(oil, 0.672);
    near(pasteOf(glaze).pigmentShare, 0.1966);
  });
  test('8: impasto of lead white, 10 x 5 cm at 500 um', () => {
    near(filmCm3(50, 500), 2.5);
    near(weightsOf(2.5, grind('lead_white')).paint, 9.77);
  });
  test('9, 10: critical share, and lead white paste below it', () => {
    near(criticalShare(20, 4.2), 0.5268);
    near(criticalShare(10.5, 6.7), 0.5706);
    expect(paste('lead_white').pigmentShare).toBeLessThan(criticalShare(10.5, 6.7));
  });
  test('11, 12: 3 parts lead white and 1 part yellow ochre by dry weight', () => {
    const [white, ochre] = [grind('lead_white'), grind('yellow_ochre')];
    const both = grindOf([
      { grams: 3, grind: white },
      { grams: 1, grind: ochre },
    ]);
    near(both.oil, 22.25);
    near(both.density, 5.121);
    near(pasteOf(both).density, 2.813);
    near(pasteOf(both).pigmentShare, 0.4494);
    near(3 / white.density / (3 / white.density + 1 / ochre.density), 0.5732);
  });
  test('13: the volume of 100 g of paste, bone black against lead white', () => {
    near(paste('lead_white').density / paste('bone_black').density, 2.955);
  });
  test('14: oil written in other ways', () => {
    near(oilOfParts(32, 68), 47.06);
    near(oilOfPercent(12), 13.64);
    near(oilOfRatio(7.5), 13.33);
  });
  test('15: coverage', () => {
    near(coverageCm2(1, 40), 250);
    near(coverageCm2(10, 20), 5000);
  });
  test('17: pairs', () => {
    expect(pairWarningOf('orpiment', 'lead_white')?.severity).toBe('avoid');
    expect(pairWarningOf('vermilion', 'lead_white')).toBeNull();
    expect(pairWarningOf('azurite', 'realgar')?.severity).toBe('avoid');
    expect(pairWarningOf('madder_lake', 'lead_white')?.severity).toBe('caution');
    expect(pairWarningOf('vermilion', 'yellow_ochre')).toBeNull();
  });
  test('18: walnut oil in place of linseed', () => {
    const walnut = pasteOf(grind('lead_white', 'walnut')).density;
    near(walnut, 3.899);
    expect(1 - walnut / paste('lead_white').density).toBeLessThan(0.003);
  });
  test('19: saffron is refused', () => {
    const refused = pigmentGrind('saffron');
    if (refused.ok) throw new Error('it was weighed');
    expect(refused.fault).toMatchObject({ code: 'weigh-no-figures', lacks: ['density', 'oil'] });
    expect(weighFaultWords(refused.fault)).toContain('Saffron cannot be weighed');
  });
  test('20: order of paste densities', () => {
    const order = ['lead_white', 'vermilion', 'red_earth', 'bone_black', 'lamp_black'];
    const printed = [3.91, 3.32, 1.79, 1.32, 1.13];
    order.forEach((id, i) => {
      near(paste(id).density, printed[i]!);
    });
  });
  test('21: order of oil', () => {
    const order = 'red_lead lead_white vermilion yellow_ochre burnt_umber bone_black lamp_black';
    expect(order.split(' ').map((id) => pigmentOf(id)!.oil!.value)).toEqual([
      9, 13, 23, 50, 75, 100, 175,
    ]);
  });
});

// The sheet's worked table: 100 g of finished paint.
test.each([
  ['lead_white', 88.5, 11.5, 25.6],
  ['raw_sienna', 63.7, 36.3, 59.3],
  ['yellow_ochre', 66.7, 33.3, 58.1],
  ['bone_black', 50.0, 50.0, 75.6],
  ['lamp_black', 36.4, 63.6, 88.6],
])('100 g of %s paste', (id, pigment, oil, volume) => {
  const own = grind(id);
  const cm3 = 100 / pasteOf(own).density;
  near(cm3, volume);
  near(weightsOf(cm3, own).pigment, pigment);
  near(weightsOf(cm3, own).oil, oil);
});
