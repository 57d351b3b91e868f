import { describe, expect, test } from 'vitest';
import type { Lab } from '../../src/colour/lab.ts';
import {
  inManualOrder,
  lightFirst,
  mixedOrder,
  moveInOrder,
  placedAt,
  placesOf,
  proposeSeats,
  seatOrder,
} from '../../src/palette/seat-order.ts';
import { askedOf, dice, passageOf, pileOf, planned, randomDay, STARTER, WHOLE } from './made.ts';

const keys = (list: readonly { key: string }[]) => list.map(({ key }) => key);
const placed = (key: string, lab: Lab, tint = false) => ({ key, lab, tint });

test('proposed: the white first, then light to dark', () => {
  const seats = proposeSeats(STARTER.shelf);
  expect(seats).toHaveLength(STARTER.shelf.paints.length);
  expect(seats.slice(0, 3)).toEqual(['lead_white', 'lead_tin_yellow', 'yellow_ochre']);
});

test('200 random sets: white first, seats never cross, mixed piles light to dark', () => {
  const d = dice(5);
  const all = STARTER.shelf.paints.map(({ pigment }) => pigment);
  const seats = proposeSeats(STARTER.shelf);
  // As often white as any colour: tints are mixed as well as full colours.
  const mostlyWhite = [...all, ...all.map(() => 'lead_white')];
  const counted = { white: 0, tints: 0, pure: 0, both: 0 };
  for (let n = 0; n < 200; n++) {
    const day = planned(randomDay(d, mostlyWhite), STARTER);
    for (const { pigments, mixed } of day.palettes) {
      const order = keys(pigments);
      if (order.includes('lead_white')) {
        counted.white++;
        expect(order[0]).toBe('lead_white');
      }
      expect(order).toEqual(seats.filter((seat) => order.includes(seat)));
      for (const tint of [true, false]) {
        const L = mixed.filter((one) => one.tint === tint).map(({ lab }) => Math.round(lab[0]));
        expect(L).toEqual(L.toSorted((a, b) => b - a));
        if (L.length > 1) counted[tint ? 'tints' : 'pure']++;
      }
      const tints = mixed.map((one) => one.tint);
      expect(tints).toEqual(tints.toSorted((a, b) => Number(b) - Number(a)));
      if (new Set(tints).size === 2) counted.both++;
    }
  }
  for (const [what, times] of Object.entries(counted)) expect(times, what).toBeGreaterThan(50);
});

test('a whiter second white does not displace the studio white', () => {
  const parts = { titanium_white: 1, lead_white: 1, bone_black: 1 };
  const day = planned(askedOf([passageOf('p', [pileOf('grey', parts)])]), WHOLE);
  const { pigments } = day.palettes[0]!;
  expect(keys(pigments).slice(0, 2)).toEqual(['lead_white', 'titanium_white']);
  expect(pigments[1]!.lab[0]).toBeGreaterThan(pigments[0]!.lab[0]);
});

test('the studio’s own order is kept when neighbours are absent, and a guest moves nobody', () => {
  const seats = ['w', 'black', 'red', 'yellow'];
  const set = [
    placed('yellow', [80, 0, 60]),
    placed('black', [20, 0, 0]),
    placed('w', [95, 0, 0]),
    placed('blue', [50, 0, -40]),
  ];
  const order = keys(seatOrder(set, seats, 'w'));
  expect(order.filter((key) => key !== 'blue')).toEqual(['w', 'black', 'yellow']);
  expect(order).toContain('blue');
});

test('light to dark by whole L*, ties warm first', () => {
  const order = [
    placed('cool', [50.3, -20, -20]),
    placed('warm', [49.8, 20, 20]),
    placed('light', [51, 0, 0]),
  ].sort(lightFirst);
  expect(keys(order)).toEqual(['light', 'warm', 'cool']);
});

test('tints of the white before the other mixtures, also where they are darker', () => {
  const order = mixedOrder([placed('pure', [60, 0, 0]), placed('tint', [50, 0, 0], true)]);
  expect(keys(order)).toEqual(['tint', 'pure']);
});

test('moved by key, placed by hand, restored by forgetting the order', () => {
  const order = ['a', 'b', 'c', 'd'];
  expect(moveInOrder(order, 'b', 1)).toEqual(['a', 'c', 'b', 'd']);
  expect(moveInOrder(order, 'b', -9)).toEqual(['b', 'a', 'c', 'd']);
  expect(moveInOrder(order, 'x', 1)).toBe(order);
  expect(placedAt(order, 'd', 1)).toEqual(['a', 'd', 'b', 'c']);
  expect(moveInOrder(moveInOrder(order, 'b', 1), 'b', -1)).toEqual(order);
  expect(order).toEqual(['a', 'b', 'c', 'd']);
});

test('an order set by hand holds for what it names', () => {
  const piles = [placed('a', [90, 0, 0]), placed('b', [50, 0, 0]), placed('c', [20, 0, 0])];
  expect(keys(inManualOrder(piles, ['c', 'gone', 'a']))).toEqual(['c', 'a', 'b']);
  const asked = askedOf([
    passageOf('p', [
      pileOf('light', { lead_white: 3, raw_umber: 1 }),
      pileOf('dark', { lead_white: 1, raw_umber: 3 }),
    ]),
  ]);
  const set = { ...asked, palettes: [{ ...asked.palettes[0]!, order: ['dark', 'light'] }] };
  const rows = (of: typeof asked) => keys(planned(of, STARTER).palettes[0]!.mixed);
  expect(rows(set)).toEqual(['dark', 'light']);
  expect(rows(asked)).toEqual(['light', 'dark']);
});

describe('places along the edge', () => {
  const seats = Array.from({ length: 12 }, (_, i) => `p${i}`);
  const white = 'p0';

  test('a pigment keeps its place when its neighbours are absent', () => {
    const all = placesOf(seats, seats, white);
    expect(all[0]).toBe(0);
    expect(all.at(-1)).toBe(1);
    for (const some of [['p0', 'p3', 'p8'], ['p3', 'p5', 'p11'], ['p8']])
      expect(placesOf(some, seats, white)).toEqual(some.map((key) => all[seats.indexOf(key)]));
  });

  test('200 random sets: none crosses another, none lies upon another, all on the edge', () => {
    const d = dice(5);
    for (let n = 0; n < 200; n++) {
      const order = Array.from({ length: d.whole(1, 40) }, (_, i) => `p${i}`);
      const here = order.filter(() => d.next() < 0.4);
      const places = placesOf(
        here,
        order.filter(() => d.next() < 0.9),
        white,
      );
      expect(places).toHaveLength(here.length);
      const apart = Math.min(0.085, 1 / Math.max(1, here.length - 1));
      for (const [i, place] of places.entries()) {
        expect(place).toBeGreaterThanOrEqual(0);
        expect(place).toBeLessThanOrEqual(1);
        if (i > 0) expect(place - places[i - 1]!).toBeGreaterThanOrEqual(apart - 1e-9);
      }
    }
  });
});
