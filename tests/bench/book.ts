import type { Page } from 'playwright-core';
import type { EntrySummary } from '../../src/book/schema/entry-summary.ts';
import { createSearchIndex, type Query } from '../../src/book/store/search-index.ts';
import { deltaE00Of } from '../../src/colour/difference.ts';
import type { Lab } from '../../src/colour/lab.ts';
import { Probed } from '../browser/probed.ts';
import { ensureChromium } from '../tools/chromium.ts';
import { Studio } from '../tools/studio.ts';

/** One row of the report; `ratio` is to a plain scan of the same cards, null where there is none. */
export interface BookRow {
  readonly what: string;
  readonly ms: number;
  readonly ratio: number | null;
  readonly note: string;
}

const ENTRIES = 10_000;
const ROUNDS = 9;
const SOUGHT: Lab = [41, -12, 17];
const WITHIN = 8;

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;

function timed(work: () => unknown): number {
  const all: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const from = performance.now();
    work();
    all.push(performance.now() - from);
  }
  return median(all);
}

/** What a search by colour would be without an index. */
function scan(cards: readonly EntrySummary[]): number {
  let near = 0;
  for (const { colours } of cards)
    if (colours.some(({ lab }) => deltaE00Of(...SOUGHT, ...lab) <= WITHIN)) near++;
  return near;
}

/** Time that the page's own scripts take, in ms, until `until` holds. */
async function script(page: Page, act: () => Promise<unknown>, until: () => Promise<unknown>) {
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable');
  const spent = async () => {
    const { metrics } = await session.send('Performance.getMetrics');
    return metrics.find(({ name }) => name === 'ScriptDuration')!.value * 1000;
  };
  const before = await spent();
  await act();
  await until();
  const ms = (await spent()) - before;
  await session.detach();
  return ms;
}

/** A book of ten thousand harmonies: searched among its cards alone, then in the app itself. */
export async function benchBook(): Promise<BookRow[] | null> {
  if (ensureChromium() === null) return null;
  const probed = new Probed();
  await probed.start();
  const studio = new Studio();
  try {
    const page = await studio.open();
    await probed.probe(page);
    await page.evaluate((count) => window.probe.fill(count, 11), ENTRIES);
    const cards = JSON.parse(await page.evaluate(() => window.probe.cards())) as EntrySummary[];
    const rows: BookRow[] = [];

    const plain = timed(() => scan(cards));
    const words = timed(() => cards.filter(({ words }) => words.includes('weir')));
    const index = createSearchIndex(cards);
    const search = (query: Query) => timed(() => index.search(query));
    index.search({ colour: { lab: SOUGHT, within: WITHIN } });
    const byColour = search({ colour: { lab: SOUGHT, within: WITHIN } });
    const byWord = search({ words: 'weir' });
    rows.push(
      { what: 'plain scan by colour', ms: plain, ratio: 1, note: `${scan(cards)} found` },
      { what: 'by colour, through the index', ms: byColour, ratio: byColour / plain, note: '' },
      { what: 'plain scan by word', ms: words, ratio: 1, note: 'not even in order' },
      { what: 'by word, in order', ms: byWord, ratio: byWord / words, note: '' },
    );

    await page.goto(`${probed.url}#/walk`);
    await page.getByText('What did you see?').waitFor();
    await page.waitForTimeout(1500);
    const first = page.locator('.long .row').first();
    const found = page.locator('.found');
    const list = await script(
      page,
      () => page.getByRole('link', { name: 'Book', exact: true }).click(),
      () => first.waitFor(),
    );
    const word = await script(
      page,
      () => page.getByRole('searchbox').fill('weir'),
      () => page.getByText(/ of 10,000 entries/).waitFor(),
    );
    await page.getByRole('searchbox').fill('');
    await page.getByText('10,000 entries', { exact: true }).waitFor();
    await page.getByText('Narrow it down').click();
    const stroke = page.getByRole('list', { name: 'Colours of this book' }).getByRole('button');
    const colour = await script(
      page,
      () => stroke.nth(5).click(),
      () => page.getByText(/ of 10,000 entries/).waitFor(),
    );
    const before = await found.innerText();
    const again = await script(
      page,
      () => stroke.nth(9).click(),
      () =>
        page.waitForFunction(
          (was) => document.querySelector('.found')?.textContent !== was,
          before,
        ),
    );
    const entry = await script(
      page,
      () => page.locator('.long .row').nth(3).click(),
      () => page.locator('.lines').waitFor(),
    );
    rows.push(
      { what: 'the app opens the list', ms: list, ratio: null, note: 'script, Chromium' },
      { what: 'the app searches by word', ms: word, ratio: null, note: 'script, Chromium' },
      {
        what: 'the app searches by colour, first',
        ms: colour,
        ratio: null,
        note: 'makes the index',
      },
      {
        what: 'the app searches by colour, again',
        ms: again,
        ratio: null,
        note: await found.innerText(),
      },
      { what: 'the app opens an entry', ms: entry, ratio: null, note: 'its cloths are drawn' },
    );
    return rows;
  } finally {
    await studio.discard();
    await probed.stop();
  }
}
