import { describe, expect, test } from 'vitest';
import { paletteFaultWords } from '../../src/messages/palette-faults.ts';
import { leftOffWords } from '../../src/messages/palette-messages.ts';
import { plainNumber } from '../../src/number-format.ts';
import type { Studio } from '../../src/palette/passage.ts';
import { layerOfPile } from '../../src/palette/piles-from-recipes.ts';
import { PIGMENTS } from '../../src/pigment/pigment-facts.ts';
import { sheetOf } from '../../src/sheet/morning-sheet.ts';
import { planDay } from '../../src/sheet/plan-day.ts';
import {
  askedOf,
  dice,
  entryOf,
  passageOf,
  pileOf,
  planned,
  randomDay,
  STARTER,
  shelfWith,
  stockOf,
  WHOLE,
} from '../palette/made.ts';

const TOXIC = PIGMENTS.filter(({ hazard }) => hazard.level.includes('toxic'));
const NAMED = new Set(TOXIC.flatMap(({ id, name }) => [id, name]));

describe('cautions', () => {
  const d = dice(23);
  const all = WHOLE.shelf.paints.map(({ pigment }) => pigment);
  const stock = stockOf(
    all.map((pigment, i) =>
      entryOf(pigment, { form: i % 2 === 0 ? 'powder' : 'tube', lot: String(i) }),
    ),
  );
  const studio: Studio = { shelf: WHOLE.shelf, stock };
  const days = Array.from({ length: 60 }, () => planned(randomDay(d, all), studio));

  test('appear for every pigment that needs one and only for those', () => {
    let [warned, unwarned] = [0, 0];
    for (const day of days)
      for (const [at, { pigments }] of day.palettes.entries()) {
        const told = sheetOf(day, at, studio, plainNumber).cautions.flatMap(
          (group) => group.pigments,
        );
        // By hand from the sheet: any class but low; any powder that is handled; zinc into no sink.
        const wanted = pigments.filter(({ key, supply }) => {
          const level = PIGMENTS.find(({ id }) => id === key)!.hazard.level;
          const dry = supply.draws.some(({ entry }) => entry?.form === 'powder');
          return level !== 'low' || dry || key === 'zinc_white';
        });
        expect(told.toSorted()).toEqual(wanted.map(({ key }) => key).toSorted());
        warned += wanted.length;
        unwarned += pigments.length - wanted.length;
      }
    expect(warned).toBeGreaterThan(100);
    expect(unwarned).toBeGreaterThan(100);
  });

  test('oily rags, solvents and what comes first stand on every sheet', () => {
    for (const day of days)
      for (const at of day.palettes.keys()) {
        const heads = sheetOf(day, at, studio, plainNumber).always.map(({ head }) => head);
        expect(heads.join()).toMatch(/rags.*Solvents.*first/);
      }
  });

  test('no toxic powder is ever handled', () => {
    const forms = new Map<string, number>();
    for (const { palettes } of days)
      for (const { supply, key } of palettes.flatMap(({ pigments }) => pigments))
        for (const { entry } of supply.draws)
          if (NAMED.has(key)) {
            const form = entry?.form ?? 'to be bought';
            forms.set(form, (forms.get(form) ?? 0) + 1);
          }
    // Half of them stand there as powder, which nobody takes: paste is to be bought.
    expect([...forms.keys()].toSorted()).toEqual(['to be bought', 'tube']);
    for (const [form, times] of forms) expect(times, form).toBeGreaterThan(20);
  });
});

test('200 random days with pupils about: nothing toxic on any sheet', () => {
  const d = dice(42);
  const studio: Studio = {
    shelf: shelfWith(
      'lead_white',
      'lead_tin_yellow',
      'vermilion',
      'titanium_white',
      'yellow_ochre',
      'red_earth',
      'ultramarine',
      'bone_black',
    ),
    stock: null,
  };
  const all = studio.shelf.paints.map(({ pigment }) => pigment);
  let [swaps, sheets, offers, names] = [0, 0, 0, 0];
  for (let n = 0; n < 200; n++) {
    const asked = {
      ...randomDay(d, all, { pupils: true, people: ['Ines'] }),
      leftovers: [
        {
          id: 'x',
          name: 'x',
          parts: [{ pigment: d.one(all), parts: 1 }],
          cm3: 1,
          kept: 'under film' as const,
          date: '2026-05-13',
        },
      ],
    };
    const day = planned(asked, studio);
    for (const [at, palette] of day.palettes.entries()) {
      swaps += palette.piles.filter(({ swap }) => swap !== null).length;
      const sheet = sheetOf(day, at, studio, plainNumber);
      const shown = [
        ...palette.pigments.flatMap(({ key, label }) => [key, label]),
        ...palette.offers.flatMap(({ leftover }) => leftover.parts.map(({ pigment }) => pigment)),
        ...sheet.prepare.flatMap(({ rows }) => rows.flatMap((row) => [row.pigment, row.label])),
        ...sheet.piles.flatMap(({ parts }) => parts.map(({ label }) => label)),
        ...sheet.cautions.flatMap(({ pigments }) => pigments),
      ];
      sheets++;
      offers += palette.offers.length;
      names += shown.length;
      expect(shown.filter((name) => NAMED.has(name))).toEqual([]);
      expect(sheet.acknowledge).toEqual([]);
      expect(sheet.cautions.some(({ toxic }) => toxic)).toBe(false);
      expect(sheet.pupils).toBe(true);
      expect(JSON.stringify(sheet)).not.toMatch(/lead white|lead-tin|vermilion/i);
    }
  }
  expect(swaps).toBeGreaterThan(100);
  expect(sheets).toBeGreaterThan(200);
  expect(names).toBeGreaterThan(2000);
  expect(offers).toBeGreaterThan(50);
});

test('a pile that only toxic pigments make is left off, and says so', () => {
  const studio: Studio = { shelf: shelfWith('lead_white', 'vermilion'), stock: null };
  const asked = askedOf([passageOf('Cloth', [pileOf('light', { vermilion: 1 })])], {
    pupils: true,
  });
  const { leftOff } = planned(asked, studio);
  expect(leftOff.map(leftOffWords).join()).toMatch(/“light” of Cloth is left off/);
});

test('a shelf file that names lead white in its own words is lead all the same', () => {
  const paints = STARTER.shelf.paints.map((paint) =>
    paint.pigment === 'lead_white' ? { ...paint, pigment: 'Flake white, no. 2' } : paint,
  );
  const studio: Studio = { shelf: { ...STARTER.shelf, paints, white: null }, stock: null };
  const asked = askedOf([passageOf('p', [pileOf('white', { 'Flake white, no. 2': 1 })])]);
  const day = planned(asked, studio);
  expect(sheetOf(day, 0, studio, plainNumber).cautions[0]).toMatchObject({ toxic: true });
});

describe('dry powder of what is toxic', () => {
  const studio: Studio = {
    shelf: WHOLE.shelf,
    stock: stockOf([
      entryOf('lead_white', { form: 'powder', amount: 500, unit: 'g' }),
      entryOf('yellow_ochre', { form: 'powder', amount: 100, unit: 'g', lot: '7' }),
    ]),
  };
  const asked = askedOf([passageOf('Foam', [pileOf('foam', { lead_white: 4, yellow_ochre: 1 })])]);
  const day = planned(asked, studio);
  const sheet = sheetOf(day, 0, studio, plainNumber);

  test('is refused, with its stand-in and the nearest other mixture', () => {
    expect(day.lacks).toMatchObject([{ pigment: 'lead_white', dryRefused: true }]);
    expect(sheet.lacks.join(' ')).toMatch(/ready-wetted paste.*stand-in.*Nearest other for “foam”/);
    const [row] = sheet.prepare.find(({ tools }) => tools.startsWith('lead'))!.rows;
    expect(row).toMatchObject({
      act: 'set out',
      lot: 'wetted paste only, to be bought',
      oil: null,
    });
  });
  test('and does not leave the stock', () => {
    expect(day.takings.map(({ entry }) => entry)).toEqual(['yellow_ochre-7-powder']);
  });
  test('paste beside it is taken instead', () => {
    const both = stockOf([...studio.stock!.entries, entryOf('lead_white', { lot: '3' })]);
    const again = planned(asked, { ...studio, stock: both });
    expect(again.lacks).toEqual([]);
    const { prepare } = sheetOf(again, 0, { ...studio, stock: both }, plainNumber);
    const [row] = prepare.find(({ tools }) => tools.startsWith('lead'))!.rows;
    expect(row!.lot).toContain('3');
  });
});

describe('glazes wait for a dry ground', () => {
  const glaze = pileOf('glaze', { madder_lake: 1 }, { film: 'glaze' });
  const body = pileOf('body', { red_earth: 1 });
  const with_ = (layers: Parameters<typeof passageOf>[2]) =>
    planned(askedOf([passageOf('Cloth', [glaze, body], layers)]), STARTER);
  const red = { film: 'body colour' as const, parts: [{ pigment: 'red_earth', parts: 1 }] };

  test('yesterday’s coat: the glaze waits, body colour goes on', () => {
    const day = with_([{ ...red, date: '2026-05-13' }]);
    expect(day.palettes[0]!.piles.map(({ pile }) => pile.name)).toEqual(['body']);
    expect(day.leftOff.map(leftOffWords).join()).toMatch(
      /“glaze” of Cloth waits: its ground is wet by now\. It should be dry between 16 May and 20 May\./,
    );
  });
  test('a fortnight old: both', () => {
    const day = with_([{ ...red, date: '2026-04-30' }]);
    expect(day.leftOff).toEqual([]);
    const names = day.palettes[0]!.piles.map(({ pile }) => pile.name);
    expect(names.toSorted()).toEqual(['body', 'glaze']);
  });
  test('where several piles were laid, the wettest counts', () => {
    const date = '2026-05-05';
    const layers = [
      { ...red, date, parts: [{ pigment: 'bone_black', parts: 1 }] },
      { ...red, date },
      { ...red, date: '2026-04-01' },
    ];
    const day = with_(layers);
    expect(day.leftOff).toHaveLength(1);
    expect(day.palettes[0]!.piles[0]!.layerWarnings.map(({ rule }) => rule)).toEqual([
      'quick over slow',
      'black underneath',
    ]);
  });
  test('between: the finger decides', () => {
    const date = '2026-05-10';
    expect(with_([{ ...red, date }]).leftOff).toHaveLength(1);
    const felt = { date: '2026-05-14', state: 'touch-dry' as const };
    expect(with_([{ ...red, date, felt }]).leftOff).toEqual([]);
  });
});

test('a pile whose mixture was deleted is left off and named; the rest of the day stands', () => {
  const day = planned(
    askedOf([passageOf('Bank', [pileOf('sedge', null), pileOf('mud', { raw_umber: 1 })])]),
    STARTER,
  );
  expect(day.palettes[0]!.piles).toHaveLength(1);
  expect(day.leftOff.map(leftOffWords)).toEqual([
    '“sedge” of Bank is left off: its mixture is no longer in the book. Choose another for it.',
  ]);
});

test('a thickness or an amount of oil out of the usual is remarked', () => {
  const thick = pileOf('thick', { madder_lake: 1 }, { film: 'glaze', filmUm: 90, spareOil: 2 });
  const { mind } = sheetOf(
    planned(askedOf([passageOf('p', [thick])]), STARTER),
    ...([0, STARTER, plainNumber] as const),
  );
  expect(mind.join('\n')).toMatch(/90 µm thick, where glaze is usually 5 to 20\./);
  expect(mind.join('\n')).toMatch(/thin the film, not the pigment/);
});

test('what was laid yesterday lies underneath today', () => {
  const asked = askedOf([passageOf('p', [pileOf('dark', { bone_black: 1 })])]);
  const [pile] = planned(asked, STARTER).palettes[0]!.piles;
  const layer = layerOfPile(pile!, '2026-05-13');
  const next = askedOf([passageOf('p', [pileOf('light', { lead_white: 1 })], [layer])]);
  const [over] = planned(next, STARTER).palettes[0]!.piles;
  expect(over!.layerWarnings.map(({ rule }) => rule)).toContain('black underneath');
});

test('a shelf whose parts are no volumes: parts, but no grams', () => {
  for (const basis of ['mass', 'unknown'] as const) {
    const studio: Studio = { shelf: { ...STARTER.shelf, basis }, stock: STARTER.stock };
    const day = planned(
      askedOf([passageOf('p', [pileOf('grey', { lead_white: 3, bone_black: 1 })])]),
      studio,
    );
    const sheet = sheetOf(day, 0, studio, plainNumber);
    expect(sheet.piles[0]!.parts.map(({ parts }) => parts)).toEqual([3, 1]);
    const rows = sheet.prepare.flatMap((group) => group.rows);
    expect(rows.map(({ weigh, oil }) => [weigh, oil])).toEqual([
      ['by parts', null],
      ['by parts', null],
    ]);
    expect(JSON.stringify(sheet.prepare)).not.toMatch(/\d g"/);
    expect(sheet.prepareNotes.join()).toMatch(/no grams/);
    expect(day.takings).toEqual([]);
  }
});

test('a pigment without figures is named, and not weighed', () => {
  const studio: Studio = {
    shelf: STARTER.shelf,
    stock: stockOf([entryOf('saffron', { form: 'powder', amount: 5, unit: 'g' })]),
  };
  const day = planned(askedOf([passageOf('p', [pileOf('yellow', { saffron: 1 })])]), studio);
  const sheet = sheetOf(day, 0, studio, plainNumber);
  expect(sheet.prepare[0]!.rows[0]!.weigh).toBe('not weighed');
  expect(sheet.prepareNotes.join()).toMatch(/Saffron cannot be weighed/);
});

test('a paint that nobody knows is named, and the day stands', () => {
  const day = planned(askedOf([passageOf('p', [pileOf('m', { moonstone: 1 })])]), STARTER);
  const { mind, prepare } = sheetOf(day, 0, STARTER, plainNumber);
  expect(mind).toEqual([expect.stringMatching(/^“moonstone” is no paint of this shelf.*\.$/)]);
  expect(prepare[0]!.rows[0]).toMatchObject({ weigh: 'by volume', oil: null });
});

test('a pile that lacks several pigments is told its nearest other once', () => {
  const studio: Studio = { shelf: STARTER.shelf, stock: stockOf([entryOf('raw_umber')]) };
  const pile = pileOf('grey', { lead_white: 3, bone_black: 1, ultramarine: 1 });
  const day = planned(askedOf([passageOf('p', [pile])]), studio);
  const { lacks } = sheetOf(day, 0, studio, plainNumber);
  expect(lacks.filter((words) => words.includes('the shelf lacks'))).toHaveLength(3);
  expect(lacks.filter((words) => words.includes('“grey”'))).toHaveLength(1);
});

test('what a sheet prints of paint is never below need, of oil never above; nothing is lost between', () => {
  const d = dice(61);
  const all = WHOLE.shelf.paints.map(({ pigment }) => pigment);
  const studio: Studio = {
    shelf: WHOLE.shelf,
    stock: stockOf(
      all.flatMap((pigment) => [
        entryOf(pigment, { form: 'powder', lot: 'a' }),
        entryOf(pigment, { lot: 'b' }),
      ]),
    ),
  };
  const counted = { paste: 0, powder: 0 };
  for (let n = 0; n < 40; n++) {
    const day = planned(randomDay(d, all), studio);
    for (const [at, palette] of day.palettes.entries()) {
      const rows = sheetOf(day, at, studio, plainNumber).prepare.flatMap((group) => group.rows);
      const exact = palette.preparing.flatMap(({ supply }) => supply.draws);
      expect(rows).toHaveLength(exact.length);
      for (const [i, { weighed, cm3 }] of exact.entries()) {
        const { weigh, oil, cm3: printed } = rows[i]!;
        const number = (words: string) => Number(/[\d.]+/.exec(words)?.[0]);
        expect(printed).toBeGreaterThanOrEqual(cm3 - 1e-9);
        if (weighed.as === 'paste' && weighed.grams !== null) {
          counted.paste++;
          expect(number(weigh)).toBeGreaterThanOrEqual(weighed.grams - 1e-9);
        } else if (weighed.as === 'powder') {
          counted.powder++;
          expect(number(weigh)).toBeGreaterThanOrEqual(weighed.pigmentGrams - 1e-9);
          expect(number(oil!)).toBeLessThanOrEqual(weighed.oilGrams + 1e-9);
        }
      }
      for (const { inMixtures, inSeat, supply } of palette.pigments) {
        const drawn = supply.draws.reduce((sum, { cm3 }) => sum + cm3, 0);
        expect(Math.abs(drawn - inMixtures - inSeat)).toBeLessThan(1e-9);
      }
      const piles = palette.piles.flatMap(({ amount }) => amount.pigments);
      const wanted = piles.reduce((sum, { cm3 }) => sum + cm3, 0);
      const edge = palette.pigments
        .filter(
          ({ key }) =>
            !palette.piles.some(({ pure, pile }) => pure && pile.parts[0]!.pigment === key),
        )
        .reduce((sum, { inSeat }) => sum + inSeat, 0);
      const laid = palette.pigments.reduce((sum, one) => sum + one.inMixtures + one.inSeat, 0);
      expect(Math.abs(laid - wanted - edge)).toBeLessThan(1e-9);
    }
  }
  for (const [form, times] of Object.entries(counted)) expect(times, form).toBeGreaterThan(50);
});

test('a stock that nobody counts lacks nothing and loses nothing', () => {
  const day = planned(askedOf([passageOf('p', [pileOf('white', { lead_white: 1 })])]), STARTER);
  expect([day.lacks, day.takings]).toEqual([[], []]);
});

test('each toxic lot is acknowledged by each person, once', () => {
  const studio: Studio = {
    shelf: STARTER.shelf,
    stock: stockOf([
      entryOf('lead_white', { lot: '3', amount: 1, unit: 'ml' }),
      entryOf('lead_white', { lot: '4' }),
      entryOf('yellow_ochre', { lot: '7' }),
    ]),
  };
  const day = planned(
    askedOf(
      [passageOf('p', [pileOf('tint', { lead_white: 9, yellow_ochre: 1 }, { filmUm: 400 })])],
      {
        people: ['Ines', 'Bram'],
        acknowledged: [{ pigment: 'lead_white', lot: '3', person: 'Bram', date: '2026-05-01' }],
      },
    ),
    studio,
  );
  expect(
    sheetOf(day, 0, studio, plainNumber).acknowledge.map(({ lot, person, date }) => [
      lot,
      person,
      date,
    ]),
  ).toEqual([
    ['Lead white, lot 3', 'Ines', null],
    ['Lead white, lot 3', 'Bram', '2026-05-01'],
    ['Lead white, lot 4', 'Ines', null],
    ['Lead white, lot 4', 'Bram', null],
  ]);
});

describe('incompatibilities', () => {
  const day = planned(
    askedOf([
      passageOf(
        'Cloth',
        [pileOf('pink', { lead_white: 3, madder_lake: 1 }), pileOf('gold', { orpiment: 1 })],
        [{ date: '2026-04-01', film: 'body colour', parts: [{ pigment: 'azurite', parts: 1 }] }],
      ),
      passageOf('Sky', [pileOf('lime', { prussian_blue: 1, chalk: 1 })]),
    ]),
    WHOLE,
  );
  const { mind } = sheetOf(day, 0, WHOLE, plainNumber);
  test('inside one pile, between touching coats and on one slab', () => {
    expect(mind.join('\n')).toMatch(/With care: Lead white and madder lake \(in “pink”\)/);
    expect(mind.join('\n')).toMatch(
      /Do not join: Orpiment and azurite \(over the last coat in “gold”\)/,
    );
    expect(mind.join('\n')).toMatch(
      /(Prussian blue and chalk|Chalk and Prussian blue) \(in “lime” and prepared/,
    );
  });
  test('the gravest first, and never across a palette', () => {
    expect(mind[0]).toMatch(/^Do not join/);
    expect(mind.join('\n')).not.toMatch(/Orpiment and lead white|Lead white and orpiment/);
  });
});

test('pigments are prepared light to dark within tools, and toxic ones have tools of their own', () => {
  const parts = { bone_black: 1, lead_white: 1, yellow_ochre: 1, vermilion: 1, realgar: 1 };
  const asked = askedOf([passageOf('p', [pileOf('all', parts)])]);
  const day = planned(asked, WHOLE);
  expect(day.palettes[0]!.preparing.map(({ key, tools }) => [key, tools])).toEqual([
    ['yellow_ochre', 'shared'],
    ['bone_black', 'shared'],
    ['lead_white', 'lead'],
    ['vermilion', 'mercury'],
    ['realgar', 'arsenic'],
  ]);
});

test.each([
  ['no passage', { palettes: [] }, 'day-empty'],
  ['no pile', { palettes: [{ name: 'a', passages: [passageOf('p', [])] }] }, 'day-empty'],
  ['a date that is none', { date: '2026-02-30' }, 'day-date'],
  [
    'four palettes',
    {
      palettes: ['a', 'b', 'c', 'd'].map((name) => ({
        name,
        passages: [passageOf(name, [pileOf(name, { chalk: 1 })])],
      })),
    },
    'palettes-many',
  ],
  [
    'two piles of one name',
    {
      palettes: [
        {
          name: 'a',
          passages: [passageOf('p', [pileOf('x', { chalk: 1 }), pileOf('x', { chalk: 1 })])],
        },
      ],
    },
    'pile-twice',
  ],
  [
    'a coat from tomorrow',
    {
      palettes: [
        {
          name: 'a',
          passages: [
            passageOf(
              'p',
              [pileOf('x', { chalk: 1 })],
              [{ date: '2026-05-15', film: 'body colour' as const, parts: [] }],
            ),
          ],
        },
      ],
    },
    'layer-date',
  ],
])('%s is refused with a sentence', (_, change, code) => {
  const asked = askedOf([passageOf('p', [pileOf('white', { lead_white: 1 })])]);
  const day = planDay({ ...asked, ...change }, STARTER);
  if (day.ok) throw new Error('it was accepted');
  expect(day.fault.map((fault) => fault.code)).toContain(code);
  for (const fault of day.fault)
    expect(paletteFaultWords(fault, plainNumber)).toMatch(/^[“A-Z0-9].{20,}\.$/);
});

test('every fault of a day is told at once', () => {
  const bad = [pileOf('a', { chalk: 1 }, { coats: 0 }), pileOf('b', { chalk: 1 }, { filmUm: -1 })];
  const day = planDay(askedOf([passageOf('p', bad)]), STARTER);
  if (day.ok) throw new Error('it was accepted');
  expect(day.fault).toHaveLength(2);
});
