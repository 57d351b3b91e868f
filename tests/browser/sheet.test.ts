import { execFileSync } from 'node:child_process';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { sheetPaletteMarkup } from '../../src/drawing/palette-markup.ts';
import { plainNumber } from '../../src/number-format.ts';
import { readDay } from '../../src/palette/day-file.ts';
import type { Day } from '../../src/palette/day-plan.ts';
import type { Studio } from '../../src/palette/passage.ts';
import { mixtureShelfOf } from '../../src/pigment/mixing-shelf.ts';
import { ratioFor } from '../../src/sheet/boards.ts';
import { type MorningSheet, sheetOf } from '../../src/sheet/morning-sheet.ts';
import { SMALLEST_READABLE } from '../../src/sheet/page-fit.ts';
import { sheetDocument, sheetPage } from '../../src/sheet/page-html.ts';
import {
  askedOf,
  dice,
  entryOf,
  partsOf,
  passageOf,
  pileOf,
  planned,
  randomDay,
  stockOf,
  WHOLE,
} from '../palette/made.ts';
import { CHROMIUM_FLAGS, findChromium } from '../tools/chromium.ts';
import { hasPoppler, readPdf, tellUnread } from '../tools/poppler.ts';
import { HANG_MS } from '../tools/studio.ts';
import { describeBrowser } from './open.ts';

const ROOT = resolve(import.meta.dirname, '../..');
const STYLE = readFileSync(join(ROOT, 'src/sheet/sheet.css'), 'utf8');
const RANDOM = process.env.KINGCUP_SOAK === '1' ? 400 : 40;
const PAPERS = ['A4', 'Letter'] as const;

function printed(day: Day, studio: Studio): { html: string; sheets: readonly MorningSheet[] } {
  const sheets = day.palettes.map((_, at) => sheetOf(day, at, studio, plainNumber));
  const pages = sheets.map((sheet, at) =>
    sheetPage(sheet, sheetPaletteMarkup(day.palettes[at]!, day), plainNumber),
  );
  return { html: sheetDocument(pages, 'Morning sheet', STYLE), sheets };
}

function sample(): { day: Day; studio: Studio } {
  const read = readDay(readFileSync(join(ROOT, 'samples/day.json'), 'utf8'));
  if (!read.ok) throw new Error('the sample day cannot be read');
  const { asked, stock } = read.value;
  const studio = { shelf: mixtureShelfOf(stock!), stock };
  return { day: planned(asked, studio), studio };
}

/** What sticks out of its page or its column, and drawn names that lie upon one another or a heap. */
const clipped = (page: Page) =>
  page.evaluate(() => {
    const PAGE_PX = (257 / 25.4) * 96;
    return [...document.querySelectorAll<HTMLElement>('.sheet')].flatMap((sheet) => {
      const wrong: string[] = [];
      const { height } = sheet.getBoundingClientRect();
      if (height > PAGE_PX + 0.5) wrong.push(`${sheet.dataset.fit} is ${height / PAGE_PX} pages`);
      const parts = '.prepare, .piles, .block, figure, header, footer, .first';
      for (const part of sheet.querySelectorAll(`:is(${parts}) *`)) {
        const { left, right, width } = part.getBoundingClientRect();
        const words = part.textContent ?? '';
        if (width === 0 || words === '' || part.tagName === 'title') continue;
        const box = part.closest('td, th, .columns > div, .sheet')!.getBoundingClientRect();
        if (left < box.left - 0.5 || right > box.right + 0.5)
          wrong.push(`${sheet.dataset.fit} ${part.tagName}: ${words.slice(0, 40)}`);
      }
      const names = [...sheet.querySelectorAll('figure text')].map((name) => ({
        words: name.textContent,
        box: name.getBoundingClientRect(),
        pile: name.closest('[data-pile]'),
      }));
      for (const [i, { words, box, pile }] of names.entries()) {
        for (const other of names.slice(i + 1))
          if (
            box.left < other.box.right - 1 &&
            other.box.left < box.right - 1 &&
            // A line of words is taller than its letters.
            box.top < other.box.bottom - 5 &&
            other.box.top < box.bottom - 5
          )
            wrong.push(`${words} lies upon ${other.words}`);
        for (const heap of sheet.querySelectorAll('figure [data-pile] path')) {
          const at = heap.getBoundingClientRect();
          const own = heap.parentElement === pile;
          if (
            !own &&
            box.left < at.right - 2 &&
            at.left < box.right - 2 &&
            box.top < at.bottom - 4 &&
            at.top < box.bottom - 4
          )
            wrong.push(`${words} lies upon a heap`);
        }
      }
      return wrong;
    });
  });

describeBrowser('a morning sheet on paper', () => {
  let browser: Browser;
  let page: Page;
  let folder: string;
  beforeAll(async () => {
    browser = await chromium.launch({
      executablePath: findChromium()!,
      args: CHROMIUM_FLAGS,
      timeout: HANG_MS,
    });
    page = await browser.newPage();
    page.setDefaultTimeout(HANG_MS);
    folder = await mkdtemp(join(tmpdir(), 'kingcup-sheet-'));
  });
  afterAll(async () => {
    await browser.close();
    rmSync(folder, { recursive: true, force: true });
  });

  const poppler = hasPoppler ? describe : describe.skip;
  poppler.each(PAPERS)('%s, printed by Chromium (poppler-utils reads it back)', (format) => {
    const { day, studio } = sample();
    const { html, sheets } = printed(day, studio);
    let pdf: string;
    beforeAll(async () => {
      await page.setContent(html);
      pdf = join(folder, `${format}.pdf`);
      writeFileSync(pdf, await page.pdf({ format, printBackground: false }));
    });

    test('one page a palette', () => {
      const info = execFileSync('pdfinfo', [pdf], { encoding: 'utf8' });
      expect(info).toMatch(new RegExp(`Pages: +${sheets.length}\\n`));
    });

    test.each(sheets.map((sheet, at) => [sheet.title, sheet, at + 1] as const))(
      '%s: its text can be selected, and all of it lies on the page',
      (_, sheet, at) => {
        const bbox = execFileSync('pdftotext', ['-bbox', '-f', `${at}`, '-l', `${at}`, pdf, '-'], {
          encoding: 'utf8',
        });
        const [, width, height] = /<page width="([\d.]+)" height="([\d.]+)"/.exec(bbox)!;
        const words = [
          ...bbox.matchAll(/xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">/g),
        ];
        expect(words.length).toBeGreaterThan(200);
        // 10 mm of margin are 28.3 points; a word's box is a little larger than its ink.
        for (const [, left, top, right, bottom] of words) {
          expect(Math.min(Number(left), Number(top))).toBeGreaterThan(27);
          expect(Number(right)).toBeLessThan(Number(width) - 27);
          expect(Number(bottom)).toBeLessThan(Number(height) - 27);
        }
        const text = execFileSync('pdftotext', ['-f', `${at}`, '-l', `${at}`, '-raw', pdf, '-'], {
          encoding: 'utf8',
        })
          .replaceAll(/-\n/g, '-')
          .replaceAll(/\s+/g, ' ');
        for (const said of [
          sheet.day,
          ...sheet.piles.map(({ name }) => name),
          ...sheet.prepare.flatMap(({ rows }) => rows.map(({ weigh }) => weigh)),
          ...sheet.cleaning,
          ...sheet.always.map(({ words: always }) => always),
          'cleaned, rags safe',
        ])
          expect(text).toContain(said);
      },
    );

    test.each(sheets.map((sheet, at) => [sheet.title, sheet, at + 1] as const))(
      '%s: every swatch is there with backgrounds off',
      async (_, sheet, at) => {
        const name = join(folder, `${format}-${at}`);
        execFileSync('pdftoppm', [
          '-r',
          '75',
          '-png',
          '-singlefile',
          '-f',
          `${at}`,
          '-l',
          `${at}`,
          pdf,
          name,
        ]);
        const { data } = await sharp(`${name}.png`)
          .removeAlpha()
          .raw()
          .toBuffer({ resolveWithObject: true });
        for (const { hex, name: pile } of sheet.piles) {
          const rgb = [1, 3, 5].map((i) => Number.parseInt(hex.slice(i, i + 2), 16));
          let count = 0;
          for (let i = 0; i < data.length; i += 3)
            if (rgb.every((value, c) => Math.abs(value - data[i + c]!) <= 2)) count++;
          // A swatch of 10 x 13 mm has 1100 pixels at 75 to the inch.
          expect(count, pile).toBeGreaterThan(900);
        }
      },
    );
  });
  tellUnread('the PDF itself');

  test(
    `${RANDOM} random days: nothing is clipped, in print and on the screen`,
    async () => {
      const d = dice(77);
      const all = WHOLE.shelf.paints.map(({ pigment }) => pigment);
      const stock = stockOf(
        all.map((pigment, i) =>
          entryOf(pigment, {
            form: i % 3 === 0 ? 'tube' : 'powder',
            lot: `${i}`,
            amount: i % 5 === 0 ? 4 : null,
            unit: i % 3 === 0 ? 'ml' : 'g',
          }),
        ),
      );
      const studio = { shelf: WHOLE.shelf, stock };
      let boards = 0;
      for (let n = 0; n < RANDOM; n++) {
        const period = Array.from({ length: 7 }, () => d.one(all));
        const day = planned(randomDay(d, period, { people: ['Ines', 'Bram'] }), studio);
        const { html } = printed(day, studio);
        await page.setContent(html);
        for (const media of ['print', 'screen'] as const) {
          await page.emulateMedia({ media });
          expect(await clipped(page)).toEqual([]);
        }
        for (const palette of day.palettes) {
          const [, wide, high] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(
            sheetPaletteMarkup(palette, day).html,
          )!;
          expect(Number(high) / Number(wide)).toBeLessThanOrEqual(ratioFor(palette) + 1e-9);
        }
        boards += day.palettes.filter(({ of }) => of > 1).length;
        // Where there is more than one pile, none is set closer than is read at arm's length.
        for (const [at, fit] of [...html.matchAll(/<section class="sheet" data-fit="(\w+)"/g)]
          .map(([, found]) => Number(found))
          .entries())
          expect(day.palettes[at]!.piles.length === 1 || fit <= SMALLEST_READABLE).toBe(true);
      }
      console.info(`${boards} of the boards are halves of what was asked for`);
    },
    3 * HANG_MS + RANDOM * 5000,
  );

  test.skipIf(!hasPoppler)(
    'more than one page holds runs on to a second, and loses nothing',
    async () => {
      const people = Array.from({ length: 12 }, (_, i) => `Somebody with a long name ${i}`);
      const long = (n: number) => `${'a very long name of a pile '.repeat(4)}${n}`.slice(0, 120);
      const asked = {
        ...askedOf([passageOf(long(0), [pileOf(long(1), { lead_white: 3, vermilion: 1 })])], {
          people,
        }),
        leftovers: Array.from({ length: 40 }, (_, i) => ({
          id: `${i}`,
          name: long(i),
          parts: partsOf({ lead_white: 3, vermilion: 1 }),
          cm3: 1,
          kept: 'under film' as const,
          date: '2026-05-12',
        })),
      };
      const { html } = printed(planned(asked, WHOLE), WHOLE);
      await page.setContent(html);
      const text = readPdf(await page.pdf({ format: 'A4', printBackground: false }))!.text;
      for (const words of [...people, 'cleaned, rags safe'])
        expect(text.replaceAll(/\s+/g, ' ')).toContain(words);
    },
  );
});
