import { describe, expect, test } from 'vitest';
import { deltaE00 } from '../../src/colour/difference.ts';
import { chroma, hueDeg } from '../../src/colour/lab.ts';
import { BUILT_IN_CURVES } from '../../src/pigment/built-in-curves.ts';
import { PIGMENTS, type PigmentFacts } from '../../src/pigment/pigment-facts.ts';
import { mixed } from '../tools/pigment-mixing.ts';

/** Tinting strength: how far 1 part takes 16 parts of titanium white from white. */
const strength = (id: string) =>
  deltaE00(mixed({ [id]: 1, titanium_white: 16 }), mixed({ titanium_white: 1 }));

const RANKS = ['very low', 'low', 'medium', 'high', 'very high'];
const rank = ({ strength: { word } }: PigmentFacts) => RANKS.indexOf(word);
const drawn = PIGMENTS.filter(({ id }) => BUILT_IN_CURVES.some((curve) => curve.id === id));

// Words of the handbook sheet (from memory there). Within one family: a weaker word is
// never the stronger tinter. Stand-ins are compared among themselves, for they are mostly stronger
// than what they replace.
describe('order of tinting strengths', () => {
  for (const modern of [false, true])
    for (const family of ['yellow', 'red', 'blue', 'green', 'brown', 'black'] as const) {
      const members = drawn.filter(
        (facts) => facts.family === family && (facts.group === 'standin') === modern,
      );
      if (members.length < 2) continue;
      test(`${family}${modern ? ' stand-ins' : ''}`, () => {
        const sorted = members.toSorted((p, q) => strength(p.id) - strength(q.id));
        console.log(
          sorted.map((f) => `${f.id} ${strength(f.id).toFixed(1)} (${f.strength.word})`).join(', '),
        );
        const ranks = sorted.map(rank);
        expect(ranks).toEqual(ranks.toSorted((p, q) => p - q));
      });
    }

  // Of whites it is the power to lighten: which takes a black further.
  test('whites', () => {
    const lightens = (id: string) => mixed({ [id]: 4, bone_black: 1 })[0];
    const order = ['chalk', 'zinc_white', 'lead_white', 'titanium_white'];
    const L = order.map(lightens);
    expect(L).toEqual(L.toSorted((p, q) => p - q));
  });
});

// The sheet's own words for those that no measurement speaks for.
describe('pigments judged by words', () => {
  const tint = (id: string) => mixed({ [id]: 1, lead_white: 8 });
  test('charcoal, lamp black and Cassel earth are cold in tints', () => {
    for (const id of ['charcoal_black', 'lamp_black'])
      expect(tint(id)[2]).toBeLessThan(tint('bone_black')[2] - 2);
    // Cold beside the warm brown of its mass.
    expect(chroma(tint('cassel_earth'))).toBeLessThan(6);
  });
  test('Prussian blue is a greenish blue in tints', () => {
    expect(hueDeg(tint('prussian_blue'))).toBeLessThan(hueDeg(tint('ultramarine'))!);
    expect(tint('prussian_blue')[1]).toBeLessThan(0);
  });
  test('green earth is a dull sage', () => {
    const mass = mixed({ green_earth: 1 });
    expect(hueDeg(mass)).toBeGreaterThan(105);
    expect(hueDeg(mass)).toBeLessThan(190);
    expect(chroma(mass)).toBeLessThan(15);
  });
  test('carmine is a cool crimson, cooler than madder in tints', () => {
    const [carmine, madder] = [tint('carmine_lake'), tint('madder_lake')];
    expect(carmine[2]).toBeLessThan(madder[2]);
    expect(hueDeg(mixed({ carmine_lake: 1 }))).toBeLessThan(25);
  });
  test('burnt umber is redder than raw umber', () => {
    expect(tint('burnt_umber')[1]).toBeGreaterThan(tint('raw_umber')[1] + 2);
  });
  test('raw sienna is warmer and clearer than ochre', () => {
    const [sienna, ochre] = [mixed({ raw_sienna: 1 }), mixed({ yellow_ochre: 1 })];
    expect(hueDeg(sienna)!).toBeLessThan(hueDeg(ochre)!);
  });
});
