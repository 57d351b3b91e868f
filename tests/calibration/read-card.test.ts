import { describe, expect, test } from 'vitest';
import { readCard } from '../../src/calibration/read-card.ts';
import { readTouched } from '../../src/calibration/read-touched.ts';
import {
  type CardPaint,
  type CardPlace,
  markCentres,
  planCards,
  type SwatchCard,
} from '../../src/calibration/swatch-card.ts';
import { deltaE00 } from '../../src/colour/difference.ts';
import { type Reflectance, spectrum } from '../../src/colour/grid.ts';
import { labOf } from '../../src/colour/lab.ts';
import { decode, linearBetween } from '../../src/colour/rgb.ts';
import { calibrationFaultWords } from '../../src/messages/calibration-messages.ts';
import { plainNumber } from '../../src/number-format.ts';
import { opaque } from '../../src/optics/opaque.ts';
import { addSurface } from '../../src/optics/surface.ts';
import { builtInPaintOf } from '../../src/pigment/built-in-curves.ts';
import { STARTER_SURFACE } from '../../src/pigment/starter-shelf.ts';
import { flat, photograph, type Shot } from '../tools/card-photo.ts';
import { encode } from '../tools/encode.ts';

const paintOf = (pigment: string): CardPaint => ({
  pigment,
  label: pigment,
  density: 2,
  caution: '',
});
const NAMES = [
  'yellow_ochre',
  'red_earth',
  'vermilion',
  'ultramarine',
  'green_earth',
  'raw_umber',
  'bone_black',
  'malachite',
  'madder_lake',
  'azurite',
  'lead_tin_yellow',
];
const [card] = planCards(paintOf('titanium_white'), NAMES.map(paintOf)) as [SwatchCard];

function painted({ parts }: CardPlace): Reflectance {
  const R = opaque(
    parts.map((part) => part.parts),
    parts.map(({ pigment }) => builtInPaintOf(pigment)!),
    spectrum<'R'>(),
  );
  return addSurface(R, STARTER_SURFACE);
}

async function read(shot: Shot, of = card) {
  const { pixels } = await photograph(of, painted, shot);
  return readCard(pixels, of);
}

/** Every place has its own paint: nearest to its own truth, and near it. */
async function expectRight(shot: Shot, within: number): Promise<number> {
  const result = await read(shot);
  if (!result.ok) throw new Error(calibrationFaultWords(result.fault, plainNumber));
  const { places } = result.value;
  expect(places).toHaveLength(card.places.filter(({ kind }) => kind === 'paint').length);
  const off = places.map(({ place, lab }) => deltaE00(lab, labOf(painted(place))));
  const worst = Math.max(...off);
  expect(worst).toBeLessThan(within);
  return worst;
}
const codeOf = async (shot: Shot) => {
  const result = await read(shot);
  if (result.ok) throw new Error('it was read');
  expect(calibrationFaultWords(result.fault, plainNumber)).toMatch(/^[A-Z].{30,}\.$/s);
  return result.fault.code;
};

const SMALL = { size: 800 };
/** A good photograph, taken once for all that look at one. */
const taken = photograph(card, painted, SMALL);

describe('a photographed card is read', () => {
  // The camera of these is an ideal one: what is left is place, light, noise, blur and JPEG.
  test.each<[string, Shot, number]>([
    ['straight from above, a little noise', { noise: 0.002 }, 1],
    ['tilted by 20 degrees', { tilt: 20, tiltTowards: 70 }, 1],
    ['upside down', { turn: 180, tilt: 8 }, 1],
    ['lying on its side', { turn: 90, tilt: 8 }, 1],
    ['askew, 15 % uneven', { turn: 12, uneven: 0.15 }, 1],
    ['in a warm cast', { cast: [1.1, 1, 0.75] }, 1],
    ['blurred and packed', { blur: 1.6, jpeg: 80 }, 2],
    ['with gloss on three places, and dust', { gloss: [5, 9, 14], dust: true }, 1.5],
  ])('%s', async (_, shot, within) => {
    await expectRight({ ...SMALL, ...shot }, within);
  });

  test('everything at once', async () => {
    const shot = { tilt: 20, tiltTowards: 200, turn: 171, uneven: 0.15, blur: 1.8, jpeg: 78 };
    await expectRight({ ...shot, noise: 0.008, curve: 0.2, size: 1300 }, 3);
  });

  test('a card on letter paper, lying on a dark table', async () => {
    const [letter] = planCards(paintOf('titanium_white'), NAMES.slice(0, 4).map(paintOf), {
      paper: 'letter',
      tints: [4, 16],
    }) as [SwatchCard];
    const result = await read({ ...SMALL, table: flat(0.02), tilt: 10 }, letter);
    if (!result.ok) throw new Error(calibrationFaultWords(result.fault, plainNumber));
    for (const { place, lab } of result.value.places)
      expect(deltaE00(lab, labOf(painted(place)))).toBeLessThan(1);
    expect(result.value.referenceResidual).toBeLessThan(0.5);
    expect(result.value.unevenness).toBeLessThan(1.05);
  });
});

describe('what cannot be read is refused, with a sentence', () => {
  test.each<[string, Shot, string]>([
    ['two lights', { lamp: 0.7 }, 'card-two-lights'],
    ['a shadow over a part of it', { shadow: 0.5 }, 'card-shadow'],
    ['half out of the frame', { offset: [0.5, 0] }, 'card-cut'],
    ['overexposed', { exposure: 1.5 }, 'card-clipped'],
    ['far too dark', { exposure: 0.004 }, 'card-dark'],
    ['candle light', { cast: [1.15, 0.5, 0.16] }, 'card-light-coloured'],
    ['light that falls off to a third', { uneven: 0.8 }, 'card-light-uneven'],
    ['too small', { fill: 0.3, size: 900 }, 'card-small'],
  ])('%s', async (_, shot, code) => {
    expect(await codeOf({ ...SMALL, ...shot })).toBe(code);
  });

  test('a pigment left blank is named', async () => {
    const blank = card.places.find(({ label }) => label === 'ultramarine, alone')!;
    const { pixels } = await photograph(
      card,
      (place) => (place === blank ? undefined : painted(place)),
      SMALL,
    );
    const result = readCard(pixels, card);
    expect(result).toEqual({
      ok: false,
      fault: { code: 'card-blank', place: blank.number, label: 'ultramarine, alone' },
    });
  });

  test('a photograph of something else', () => {
    const data = new Uint8Array(400 * 300 * 4).map((_, i) => (i * 7919) % 251);
    const result = readCard({ width: 400, height: 300, data, space: 'srgb' }, card);
    expect(result.ok ? '' : result.fault.code).toBe('card-none');
  });

  test('corners that make no page', async () => {
    const { pixels } = await taken;
    const corners: [number, number][] = [
      [10, 10],
      [20, 20],
      [30, 30],
      [40, 40],
    ];
    const result = readCard(pixels, card, { corners });
    expect(result.ok ? '' : result.fault.code).toBe('card-corners');
  });
});

describe('by hand', () => {
  test('the corners touched', async () => {
    const { pixels, at } = await photograph(card, painted, { ...SMALL, tilt: 12, turn: 30 });
    const corners = markCentres('A4').map(([x, y]) => at(x, y));
    const result = readCard(pixels, card, { corners });
    if (!result.ok) throw new Error(calibrationFaultWords(result.fault, plainNumber));
    for (const { place, lab } of result.value.places)
      expect(deltaE00(lab, labOf(painted(place)))).toBeLessThan(1);
  });

  test('each place touched in turn', async () => {
    const { pixels, at } = await photograph(card, painted, { ...SMALL, uneven: 0.12, turn: 40 });
    const touches = card.places.map((place) => ({ place, at: at(place.x, place.y), reach: 8 }));
    const result = readTouched(pixels, touches);
    if (!result.ok) throw new Error(calibrationFaultWords(result.fault, plainNumber));
    for (const { place, lab } of result.value.places)
      expect(deltaE00(lab, labOf(painted(place)))).toBeLessThan(2.5);
    const without = readTouched(
      pixels,
      touches.filter(({ place }) => place.kind !== 'grey'),
    );
    expect(without).toEqual({
      ok: false,
      fault: { code: 'touch-reference-missing', kind: 'grey' },
    });
    const outside = readTouched(pixels, [{ place: card.places[0]!, at: [-5, 20] }]);
    expect(outside.ok ? '' : outside.fault.code).toBe('touch-outside');
  });
});

test('a photograph in a wider space than sRGB shows the same colours', async () => {
  const { pixels } = await taken;
  const [narrow, out] = [new Float64Array(3), new Float64Array(3)];
  const data = Uint16Array.from(pixels.data, (v) => v * 257);
  for (let i = 0; i < data.length; i += 4) {
    for (let c = 0; c < 3; c++) narrow[c] = decode(pixels.data[i + c]! / 255);
    linearBetween('srgb', 'display-p3', narrow[0]!, narrow[1]!, narrow[2]!, out);
    for (let c = 0; c < 3; c++) data[i + c] = Math.round(65535 * encode(out[c]!));
  }
  const [one, other] = [
    readCard(pixels, card),
    readCard({ ...pixels, data, space: 'display-p3' }, card),
  ];
  if (!one.ok || !other.ok) throw new Error('not read');
  const off = one.value.places.map(({ lab }, i) => deltaE00(lab, other.value.places[i]!.lab));
  expect(Math.max(...off)).toBeLessThan(0.5);
});
