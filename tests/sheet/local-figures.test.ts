import { expect, test } from 'vitest';
import { sheetPaletteMarkup } from '../../src/drawing/palette-markup.ts';
import { type NumberFormat, plainNumber } from '../../src/number-format.ts';
import { sheetOf } from '../../src/sheet/morning-sheet.ts';
import { sheetPage } from '../../src/sheet/page-html.ts';
import { comma } from '../comma.ts';
import { askedOf, entryOf, passageOf, pileOf, planned, STARTER, stockOf } from '../palette/made.ts';

/** The painter's own texts all hold a decimal point. */
const stock = stockOf([
  entryOf('yellow_ochre', { form: 'powder', lot: '7.2', amount: 3, unit: 'g' }),
  entryOf('lead_white', { lot: 'lot 8.1/b', amount: 1, unit: 'ml' }),
]);
const asked = askedOf([
  passageOf('Sky 1.5', [pileOf('Sky 1.2', { yellow_ochre: 1, lead_white: 3 })]),
]);
const studio = { shelf: STARTER.shelf, stock };
const day = planned(asked, studio);
const board = sheetPaletteMarkup(day.palettes[0]!, day);
const textWith = (number: NumberFormat): string =>
  sheetPage(sheetOf(day, 0, studio, number), board, number)
    .html.replaceAll(/<svg.*?<\/svg>/gs, '')
    .replaceAll(/<[^>]*>/g, '|');
const DECIMALS = /\d[.,]\d+/g;

test('the sheet has the reader’s decimals, and the painter’s own texts as written', () => {
  const [plain, local] = [textWith(plainNumber), textWith(comma)];
  expect(local.match(DECIMALS)).toEqual(
    plain
      .match(DECIMALS)!
      .map((figure) =>
        ['7.2', '8.1', '1.5', '1.2'].includes(figure) ? figure : figure.replace('.', ','),
      ),
  );
  expect(local).toContain('lot 7.2');
  expect(local).toContain('lot 8.1/b');
  expect(local).toContain('Sky 1.5');
  expect(local).toContain('Sky 1.2');
  expect(local.match(/\d,\d+ cm³|\d,\d+\u00a0g/g)?.length).toBeGreaterThan(3);
});
