import { describe, expect, test } from 'vitest';
import { chroma, type Lab } from '../../src/colour/lab.ts';
import { blackRule, outsideRule } from '../../src/drapery/black-rule.ts';
import { drape } from '../../src/drapery/garment.ts';
import { kindOf } from '../../src/harmony/period-family.ts';
import { masstone } from '../../src/pigment/masstone.ts';
import { starterShelf, wholeShelf } from '../../src/pigment/starter-shelf.ts';

const shelf = starterShelf();
const whole = wholeShelf();

// Common practice; Field, Chromatography: keep black out of colour, glaze instead.
describe('deepening without black', () => {
  // Blue, yellow and green: tests/simulation/garment.test.ts.
  test('red keeps the chroma that black would lose', () => {
    const lab: Lab = [45, 45, 24];
    const made = drape({ name: 'red', lab, way: 'deepened in its own hue', stuff: 'wool' }, shelf);
    if (!made.ok) throw new Error(JSON.stringify(made.fault));
    const { blackLoss, black } = made.value;
    console.log(
      `chroma ${blackLoss!.chroma.toFixed(1)} in the ${blackLoss!.step}, with ${blackLoss!.black} ${blackLoss!.withBlack.toFixed(1)}`,
    );
    expect(black.why).toBeNull();
    expect(blackLoss!.chroma).toBeGreaterThan(blackLoss!.withBlack);
  });

  test('the rule as it is written', () => {
    const rule = (
      lab: readonly [number, number, number],
      recipe: Record<string, number> = {},
      more = {},
    ) =>
      blackRule(
        lab,
        Object.entries(recipe).map(([pigment, share]) => ({ pigment, share })),
        shelf,
        more,
      );
    expect(rule([90, 0, 5]).why).toBe('white cloth');
    expect(rule([50, 0, 2]).why).toBe('grey cloth');
    expect(rule([22, 1, 0]).why).toBe('black cloth');
    expect(rule([35, 12, 18]).why).toBe('brown cloth');
    expect(rule([45, 38, 18]).why).toBe('earth red cloth');
    expect(rule([45, 45, 24]).why).toBeNull();
    expect(rule([45, 45, 24], {}, { insist: true }).why).toBe('the painter insists');
    const held = rule([48, -20, 25], { malachite: 0.9, bone_black: 0.1 });
    expect(held.why).toBe('its local colour holds it');
    expect(held.allowed).toEqual(['bone_black']);
    expect(held.barred).toEqual(['charcoal_black']);
    // Charcoal with white, as a cool tint, is always allowed; charcoal alone is not.
    const share = (black: number, white: number) => [
      { pigment: 'charcoal_black', share: black },
      { pigment: 'lead_white', share: white },
    ];
    expect(outsideRule(share(0.3, 0.7), ['charcoal_black'], shelf)).toEqual([]);
    expect(outsideRule(share(0.7, 0.3), ['charcoal_black'], shelf)).toEqual(['charcoal_black']);
  });
});

// The handbook sheet's check values for its hue bands.
test.each(['vermilion', 'carmine_lake', 'madder_lake'])(
  '%s counts as red, not brown, so black is kept out of it',
  (id) => {
    const lab = masstone(whole.paints.find(({ pigment }) => pigment === id)!.paint, whole.surface);
    expect(kindOf(lab).family).toBe('red');
    // Only of strong colour is a red no earth red.
    expect(blackRule(lab, [], whole).why === null).toBe(chroma(lab) >= 50);
  },
);
