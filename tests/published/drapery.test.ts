import { describe, expect, test } from 'vitest';
import { type Reflectance, spectrum } from '../../src/colour/grid.ts';
import { chroma } from '../../src/colour/lab.ts';
import { blackRule, outsideRule } from '../../src/drapery/black-rule.ts';
import { drape } from '../../src/drapery/garment.ts';
import {
  glazedColour,
  glazesOf,
  internalReflectance,
  THICKEST_MM,
} from '../../src/drapery/glaze-film.ts';
import { kindOf } from '../../src/harmony/period-family.ts';
import { removeSurface } from '../../src/optics/surface.ts';
import { masstone } from '../../src/pigment/masstone.ts';
import { starterShelf, wholeShelf } from '../../src/pigment/starter-shelf.ts';

const shelf = starterShelf();
const whole = wholeShelf();
const flat = (R: number): Reflectance => spectrum<'R'>(new Float64Array(36).fill(R));

// P. Kubelka, J. Opt. Soc. Am. 38 (1948) 448: a film that only absorbs and scatters less than its ground
// takes light away; at no thickness it shows the ground, without end it shows its own masstone.
describe('glazes as finite films', () => {
  test.each(glazesOf(whole).map((paint) => [paint.label, paint] as const))(
    '%s darkens white and never lightens it',
    (_, paint) => {
      const white = removeSurface(flat(0.85), whole.surface).R;
      let last = glazedColour(paint, 0, white, whole)[0];
      for (let um = 1; um <= 1000 * THICKEST_MM; um++) {
        const L = glazedColour(paint, um / 1000, white, whole)[0];
        expect(L).toBeLessThan(last);
        last = L;
      }
    },
  );

  test.each(['madder_lake', 'ultramarine'])(
    '%s: no film shows the ground, an endless one its masstone',
    (id) => {
      const paint = shelf.paints.find(({ pigment }) => pigment === id)!;
      const ground = internalReflectance([{ pigment: 'vermilion', share: 1 }], shelf);
      const vermilion = masstone(
        shelf.paints.find(({ pigment }) => pigment === 'vermilion')!.paint,
        shelf.surface,
      );
      const own = masstone(paint.paint, shelf.surface);
      const [bare, endless] = [
        glazedColour(paint, 0, ground, shelf),
        glazedColour(paint, 1e3, ground, shelf),
      ];
      for (const i of [0, 1, 2] as const) {
        expect(bare[i]).toBeCloseTo(vermilion[i], 9);
        expect(endless[i]).toBeCloseTo(own[i], 6);
      }
    },
  );
});

// Common practice; Field, Chromatography: keep black out of colour, glaze instead.
describe('deepening without black', () => {
  test.each([
    ['red', [45, 45, 24]],
    ['blue', [42, 0, -28]],
    ['yellow', [74, 2, 50]],
    ['green', [47, -17, 17]],
  ] as const)('%s keeps the chroma that black would lose', (name, lab) => {
    const made = drape({ name, lab, way: 'deepened in its own hue', stuff: 'wool' }, shelf);
    if (!made.ok) throw new Error(JSON.stringify(made.fault));
    const { blackLoss, black } = made.value;
    console.log(
      `${name}: chroma ${blackLoss!.chroma.toFixed(1)} in the ${blackLoss!.step}, with ${blackLoss!.black} ${blackLoss!.withBlack.toFixed(1)}`,
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
    if (chroma(lab) >= 50) expect(blackRule(lab, [], whole).why).toBeNull();
  },
);

// Common practice, after “The Excellency of the Pen and Pencil” (1668): yellow lake over a lead-tin green.
test('yellow lake over a green of lead-tin yellow and a blue', () => {
  const some = {
    ...whole,
    paints: whole.paints.filter(({ pigment }) =>
      [
        'lead_white',
        'lead_tin_yellow',
        'azurite',
        'indigo',
        'malachite',
        'yellow_lake',
        'yellow_ochre',
        'raw_umber',
      ].includes(pigment),
    ),
  };
  const made = drape(
    {
      name: 'green',
      lab: [52, -16, 22],
      way: 'underpaint and glaze',
      stuff: 'satin',
      glaze: 'yellow_lake',
    },
    some,
  );
  if (!made.ok) throw new Error(JSON.stringify(made.fault));
  const { folds } = made.value;
  console.log(
    folds
      .map(
        ({ lab, glaze }) =>
          `${lab.map((x) => x.toFixed(0)).join(' ')}${glaze ? ` ${(1000 * glaze.filmMm).toFixed(0)} um` : ''}`,
      )
      .join(' | '),
  );
  for (let i = 1; i < 6; i++) expect(folds[i]!.lab[0]).toBeLessThan(folds[i - 1]!.lab[0]);
  for (const { lab } of folds.slice(1)) expect(kindOf(lab).family).toBe('green');
});
