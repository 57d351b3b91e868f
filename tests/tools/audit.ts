import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import lighthouse from 'lighthouse';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { violationsInBoth } from './axe.ts';
import { CHROMIUM_FLAGS, ensureChromium } from './chromium.ts';
import { firstScript, MOST_SCRIPT } from './first-script.ts';
import { APP, HANG_MS, PHONE, Served } from './studio.ts';
import { emptyPlaces, keptInBook, onward, toHarmony, unfold } from './tour.ts';

/**
 * Measures the built app as a stranger would: Lighthouse on its mobile preset, axe in every place, how
 * long an interaction takes on a slow phone, how much the page shifts, how much script it needs first.
 * Prints every figure; ends with 1 where one falls short.
 */
const RUNS = 3;
const SLOWDOWN = 4;
/** Least scores, of 100. */
const LEAST = { performance: 95, accessibility: 100, 'best-practices': 100, seo: 100 } as const;
/** Most milliseconds from an interaction to the next paint. */
const MOST_WAIT = 200;
/** Cumulative layout shift: none. Under this is a rounding. */
const MOST_SHIFT = 0.001;
/** Bytes of compressed script before the first screen that we aim at. */
const AIM_SCRIPT = 60_000;

let short = 0;
function report(good: boolean, words: string): void {
  if (!good) short++;
  console.log(`${good ? 'good ' : 'SHORT'}  ${words}`);
}

const executablePath = ensureChromium();
if (executablePath === null) throw new Error('The audit needs Chromium.');

const freePort = () =>
  new Promise<number>((found) => {
    const probe = createServer().listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => found(typeof address === 'object' && address ? address.port : 0));
    });
  });

/** A phone's browser with a profile on disk, and the port by which Lighthouse reaches it. */
async function browser(profile: string): Promise<{ context: BrowserContext; port: number }> {
  const port = await freePort();
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: executablePath!,
    args: [...CHROMIUM_FLAGS, `--remote-debugging-port=${port}`],
    headless: true,
    viewport: PHONE,
    hasTouch: true,
    isMobile: true,
  });
  context.setDefaultTimeout(HANG_MS);
  return { context, port };
}

/** Compressed bytes of what runs before anything shows. */
function script(): void {
  const { files, bytes } = firstScript(APP);
  report(
    bytes <= MOST_SCRIPT,
    `script before the first screen: ${(bytes / 1000).toFixed(1)} kB compressed in ${files.length} files (at most ${MOST_SCRIPT / 1000}; aim ${AIM_SCRIPT / 1000}${bytes > AIM_SCRIPT ? ', missed' : ', met'})`,
  );
}

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;

/** Lighthouse's four scores for an address, median of {@link RUNS}, and what costs points. */
async function lighthouses(name: string, url: string, port: number, fresh: boolean): Promise<void> {
  const scores: Record<string, number[]> = {};
  const figures: Record<string, number[]> = {};
  const lost = new Set<string>();
  for (let run = 0; run < RUNS; run++) {
    const result = await lighthouse(url, {
      port,
      output: 'json',
      logLevel: 'error',
      disableStorageReset: !fresh,
    });
    const lhr = result?.lhr;
    if (!lhr) throw new Error(`Lighthouse gave nothing for ${name}.`);
    for (const [id, category] of Object.entries(lhr.categories)) {
      scores[id] = [...(scores[id] ?? []), Math.round(100 * (category.score ?? 0))];
      if (id === 'performance') continue;
      for (const { id: audit, weight } of category.auditRefs)
        if (weight > 0 && (lhr.audits[audit]?.score ?? 1) < 1) lost.add(`${id}: ${audit}`);
    }
    for (const id of [
      'first-contentful-paint',
      'largest-contentful-paint',
      'total-blocking-time',
      'cumulative-layout-shift',
      'speed-index',
    ])
      figures[id] = [...(figures[id] ?? []), lhr.audits[id]?.numericValue ?? Number.NaN];
  }
  for (const [id, least] of Object.entries(LEAST)) {
    const of = scores[id] ?? [];
    report(median(of) >= least, `Lighthouse, ${name}: ${id} ${median(of)} (${of.join(', ')})`);
  }
  console.log(
    `       ${Object.entries(figures)
      .map(([id, of]) => `${id} ${median(of).toFixed(id.includes('shift') ? 3 : 0)}`)
      .join(', ')}`,
  );
  for (const words of lost) console.log(`       lost by ${words}`);
}

interface Watched {
  waits: Record<string, { wait: number; what: string }>;
  shift: number;
  shifts: string[];
}

/** In the page: keeps the longest wait of each interaction, and every shift that nobody asked for. */
function watch(): void {
  const watched: Watched = { waits: {}, shift: 0, shifts: [] };
  Object.assign(globalThis, { watched });
  // What was touched may be gone by the time it is told of.
  const touched: { at: number; what: string }[] = [];
  const note = ({ type, timeStamp, target }: Event) => {
    const on = target as HTMLElement | null;
    const named = (on?.closest('button, a, label, input')?.textContent || on?.tagName) ?? '?';
    touched.push({
      at: timeStamp,
      what: `${named.trim().slice(0, 40)}, ${location.hash}, ${type}`,
    });
  };
  for (const type of ['pointerdown', 'click', 'keydown'])
    addEventListener(type, note, { capture: true, passive: true });
  const timed = new PerformanceObserver((list) => {
    for (const entry of list.getEntries() as PerformanceEventTiming[]) {
      const id = (entry as PerformanceEventTiming & { interactionId: number }).interactionId;
      if (!id || entry.duration <= (watched.waits[id]?.wait ?? 0)) continue;
      const began = [...touched].reverse().find(({ at }) => at <= entry.startTime + 1);
      watched.waits[id] = { wait: entry.duration, what: `${entry.name} on ${began?.what ?? '?'}` };
    }
  });
  timed.observe({
    type: 'event',
    buffered: true,
    durationThreshold: 16,
  } as PerformanceObserverInit);
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries() as (PerformanceEntry & {
      value: number;
      hadRecentInput: boolean;
      sources: { node: Node | null }[];
    })[]) {
      if (entry.hadRecentInput) continue;
      watched.shift += entry.value;
      const named = entry.sources.map(({ node }) =>
        node instanceof HTMLElement ? `${node.tagName}.${node.className}` : node?.nodeName,
      );
      watched.shifts.push(`${entry.value.toFixed(4)} ${location.hash} ${named.join(' ')}`);
    }
  }).observe({ type: 'layout-shift', buffered: true });
}

/** The story on a slow phone: how long the slowest interaction takes, and whether anything shifts. */
async function story(page: Page, url: string): Promise<void> {
  await page.addInitScript(watch);
  const session = await page.context().newCDPSession(page);
  await page.goto(url);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWDOWN });
  const gather = async (): Promise<Watched> =>
    page.evaluate(() => (globalThis as unknown as { watched: Watched }).watched);
  const none = async () => {};
  const all: Watched[] = [];
  await toHarmony(page, url, none);
  await onward(page, async (place) => {
    if (place === 'book, an entry') all.push(await gather());
  });
  const waits = all.flatMap(({ waits }) => Object.values(waits)).sort((a, b) => b.wait - a.wait);
  const worst = waits[0]?.wait ?? Number.NaN;
  report(
    worst < MOST_WAIT,
    `from interaction to next paint at ${SLOWDOWN}× slowdown: at most ${worst} ms over ${waits.length} interactions (under ${MOST_WAIT})`,
  );
  for (const { wait, what } of waits.slice(0, 6)) console.log(`       ${wait} ms: ${what}`);
  const shift = all.reduce((sum, each) => sum + each.shift, 0);
  report(shift < MOST_SHIFT, `layout shift through the story: ${shift.toFixed(4)}`);
  for (const words of all.flatMap(({ shifts }) => shifts)) console.log(`       ${words}`);
  await session.send('Emulation.setCPUThrottlingRate', { rate: 1 });
}

const served = new Served();
await served.start();
const profile = mkdtempSync(join(tmpdir(), 'kingcup-audit-'));
const only = process.argv.slice(2);
const wants = (part: string) => only.length === 0 || only.includes(part);
let opened: Awaited<ReturnType<typeof browser>> | undefined;
try {
  script();
  opened = await browser(profile);
  let page = opened.context.pages()[0] ?? (await opened.context.newPage());
  if (wants('axe')) {
    let states = 0;
    const look = async (place: string) => {
      await page.emulateMedia({ reducedMotion: 'reduce' });
      const found = await violationsInBoth(page);
      await unfold(page);
      found.push(...(await violationsInBoth(page)));
      states += 4;
      for (const words of new Set(found)) report(false, `axe, ${place}: ${words}`);
    };
    await emptyPlaces(page, served.url, look);
    await toHarmony(page, served.url, look);
    await onward(page, look);
    report(
      true,
      `axe: ${states} states of the places looked at, light and dark, shut and unfolded`,
    );
  }
  await opened.context.close();
  rmSync(profile, { recursive: true, force: true });

  opened = await browser(profile);
  page = opened.context.pages()[0] ?? (await opened.context.newPage());
  if (wants('story')) await story(page, served.url);
  else await toHarmony(page, served.url, async () => {});
  await page.goto(`${served.url}#/book`);
  await keptInBook(page).click();
  const link = page.getByRole('link', { name: 'Open in Harmony' });
  const kept = (await link.getAttribute('href')) ?? '';
  await opened.context.close();

  if (wants('lighthouse')) {
    opened = await browser(profile);
    await lighthouses('a kept harmony', `${served.url}/${kept}`, opened.port, false);
    await lighthouses('the first screen', served.url, opened.port, true);
    await opened.context.close();
  }
} finally {
  await opened?.context.close();
  await served.stop();
  rmSync(profile, { recursive: true, force: true });
}
console.log(short === 0 ? 'Nothing falls short.' : `${short} fall short.`);
process.exitCode = short === 0 ? 0 : 1;
