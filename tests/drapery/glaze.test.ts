import { describe, expect, test } from 'vitest';
import { type Reflectance, spectrum } from '../../src/colour/grid.ts';
import { drape } from '../../src/drapery/garment.ts';
import {
  glazedColour,
  glazesOf,
  internalReflectance,
  THICKEST_MM,
} from '../../src/drapery/glaze-selection.ts';
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
