import { describe, expect, test } from 'vitest';
import { LEFTOVER_WORDS } from '../../src/messages/palette-messages.ts';
import { plainNumber } from '../../src/number-format.ts';
import {
  keepingWays,
  keepsDays,
  type Leftover,
  leftoverFromPile,
  leftoverState,
  mayLieUnderWater,
  offersOf,
} from '../../src/palette/leftovers.ts';
import { sheetOf } from '../../src/sheet/morning-sheet.ts';
import { askedOf, partsOf, passageOf, pileOf, planned, STARTER } from './made.ts';

const leftover = (parts: Record<string, number>, more: Partial<Leftover> = {}): Leftover => ({
  id: 'one',
  name: 'heap',
  parts: partsOf(parts),
  cm3: 1.5,
  kept: 'under film',
  date: '2026-05-13',
  ...more,
});
const stateAfter = (days: number, parts: Record<string, number>, more: Partial<Leftover> = {}) =>
  leftoverState(leftover(parts, more), `2026-05-${13 + days}`);

describe('how a heap is kept', () => {
  // Handbook sheet, section 6: under water only lead white, lead-tin yellow, massicot and red lead
  // (MS Fr. 640 f.64r and common practice).
  test.each([
    ['lead_white', true],
    ['lead_tin_yellow', true],
    ['massicot', true],
    ['red_lead', true],
    ['madder_lake', false],
    ['vermilion', false],
    ['azurite', false],
    ['smalt', false],
    ['verdigris', false],
    ['indigo', false],
    ['yellow_ochre', false],
  ])('%s under water: %s', (pigment, may) => {
    expect(mayLieUnderWater(partsOf({ [pigment]: 1 }))).toBe(may);
    expect(keepingWays(partsOf({ [pigment]: 1 })).includes('under water')).toBe(may);
  });
  test('one pigment that may not decides for the pile', () => {
    expect(mayLieUnderWater(partsOf({ lead_white: 9, madder_lake: 1 }))).toBe(false);
  });
  test('drowned all the same, it is spoilt', () => {
    expect(stateAfter(0, { vermilion: 1 }, { kept: 'under water' })).toBe('spoilt');
  });
});

// The same section: umbers, red lead, lead-tin yellow, smalt, verdigris 1-2 days; lead white, ochres,
// siennas 2-5; lakes, vermilion, ultramarine, bone black 5-10 (estimates).
test.each([
  ['raw_umber', [1, 2]],
  ['red_lead', [1, 2]],
  ['lead_tin_yellow', [1, 2]],
  ['smalt', [1, 2]],
  ['verdigris', [1, 2]],
  ['lead_white', [2, 5]],
  ['yellow_ochre', [2, 5]],
  ['raw_sienna', [2, 5]],
  ['burnt_sienna', [2, 5]],
  ['madder_lake', [5, 10]],
  ['vermilion', [5, 10]],
  ['ultramarine', [5, 10]],
  ['bone_black', [5, 10]],
])('%s keeps %j days', (pigment, days) => {
  expect(keepsDays(partsOf({ [pigment]: 1 }), 'under film')).toEqual(days);
});

test('it ages, and is discarded when it has skinned', () => {
  const states = [1, 2, 3, 5, 6].map((days) => stateAfter(days, { yellow_ochre: 1 }));
  expect(states).toEqual(['fresh', 'fresh', 'ageing', 'ageing', 'past']);
  expect(stateAfter(1, { yellow_ochre: 1 }, { skinned: true })).toBe('skinned');
  expect(LEFTOVER_WORDS.skinned).toMatch(/discard/);
  expect(stateAfter(2, { yellow_ochre: 1 }, { kept: 'open' })).toBe('past');
});

test('the quickest drier of some weight decides for a mixture', () => {
  expect(keepsDays(partsOf({ madder_lake: 3, raw_umber: 1 }), 'under film')).toEqual([1, 2]);
  expect(keepsDays(partsOf({ madder_lake: 99, raw_umber: 1 }), 'under film')).toEqual([5, 10]);
});

describe('offered next time', () => {
  const pile = { name: 'sky', parts: partsOf({ lead_white: 6, azurite: 2 }), lab: [70, -5, -20] };
  const piles = [{ ...pile, lab: pile.lab as [number, number, number] }];
  const offered = (of: Leftover) => offersOf([of], piles, '2026-05-14')[0]!.piles;
  test('to the pile of the same mixture, whatever its parts are counted in', () => {
    expect(offered(leftover({ lead_white: 3, azurite: 1 }))).toEqual(['sky']);
  });
  test('to a pile of the same colour', () => {
    expect(offered(leftover({ smalt: 1, lead_white: 1 }, { lab: [70.2, -5, -20] }))).toEqual([
      'sky',
    ]);
    expect(offered(leftover({ smalt: 1, lead_white: 1 }, { lab: [60, -5, -20] }))).toEqual([]);
  });
  test('what was put away of a pile with let-downs serves that pile again', () => {
    const mist = {
      name: 'mist',
      parts: [
        { pigment: 'lead_white', parts: 5 },
        { pigment: 'bone_black', parts: 1, letDown: true },
      ],
      letDowns: [{ pigment: 'bone_black', white: 'lead_white', parts: 1 as const, whiteParts: 10 }],
      lab: [80, 0, 0] as const,
    };
    const away = leftoverFromPile(mist, {
      id: 'a',
      cm3: 1,
      kept: 'under film',
      date: '2026-05-13',
    });
    expect(away.parts.reduce((sum, { parts }) => sum + parts, 0)).toBeCloseTo(1, 12);
    const { lab: _, ...colourless } = away;
    expect(offersOf([colourless], [mist], '2026-05-14')[0]!.piles).toEqual(['mist']);
  });
  test('never once it is spoilt', () => {
    expect(offered(leftover({ lead_white: 3, azurite: 1 }, { skinned: true }))).toEqual([]);
  });
  test('the oldest first; nothing of the future, and nothing empty', () => {
    const three = ['2026-05-13', '2026-05-11', '2026-05-20'].map((date) =>
      leftover({ vermilion: 1 }, { date, id: date }),
    );
    const offers = offersOf([...three, leftover({ vermilion: 1 }, { cm3: 0 })], [], '2026-05-14');
    expect(offers.map((one) => one.leftover.date)).toEqual(['2026-05-11', '2026-05-13']);
  });
});

test('it stands on the sheet of the palette that it serves', () => {
  const asked = {
    ...askedOf([]),
    palettes: [
      { name: 'One', passages: [passageOf('a', [pileOf('earth', { red_earth: 1 })])] },
      { name: 'Two', passages: [passageOf('b', [pileOf('ochre', { yellow_ochre: 1 })])] },
    ],
    leftovers: [
      leftover({ yellow_ochre: 2 }, { id: 'a' }),
      leftover({ bone_black: 1 }, { id: 'b', skinned: true, name: 'old black' }),
    ],
  };
  const day = planned(asked, STARTER);
  const [one, two] = [0, 1].map((at) => sheetOf(day, at, STARTER, plainNumber).useFirst.join());
  expect(one).toMatch(/old black.*discard/);
  expect(two).toMatch(/use it first for “ochre”/);
});
