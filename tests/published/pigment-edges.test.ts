import { expect, test } from 'vitest';
import { BANDS, bandNm, type Reflectance } from '../../src/colour/grid.ts';
import { addSurface } from '../../src/optics/surface.ts';
import { STARTER_SURFACE } from '../../src/pigment/starter-shelf.ts';
import { describeShared } from '../shared.ts';
import { inside } from '../tools/pigment-mixing.ts';
import { readReferences } from '../tools/pigment-references.ts';

/** Where the reflectance rises most steeply, by a parabola through the steepest three steps. */
function steepestNm(R: Reflectance): number {
  const step = (band: number) => R[band + 1]! - R[band]!;
  let top = 4;
  for (let band = 4; band < BANDS - 2; band++) if (step(band) > step(top)) top = band;
  const [before, at, after] = [step(top - 1), step(top), step(top + 1)];
  const curve = before - 2 * at + after;
  return bandNm(top) + 5 + (curve === 0 ? 0 : (5 * (before - after)) / curve);
}

/** Where it is highest between 420 and 620 nm. */
function highestNm(R: Reflectance): number {
  let top = 4;
  for (let band = 4; band <= 24; band++) if (R[band]! > R[top]!) top = band;
  return bandNm(top);
}

// Positions are what the curves were authored from; measured rows say whether memory served.
describeShared('edges and maxima against published measurements', () => {
  const reference = readReferences();
  const ours = (id: string) => addSurface(inside({ [id]: 1 }), STARTER_SURFACE);

  test.each([
    ['lead_tin_yellow', 'FORS Lead-tin yellow I'],
    ['massicot', 'FORS Massicot'],
    ['orpiment', 'FORS Orpiment'],
    ['naples_yellow', 'FORS Naples yellow'],
    ['yellow_ochre', 'FORS Yellow ochre'],
    ['yellow_ochre', 'RIT Yellow ochre'],
    ['raw_sienna', 'FORS Raw sienna'],
    ['raw_sienna', 'RIT Raw sienna'],
    ['realgar', 'FORS Realgar'],
    ['red_lead', 'FORS Red lead'],
    ['red_earth', 'FORS Red ochre'],
    ['red_earth', 'RIT Red oxide'],
    ['burnt_sienna', 'RIT Burnt sienna'],
    ['vermilion', 'FORS Vermilion'],
    ['si_pr254', 'RIT Pyrrole red'],
  ])('%s rises where %s does, within 15 nm', (id, name) => {
    const [mine, theirs] = [steepestNm(ours(id)), steepestNm(reference(name).R)];
    console.log(`${id}: ${mine.toFixed(0)} nm, ${name}: ${theirs.toFixed(0)} nm`);
    expect(Math.abs(mine - theirs)).toBeLessThanOrEqual(15);
  });

  test.each([
    ['azurite', 'FORS Azurite'],
    ['smalt', 'FORS Smalt'],
    ['malachite', 'FORS Malachite'],
    ['verdigris', 'FORS Verdigris'],
    ['si_pg18', 'FORS Viridian'],
    ['si_pg17', 'RIT Chromium oxide green'],
    ['si_pg7', 'RIT Phthalo green (blue shade)'],
    ['si_pb28', 'RIT Cobalt blue'],
    ['si_pb29', 'RIT Ultramarine blue'],
  ])('%s is brightest where %s is, within 20 nm', (id, name) => {
    const [mine, theirs] = [highestNm(ours(id)), highestNm(reference(name).R)];
    console.log(`${id}: ${mine} nm, ${name}: ${theirs} nm`);
    expect(Math.abs(mine - theirs)).toBeLessThanOrEqual(20);
  });
});
