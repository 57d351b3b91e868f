import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { plainNumber } from '../../src/number-format.ts';
import { readDay } from '../../src/palette/day-file.ts';
import { starterShelf, starterStock } from '../../src/pigment/starter-shelf.ts';
import { sheetOf } from '../../src/sheet/morning-sheet.ts';
import { planDay } from '../../src/sheet/plan-day.ts';
import { widthOf } from '../../src/sheet/text-metrics.ts';
import { onPage } from './browser.ts';

const ROOT = resolve(import.meta.dirname, '../..');
/** Width of an average character of English text, em: what the sheet would count without tables. */
const AVERAGE_EM = 0.5;

/** Estimated widths of a sheet's texts over those that the browser sets, less 1. */
export interface WidthRow {
  readonly by: string;
  readonly lowest: number;
  readonly highest: number;
}

/** The tables of character widths and one average width, against Chromium. Null without a browser. */
export const benchSheet = (): Promise<WidthRow[] | null> =>
  onPage(async (page) => {
    const texts = textsOfSheets();
    const real = await page.evaluate((all) => {
      const context = document.createElement('canvas').getContext('2d')!;
      context.font = "100px Arial, Helvetica, 'Liberation Sans'";
      return all.map((text) => context.measureText(text).width / 100);
    }, texts);
    const row = (by: string, estimate: (text: string) => number): WidthRow => {
      const errors = texts.map((text, i) => estimate(text) / real[i]! - 1);
      return { by, lowest: Math.min(...errors), highest: Math.max(...errors) };
    };
    return [
      row('tables of character widths', (text) => widthOf({ text })),
      row('one average width', (text) => AVERAGE_EM * text.length),
    ];
  });

/** Every text of the sample day's sheets that is at least a word long. */
function textsOfSheets(): string[] {
  const day = readDay(readFileSync(resolve(ROOT, 'samples/day.json'), 'utf8'));
  if (!day.ok) throw new Error(day.fault.code);
  const studio = { shelf: starterShelf(), stock: day.value.stock ?? starterStock() };
  const planned = planDay(day.value.asked, studio);
  if (!planned.ok) throw new Error(planned.fault.map(({ code }) => code).join());
  const texts = new Set<string>();
  const collect = (value: unknown): void => {
    if (typeof value === 'string' && value.length > 3) texts.add(value);
    else if (typeof value === 'object' && value !== null) Object.values(value).forEach(collect);
  };
  planned.value.palettes.forEach((_, at) => {
    collect(sheetOf(planned.value, at, studio, plainNumber));
  });
  return [...texts];
}
