import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layOutClothLine } from '../../src/drawing/cloth-line-layout.ts';
import {
  type Box,
  boxesOverlap,
  breakLines,
  estimateTextWidth,
} from '../../src/drawing/label-text.ts';
import { HEAP_AREA, heapSurface } from '../../src/drawing/paint-heap.ts';
import { boxOf } from '../../src/drawing/palette-board.ts';
import { layOutPalette } from '../../src/drawing/palette-layout.ts';
import { layOutRecipe } from '../../src/drawing/recipe-layout.ts';
import { evenly } from '../evenly.ts';

const names = fc.constantFrom(
  'titanium white',
  'lead-tin yellow, light',
  'yellow ochre',
  'vermilion',
  'red earth',
  'quinacridone magenta',
  'ultramarine',
  'green earth',
  'raw umber',
  'black',
  'Mmmmmmmmmmmmmmmmm',
);
const pile = fc.record({
  name: names,
  hex: fc.constantFrom('#f4f2ec', '#c8963c', '#243a86', '#1f1d1c', '#8f9a86'),
  amount: evenly(0.1, 40),
});
const piles = (most: number) => fc.array(pile, { minLength: 1, maxLength: most });
const inside = (box: Box, width: number, height: number) =>
  box.left >= -0.01 && box.top >= -0.01 && box.right <= width + 0.01 && box.bottom <= height + 0.01;

describe('the palette', () => {
  const laid = fc
    .record({
      pigments: piles(14),
      mixed: piles(10),
      shape: fc.constantFrom('oval' as const, 'square' as const),
      hand: fc.constantFrom('left' as const, 'right' as const),
      width: fc.integer({ min: 300, max: 1100 }),
    })
    .map((given) => ({
      given,
      out: layOutPalette(given.pigments, given.mixed, given.shape, given.hand, given.width),
    }));
  test('mixed piles keep the order given where they are asked to', () => {
    const mixed = ['#202020', '#f0f0f0', '#808080'].map((hex, i) => ({
      name: `pile ${i}`,
      hex,
      amount: 1,
    }));
    const rows = (order?: 'as given') =>
      layOutPalette([], mixed, 'oval', 'left', 720, order)
        .seats.filter(({ kind }) => kind === 'mixed')
        .map(({ index }) => index);
    expect(rows('as given')).toEqual([0, 1, 2]);
    expect(rows()).toEqual([1, 2, 0]);
  });
  const holeOf = ({ board, mirrored, width }: ReturnType<typeof layOutPalette>) =>
    boxOf(
      mirrored ? width - board.hole.x : board.hole.x,
      board.hole.y,
      board.hole.rx,
      board.hole.ry,
    );

  test('no label meets another, a pile of its neighbours or the hole', () => {
    fc.assert(
      fc.property(laid, ({ given, out }) => {
        expect(out.seats).toHaveLength(given.pigments.length + given.mixed.length);
        for (const [k, seat] of out.seats.entries()) {
          expect(boxesOverlap(seat.label, holeOf(out))).toBe(false);
          expect(inside(seat.label, out.width, out.height)).toBe(true);
          for (const [m, other] of out.seats.entries()) {
            if (m === k) continue;
            expect(boxesOverlap(seat.label, other.label)).toBe(false);
            expect(boxesOverlap(seat.label, boxOf(other.x, other.y, other.radius))).toBe(false);
          }
        }
      }),
      { seed: 11, numRuns: 150 },
    );
  });

  test('no pile lies on another, on the hole or over the edge', () => {
    fc.assert(
      fc.property(laid, ({ given, out }) => {
        expect(out.seats).toHaveLength(given.pigments.length + given.mixed.length);
        const hole = holeOf(out);
        const centre = { x: (hole.left + hole.right) / 2, y: (hole.top + hole.bottom) / 2 };
        for (const [k, seat] of out.seats.entries()) {
          const apart = Math.hypot(seat.x - centre.x, seat.y - centre.y);
          expect(apart).toBeGreaterThan(seat.radius + out.board.hole.rx);
          const x = out.mirrored ? out.width - seat.x : seat.x;
          expect(out.board.holds(x, seat.y, seat.radius * 0.95)).toBe(true);
          for (const other of out.seats.slice(k + 1)) {
            expect(Math.hypot(seat.x - other.x, seat.y - other.y)).toBeGreaterThan(
              seat.radius + other.radius,
            );
          }
        }
      }),
      { seed: 12, numRuns: 150 },
    );
  });

  test('areas are as the amounts', () => {
    const pigments = [1, 2, 4, 9].map((amount) => ({ name: `p${amount}`, hex: '#888888', amount }));
    const { seats } = layOutPalette(pigments, [], 'oval', 'left', 700);
    const one = (seats[0]?.radius ?? 0) ** 2;
    for (const [k, { amount }] of pigments.entries()) {
      expect((seats[k]?.radius ?? 0) ** 2 / one).toBeCloseTo(amount, 6);
    }
  });

  test('the first pigment sits beside the hole, for either hand', () => {
    const pigments = ['white', 'b', 'c', 'd', 'e'].map((name) => ({
      name,
      hex: '#888888',
      amount: 1,
    }));
    for (const hand of ['left', 'right'] as const) {
      for (const shape of ['oval', 'square'] as const) {
        const out = layOutPalette(pigments, [], shape, hand, 720);
        const hole = holeOf(out);
        const away = out.seats.map(({ x, y }) => Math.hypot(x - hole.left, y - hole.top));
        expect(away.indexOf(Math.min(...away))).toBe(0);
        expect((out.seats[0]?.x ?? 0) < 360).toBe(hand === 'left');
      }
    }
  });

  test('every name is somewhere to be read', () => {
    const counted = { written: 0, numbered: 0 };
    fc.assert(
      fc.property(laid, ({ given, out }) => {
        expect(out.seats).toHaveLength(given.pigments.length + given.mixed.length);
        for (const seat of out.seats) {
          const name = (seat.kind === 'pigment' ? given.pigments : given.mixed)[seat.index]?.name;
          if (seat.figure === undefined) {
            counted.written++;
            expect(seat.lines.join(' ')).toBe(name);
          } else {
            counted.numbered++;
            expect(out.key[seat.figure - 1]?.words).toMatch(new RegExp(`^${seat.figure} `));
          }
        }
      }),
      { seed: 13, numRuns: 50 },
    );
    expect(counted.written).toBeGreaterThan(50);
    expect(counted.numbered).toBeGreaterThan(20);
  });
});

describe('a line of cloths', () => {
  const hangings = fc.array(
    fc.record({
      name: names,
      share: evenly(0.001, 1),
      accent: fc.boolean(),
    }),
    { minLength: 1, maxLength: 7 },
  );

  test('names do not meet and stay on the page; what is pressed is 44 px or more', () => {
    fc.assert(
      fc.property(hangings, fc.integer({ min: 320, max: 1400 }), (given, width) => {
        const out = layOutClothLine(given, width);
        expect(out.places).toHaveLength(given.length);
        for (const [k, { label, press }] of out.places.entries()) {
          expect(inside(label.box, out.width, out.height)).toBe(true);
          expect(press.width).toBeGreaterThanOrEqual(43.4);
          for (const other of out.places.slice(k + 1)) {
            expect(boxesOverlap(label.box, other.label.box)).toBe(false);
          }
        }
        // Nothing that is pressed lies over another, and none sticks out.
        const presses = out.places.map(({ press }) => press).sort((a, b) => a.left - b.left);
        let end = 8;
        for (const { left, width: wide } of presses) {
          expect(left).toBeCloseTo(end, 6);
          end = left + wide;
        }
        expect(end).toBeLessThanOrEqual(width - 8 + 1e-6);
      }),
      { seed: 14, numRuns: 200 },
    );
  });

  test('widths follow the shares', () => {
    const out = layOutClothLine(
      [
        { name: 'a', share: 0.6 },
        { name: 'b', share: 0.3 },
        { name: 'c', share: 0.1 },
      ],
      1000,
    );
    const [a, b, c] = out.places.map(({ press }) => press.width);
    expect((a ?? 0) / (b ?? 1)).toBeCloseTo(2, 6);
    expect((b ?? 0) / (c ?? 1)).toBeCloseTo(3, 6);
  });
});

describe('a recipe', () => {
  test('piles have areas as their parts and words that do not meet', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            name: names,
            hex: fc.constant('#888888'),
            parts: fc.integer({ min: 1, max: 20 }),
          }),
          { minLength: 1, maxLength: 6 },
        ),
        fc.integer({ min: 280, max: 1000 }),
        (given, width) => {
          const out = layOutRecipe(given, width, ({ parts }) => `${parts} parts`);
          expect(out.piles).toHaveLength(given.length);
          const unit = (out.piles[0]?.radius ?? 0) ** 2 / (given[0]?.parts ?? 1);
          const boxes = out.piles.map(({ words, lines }) => {
            const wide = Math.max(...lines.map((line) => estimateTextWidth(line, 13)));
            return {
              left: words.x - wide / 2,
              right: words.x + wide / 2,
              top: words.y - 13,
              bottom: words.y + 16 * (lines.length - 1) + 3,
            };
          });
          for (const [k, { radius }] of out.piles.entries()) {
            expect(radius ** 2 / unit).toBeCloseTo(given[k]?.parts ?? 0, 6);
            const box = boxes[k];
            if (!box) continue;
            expect(inside(box, out.width, out.height)).toBe(true);
            for (const [m, other] of out.piles.entries()) {
              expect(boxesOverlap(box, boxOf(other.x, other.y, other.radius))).toBe(false);
              const next = boxes[m];
              if (m > k && next) expect(boxesOverlap(box, next)).toBe(false);
            }
            expect(boxesOverlap(box, boxOf(out.mixed.x, out.mixed.y, out.mixed.radius))).toBe(
              false,
            );
          }
        },
      ),
      { seed: 15, numRuns: 100 },
    );
  });
});

test('heaps of one amount cover one area, whatever their shape', () => {
  for (let seed = 0; seed < 20; seed++) {
    const { columns, rows, x, y } = heapSurface(seed);
    const rim = [
      ...Array.from({ length: columns - 1 }, (_, i) => i),
      ...Array.from({ length: rows - 1 }, (_, j) => j * columns + columns - 1),
      ...Array.from({ length: columns - 1 }, (_, i) => rows * columns - 1 - i),
      ...Array.from({ length: rows - 1 }, (_, j) => (rows - 1 - j) * columns),
    ].map((at) => [x[at] ?? 0, y[at] ?? 0] as const);
    let area = 0;
    for (const [k, [ax, ay]] of rim.entries()) {
      const [bx, by] = rim[(k + 1) % rim.length] ?? [0, 0];
      area += (ax * by - bx * ay) / 2;
      expect(Math.hypot(ax, ay)).toBeLessThan(1.15);
    }
    expect(Math.abs(area)).toBeCloseTo(HEAP_AREA, 9);
  }
});

test('words are cut at spaces, and shortened only where they must be', () => {
  expect(breakLines('lead-tin yellow', 13, 200)).toEqual(['lead-tin yellow']);
  expect(breakLines('lead-tin yellow', 13, 80)).toEqual(['lead-tin', 'yellow']);
  expect(breakLines('quinacridone', 13, 50)[0]).toMatch(/…$/);
});
