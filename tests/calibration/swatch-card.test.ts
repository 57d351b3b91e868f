import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cardPaintOf } from '../../src/calibration/accept-calibration.ts';
import { drawCard, planOf } from '../../src/calibration/card-svg.ts';
import {
  MARK_MM,
  markCentres,
  measureOf,
  PAPER_MM,
  planCards,
  type SwatchCard,
} from '../../src/calibration/swatch-card.ts';
import { escapeHtml } from '../../src/escape-html.ts';

const white = cardPaintOf('lead_white');
const paints = ['yellow_ochre', 'vermilion', 'ultramarine', 'smalt', 'raw_umber'].map((id) =>
  cardPaintOf(id),
);

describe('the plan of a card', () => {
  test('the white first, then each paint alone and its tints', () => {
    const [card, more] = planCards(white, paints, { tints: [4, 16] });
    expect(more).toBeUndefined();
    const painted = card!.places.filter(({ kind }) => kind === 'paint');
    expect(painted[0]!.parts).toEqual([{ pigment: 'lead_white', parts: 1 }]);
    expect(painted.slice(1, 4).map(({ label }) => label)).toEqual([
      'Yellow ochre, alone',
      'Yellow ochre 1, white 4',
      'Yellow ochre 1, white 16',
    ]);
    expect(painted).toHaveLength(1 + 5 * 3);
    expect(card!.places.map(({ kind }) => kind)).toEqual([
      'white',
      'grey',
      'black',
      ...painted.map(() => 'paint'),
      'grey',
      'white',
    ]);
  });

  test('ratios by a simple measure, and by weight where the pastes are known', () => {
    // 1 cm3 of one of 1.5 g/cm3 and 4 of one of 3: 1.5 g and 12 g, which is 1 to 8.
    const one = { parts: 1, density: 1.5 };
    expect(measureOf([one, { parts: 4, density: 3 }])).toBe('1 : 4 level spoons; 1.0 : 8.0 g');
    expect(measureOf([one, { parts: 4, density: null }])).toBe('1 : 4 level spoons');
  });

  test('no two places meet, none meets a mark, all lie on the page; numbers run on', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.constantFrom('A4' as const, 'letter' as const),
        fc.array(fc.integer({ min: 1, max: 32 }), { minLength: 0, maxLength: 7 }),
        (count, paper, tints) => {
          const many = Array.from({ length: count }, (_, i) => ({
            ...paints[0]!,
            pigment: `paint ${i}`,
          }));
          const cards = planCards(white, many, { paper, tints });
          const numbers = new Set<string>();
          for (const card of cards) {
            expectApart(card);
            for (const { number } of card.places) numbers.add(`${card.page}/${number}`);
          }
          const painted = cards.flatMap((c) => c.places.filter(({ kind }) => kind === 'paint'));
          expect(painted).toHaveLength(1 + count * (1 + tints.length));
          expect(numbers.size).toBe(cards.flatMap(({ places }) => places).length);
        },
      ),
      { numRuns: 30 },
    );
  });

  test('what is no tint is refused', () => {
    expect(() => planCards(white, paints, { tints: [0] })).toThrow(RangeError);
  });
});

function expectApart({ paper, places }: SwatchCard): void {
  const [width, height] = PAPER_MM[paper];
  for (const place of places) {
    const [u, v] = [place.width / 2, place.height / 2];
    expect(place.x - u).toBeGreaterThan(6);
    expect(place.y - v).toBeGreaterThan(30);
    expect(place.x + u).toBeLessThan(width - 6);
    expect(place.y + v).toBeLessThan(height - 25);
    for (const other of places)
      if (other !== place)
        expect(
          Math.abs(other.x - place.x) >= place.width + 8 ||
            Math.abs(other.y - place.y) >= place.height + 8,
        ).toBe(true);
    for (const [x, y] of markCentres(paper))
      expect(Math.max(Math.abs(x - place.x) - u, Math.abs(y - place.y) - v)).toBeGreaterThan(
        MARK_MM.outer + 2,
      );
  }
}

describe('its drawing', () => {
  const [card] = planCards(white, paints) as [SwatchCard];
  const svg = drawCard(card);

  test('is well-formed, in millimetres, and says how to paint and photograph it', () => {
    expect(svg).toMatch(/^<svg [^>]*width="210mm" height="297mm" viewBox="0 0 210 297"/);
    expect(svg.match(/<circle/g)).toHaveLength(9);
    expect(svg).toMatch(/opaque, even/);
    expect(svg).toMatch(/no gloss/);
    expect(svg).toMatch(/data sheet/);
    for (const { label } of paints) expect(svg).toContain(`${label}, alone`);
    // Lead and mercury are named with their danger.
    expect(svg).toMatch(/Lead white[^<]*lead/i);
    expect(svg).toMatch(/Vermilion[^<]*mercury/i);
    const opened = svg.match(/<(\w+)[^>]*[^/]>/g)!.length;
    expect(svg.match(/<\/\w+>/g)).toHaveLength(opened);
  });

  test('carries its plan, whatever the paints are called', () => {
    expect(planOf(svg)).toEqual(card);
    const odd = { ...paints[0]!, pigment: 'a & b <c>', label: '“Ocre” & <jaune>' };
    const [named] = planCards(white, [odd]) as [SwatchCard];
    expect(planOf(drawCard(named))).toEqual(named);
    expect(drawCard(named)).not.toMatch(/<jaune>/);
  });

  test('what is no card, or a spoilt one, has no plan', () => {
    expect(planOf('<svg></svg>')).toBeNull();
    const spoilt = (sound: string, to: string) => {
      expect(svg).toContain(escapeHtml(sound));
      return planOf(svg.replace(escapeHtml(sound), escapeHtml(to)));
    };
    expect(spoilt('"version":1', '"version":2')).toBeNull();
    expect(spoilt('"paper":"A4"', '"paper":"A0"')).toBeNull();
    expect(spoilt('"number":1,', '"number":"1",')).toBeNull();
    expect(spoilt('{"kind"', '{"kind')).toBeNull();
  });
});
