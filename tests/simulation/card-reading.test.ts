import { expect, test } from 'vitest';
import { readCard } from '../../src/calibration/read-card.ts';
import { type CardPlace, planCards } from '../../src/calibration/swatch-card.ts';
import { deltaE00 } from '../../src/colour/difference.ts';
import { spectrum } from '../../src/colour/grid.ts';
import { labOf } from '../../src/colour/lab.ts';
import { random } from '../optics/random.ts';
import { photograph, type Shot } from '../tools/card-photo.ts';

// What is simulated: cards as our own renderer photographs them, leaning, turned, unevenly lit, blurred,
// grainy and packed, by a camera that sees as the observer does. No optics of paint is in it: the places
// have invented reflectances. Other cameras: calibration-card.test.ts beside this.
const COLOURS = Array.from({ length: 11 }, (_, i) => `colour ${i}`);
const named = (pigment: string) => ({ pigment, label: pigment, density: 2, caution: '' });
const [card] = planCards(named('white'), COLOURS.map(named));

/** Edges and bands of each colour at a place of its own; its tint is as much paler. */
function painted({ parts }: CardPlace) {
  const colour = parts.find(({ pigment }) => pigment !== 'white');
  const tint = parts.some(({ pigment }) => pigment === 'white') ? 0.45 : 0;
  const i = colour === undefined ? 0 : COLOURS.indexOf(colour.pigment);
  return spectrum<'R'>(
    Float64Array.from({ length: 36 }, (_, band) => {
      if (colour === undefined) return 0.88;
      const own = 0.3 + 0.25 * Math.sin(band / (3 + i) + i) + (band > 3 * i ? 0.2 : -0.02);
      return own * (1 - tint) + 0.88 * tint;
    }),
  );
}

const shots = process.env.KINGCUP_SOAK === '1' ? 60 : 4;
test(`${shots} photographs by lot: the right patch, or an honest refusal`, async () => {
  const { uniform } = random(17);
  const refused: string[] = [];
  for (let i = 0; i < shots; i++) {
    const shot: Shot = {
      size: 900 + Math.round(600 * uniform()),
      tilt: 20 * uniform(),
      tiltTowards: 360 * uniform(),
      turn: 360 * uniform(),
      uneven: 0.15 * uniform(),
      unevenTowards: 360 * uniform(),
      blur: 0.5 + 1.3 * uniform(),
      noise: 0.008 * uniform(),
      jpeg: 75 + Math.round(20 * uniform()),
      fill: 0.55 + 0.2 * uniform(),
      seed: i + 1,
    };
    const { pixels } = await photograph(card!, painted, shot);
    const result = readCard(pixels, card!);
    if (!result.ok) {
      refused.push(result.fault.code);
      continue;
    }
    expect(result.value.places).toHaveLength(1 + 2 * COLOURS.length);
    for (const { place, lab } of result.value.places)
      expect(deltaE00(lab, labOf(painted(place))), JSON.stringify(shot)).toBeLessThan(4);
  }
  console.log(`refused ${refused.length} of ${shots}: ${refused.join(', ')}`);
  expect(refused.length).toBeLessThanOrEqual(shots / 4);
}, 600_000);
