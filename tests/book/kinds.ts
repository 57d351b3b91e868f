import type { Bodies } from '../../src/book/schema/record.ts';
import type { ShelfBody } from '../../src/book/schema/shelf.ts';
import { spectrum } from '../../src/colour/grid.ts';
import type { Shelf } from '../../src/pigment/shelf.ts';
import { colour, harmonyBodyOf, mixtureOf } from './made.ts';

const bands = (from: number, by: number) => Array.from({ length: 36 }, (_, i) => from + by * i);
export const smallShelf: Shelf = {
  name: 'North room',
  basis: 'volume',
  surface: { k1: 0.03, k2: 0.65, specular: 'included' },
  white: 'lead-white',
  paints: [
    {
      pigment: 'lead-white',
      label: 'Lead white',
      paint: { K: spectrum<'K'>(bands(0.004, 0.0001)), S: spectrum<'S'>(bands(0.9, 0.003)) },
    },
    {
      pigment: 'red-earth',
      label: 'Red earth',
      paint: { K: spectrum<'K'>(bands(1.4, -0.03)), S: spectrum<'S'>(bands(0.2, 0.011)) },
    },
  ],
  remarks: [],
};

const mixture = mixtureOf([44, 20, 18], 'red-earth', 'lead-white');
const note = 'for the guild picture';
const date = '2031-05-17';
const photo = { file: 'a'.repeat(64), width: 64, height: 48, size: 61 };

/** One entry's contents of every kind; all values differ where they could be mixed up. */
export const bodies: Bodies = {
  specimen: {
    name: 'Jay',
    note,
    light: 'overcast',
    place: 'the weir',
    walk: 'May',
    date,
    photo,
    neutral: { x: 0.2, y: 0.7, radius: 0.01, gains: [1.2, 1, 0.9] },
    mask: { ...photo, file: 'b'.repeat(64), width: 32, height: 24 },
    gathered: {
      width: 64,
      height: 48,
      colours: [colour('near azurite', [40, -5, -25], 0.7)],
      labels: { ...photo, file: 'c'.repeat(64), width: 16, height: 12 },
      remarks: ['small'],
    },
  },
  harmony: harmonyBodyOf('Lane', { specimen: 'specimen-0001' }),
  drapery: {
    name: 'Shepherd',
    note,
    date,
    harmony: 'harmony-0001',
    garments: [
      {
        name: 'cloak',
        way: 'deepened in its own hue',
        stuff: 'wool',
        folds: [
          { step: 'highlight', lab: [71, 12, 14], mixture },
          { step: 'shadow', lab: [25, 9, 8] },
        ],
      },
    ],
  },
  formula: {
    name: 'Pewter',
    note,
    date,
    subject: 'a jug',
    from: null,
    passages: [
      { name: 'lit side', layers: [{ film: 'glaze', mixture, filmMm: 0.02, note: 'thin' }] },
    ],
  },
  passage: {
    name: 'Sleeve',
    note,
    painting: 'Spring',
    from: 'drapery-0001',
    piles: [{ name: 'half-tone', mixture, areaCm2: 120, filmMm: 0.1, coats: 2, cm3: 1.6 }],
    coats: [{ date, film: 'body colour', filmMm: 0.1, pigments: ['red-earth'], extraOil: 0.05 }],
  },
  palette: {
    name: 'Monday',
    note,
    date,
    shape: 'oval',
    hand: 'left',
    seats: ['lead-white', 'red-earth'],
    passages: ['passage-0001'],
    piles: [{ name: 'flesh', mixture }],
    order: ['passage-0001:1', 'passage-0001:0'],
    rules: {
      ...{ tooth: 0.1, waste: 0.2, heapCm3: 0.5, edgeCm3: 0.5, oil: 'walnut', pupils: true },
      people: ['Ines'],
      acknowledged: [{ pigment: 'red-earth', lot: '7', person: 'Ines', date: '2031-05-17' }],
    },
  },
  sheet: {
    name: 'Monday morning',
    note,
    date,
    palettes: ['palette-0001'],
    amounts: [{ pigment: 'red-earth', lot: '7', grams: 12.5, cm3: 4 }],
    prepared: '2031-05-17T06:30:00Z',
    taken: [{ entry: 'stock-1', amount: 12.5 }],
  },
  shelf: {
    ...smallShelf,
    note,
    remarks: ['Two paints only.'],
    paints: smallShelf.paints.map(({ pigment, label, paint: { K, S } }) => ({
      ...{ pigment, label, known: 'handbook', K: Array.from(K), S: Array.from(S) },
      ...{ grade: 'fine', lot: '7', note: '', form: 'paste', grams: 250, opened: date },
    })),
  },
  swatch: {
    name: 'tint',
    note,
    date,
    pigment: 'red-earth',
    lot: '7',
    toWhite: 0.25,
    lab: [61, 18, 16],
    reflectance: bands(0.2, 0.01),
    photo,
  },
  card: {
    name: 'card 2',
    note,
    date,
    plan: {
      ...{ name: 'card 2 of 17 May 2031', paper: 'letter', page: 1, pages: 2, white: 'stock-1' },
      cautions: ['Lead white: wash your hands.'],
      places: [
        {
          ...{ number: 4, kind: 'paint', label: 'Red earth 1, white 4', measure: '1 : 4 spoons' },
          parts: [
            { pigment: 'stock-2', parts: 1 },
            { pigment: 'stock-1', parts: 4 },
          ],
          ...{ x: 40, y: 41.5, width: 22, height: 16 },
        },
      ],
    },
    lots: [
      { pigment: 'stock-1', lot: '' },
      { pigment: 'stock-2', lot: '7' },
    ],
    leftOut: [4],
    reading: {
      ...{ date: '2031-05-18', byHand: false, sd: 1.5, unevenness: 1.1, referenceResidual: 0.7 },
      chart: 1.9,
      remarks: ['It was set right.'],
      places: [
        { number: 4, lab: [61, 18, 16], corners: [0.1, 0.2, 0.3, 0.21, 0.31, 0.4, 0.11, 0.41] },
      ],
      photo: { ...photo, file: 'd'.repeat(64) },
    },
  },
  curves: {
    name: 'measured in May',
    note,
    date,
    geometry: '45/0',
    specular: 'excluded',
    lots: [{ pigment: 'stock-2', lot: '7' }],
    samples: [
      { name: 'A1', parts: [{ pigment: 'stock-2', parts: 1 }], reflectance: bands(0.06, 0.01) },
      { name: 'A2', parts: [], reflectance: bands(0.3, 0.005) },
    ],
  },
  pile: {
    name: 'flesh',
    note,
    date,
    mixture,
    lots: [{ pigment: 'red-earth', lot: '7', entry: 'stock-2' }],
    seen: [45, 19, 17],
    known: 'by eye',
    reflectance: bands(0.15, 0.008),
  },
  leftover: { name: 'flesh', note, date, mixture, cm3: 3, kept: 'under film', used: '2031-05-18' },
};

/** The paints of a stored shelf, as the mixture search knows them. */
export const paintsOf = ({ paints }: ShelfBody): Shelf['paints'] =>
  paints.map(({ pigment, label, K, S }) => ({
    pigment,
    label,
    paint: { K: spectrum<'K'>(K), S: spectrum<'S'>(S) },
  }));
