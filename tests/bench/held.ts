import { resolve } from 'node:path';
import type { CDPSession, Page } from 'playwright-core';
import { findChromium } from '../tools/chromium.ts';
import { Served, Studio } from '../tools/studio.ts';

const PHOTO = resolve(import.meta.dirname, '../../samples/jay-feather.jpg');

/** One step of the story of gathering, and the longest that the page's own thread was held up in it. */
export interface HeldRow {
  readonly step: string;
  /** Longest task in ms of the clock, 0 where none took 50 or more; other programs lengthen it. */
  readonly longestMs: number;
  /** Longest task in ms of the processor: what the page itself took. */
  readonly workMs: number;
}

/** The story of gathering on the real screen, first visit included. Null without a browser. */
export async function benchHeld(): Promise<HeldRow[] | null> {
  if (findChromium() === null) return null;
  const served = new Served();
  const studio = new Studio();
  try {
    await served.start();
    const page = await studio.open();
    await page.addInitScript(() => {
      const held: number[] = [];
      new PerformanceObserver((list) => {
        for (const { duration } of list.getEntries()) held.push(duration);
      }).observe({ type: 'longtask', buffered: true });
      Object.assign(window, { held });
    });
    const rows: HeldRow[] = [];
    for (const visit of ['first visit', 'again']) {
      if (visit === 'again') await page.reload();
      for (const [step, act] of STORY(served.url)) {
        const trace = await Trace.begin(page);
        await act(page);
        await page.waitForTimeout(1200);
        const workMs = await trace.longest();
        const held = await page.evaluate(() => {
          const { held } = window as unknown as { held: number[] };
          return held.splice(0);
        });
        rows.push({
          step: `${visit}: ${step}`,
          longestMs: Math.max(0, ...held),
          workMs,
        });
      }
    }
    return rows;
  } finally {
    await studio.discard();
    await served.stop();
  }
}

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** Microseconds of the processor. */
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/** Tasks of the page's own thread, by the browser's own record of them. */
class Trace {
  private readonly events: TraceEvent[] = [];
  private readonly session: CDPSession;

  private constructor(session: CDPSession) {
    this.session = session;
    session.on('Tracing.dataCollected', ({ value }) =>
      this.events.push(...(value as unknown as TraceEvent[])),
    );
  }

  static async begin(page: Page): Promise<Trace> {
    const trace = new Trace(await page.context().newCDPSession(page));
    await trace.session.send('Tracing.start', {
      transferMode: 'ReportEvents',
      traceConfig: { includedCategories: ['toplevel', '__metadata'] },
    });
    return trace;
  }

  async longest(): Promise<number> {
    const done = new Promise((end) => this.session.once('Tracing.tracingComplete', end));
    await this.session.send('Tracing.end');
    await done;
    await this.session.detach();
    const mains = new Set(
      this.events.flatMap(({ name, args, pid, tid }) =>
        name === 'thread_name' && args?.name === 'CrRendererMain' ? `${pid} ${tid}` : [],
      ),
    );
    return this.events.reduce(
      (most, { name, tdur = 0, pid, tid }) =>
        name.endsWith('RunTask') && mains.has(`${pid} ${tid}`) ? Math.max(most, tdur / 1000) : most,
      0,
    );
  }
}

const STORY = (url: string): readonly [string, (page: Page) => Promise<unknown>][] => [
  ['open', (page) => page.goto(`${url}#/walk`)],
  [
    'choose a photograph, the harmony appears',
    async (page) => {
      await page.getByLabel('Choose a photograph').setInputFiles(PHOTO);
      await page.getByRole('button', { name: 'Keep this harmony' }).waitFor();
    },
  ],
  ['touch a colour', (page) => page.locator('.wall').getByRole('button').nth(1).click()],
  ['touch the photograph', (page) => page.getByRole('application').click()],
  [
    'rub out with a drag',
    async (page) => {
      await page.getByRole('button', { name: 'Keep', exact: true }).click();
      await page.getByRole('application').scrollIntoViewIfNeeded();
      const box = (await page.getByRole('application').boundingBox())!;
      const at = (x: number, y: number) => [box.x + x * box.width, box.y + y * box.height] as const;
      await page.mouse.move(...at(0.1, 0.2));
      await page.mouse.down();
      await page.mouse.move(...at(0.8, 0.3), { steps: 20 });
      await page.mouse.move(...at(0.2, 0.5), { steps: 20 });
      await page.mouse.up();
    },
  ],
  ['undo', (page) => page.getByRole('button', { name: 'Undo', exact: true }).click()],
];
