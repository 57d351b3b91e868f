import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { CHROMIUM_FLAGS, findChromium } from '../tools/chromium.ts';
import { describeBrowser } from './open.ts';
import { Probed } from './probed.ts';

const ROUNDS = process.env.KINGCUP_SOAK === '1' ? 100 : 10;

/** Repeatable chance: mulberry32, public domain. */
function chance(seed: number): () => number {
  let a = seed;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
const pause = (ms: number) => new Promise((done) => setTimeout(done, ms));

/** A browser that this test started itself and can therefore end as a power cut would. */
class Mortal {
  readonly folder = mkdtempSync(join(tmpdir(), 'kingcup-mortal-'));
  #process: ChildProcess | null = null;
  #browser: Browser | null = null;

  async open(): Promise<Page> {
    const child = spawn(
      findChromium()!,
      [
        ...CHROMIUM_FLAGS,
        '--headless=new',
        '--remote-debugging-port=0',
        `--user-data-dir=${this.folder}`,
        'about:blank',
      ],
      // A group of its own: the whole of it is ended, and nothing else.
      { detached: true, stdio: ['ignore', 'ignore', 'pipe'] },
    );
    this.#process = child;
    const address = await new Promise<string>((resolve, reject) => {
      let heard = '';
      child.stderr!.on('data', (piece) => {
        heard += piece;
        const found = /DevTools listening on (ws:\S+)/.exec(heard);
        if (found) resolve(found[1]!);
      });
      child.once('exit', () => reject(new Error(`the browser did not start: ${heard}`)));
    });
    this.#browser = await chromium.connectOverCDP(address);
    const context = this.#browser.contexts()[0]!;
    return context.pages()[0] ?? context.newPage();
  }

  /** Ends every process of it at once, with no chance to put anything in order. */
  async kill(): Promise<void> {
    const child = this.#process;
    if (!child?.pid) return;
    this.#process = null;
    const gone = new Promise((done) => child.once('exit', done));
    process.kill(-child.pid, 'SIGKILL');
    await gone;
    await this.#browser?.close().catch(() => {});
  }

  async discard(): Promise<void> {
    await this.kill();
    rmSync(this.folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  }
}

describeBrowser('the browser is killed', () => {
  const probed = new Probed();
  beforeAll(() => probed.start());
  afterAll(() => probed.stop());

  test(`${ROUNDS} times while it saves: all that was confirmed is there and whole`, {
    timeout: 20_000 * ROUNDS,
  }, async () => {
    const next = chance(31);
    const mortal = new Mortal();
    /** The latest version that the book said is on disk. */
    const confirmed = new Map<string, string>();
    try {
      for (let round = 0; round < ROUNDS; round++) {
        const page = await mortal.open();
        await page.exposeFunction('confirmed', (id: string, clock: string) => {
          confirmed.set(id, clock);
        });
        await probed.probe(page);
        const before = confirmed.size;
        const saving = page.evaluate((seed) => window.probe.saveWithoutPause(seed), round + 1);
        saving.catch(() => {});
        while (confirmed.size === before) await pause(5);
        await pause(next() * 700);
        await mortal.kill();

        const again = await mortal.open();
        await probed.probe(again);
        const { clocks, wrong } = await again.evaluate(() => window.probe.audit());
        await mortal.kill();
        expect(wrong).toEqual([]);
        for (const [id, clock] of confirmed)
          expect((clocks[id] ?? '') >= clock, `round ${round}: ${id} of ${clock}`).toBe(true);
      }
      expect(confirmed.size).toBeGreaterThanOrEqual(ROUNDS);
      console.log(`  ${confirmed.size} confirmed entries over ${ROUNDS} kills`);
    } finally {
      await mortal.discard();
    }
  });

  test(`${ROUNDS} times while it brings in a copy: all of it is there or nothing`, {
    timeout: 20_000 * ROUNDS,
  }, async () => {
    const next = chance(57);
    const mortal = new Mortal();
    try {
      const first = await mortal.open();
      await probed.probe(first, 'source');
      await first.evaluate(() => window.probe.fill(240, 3, true));
      const bytes = Buffer.from(await first.evaluate(() => window.probe.copy()), 'base64');
      const url = probed.put('copy.zip', bytes);
      await probed.probe(first, 'measured');
      await first.evaluate((copy) => window.probe.bringIn(copy), url);
      const all = Object.keys((await first.evaluate(() => window.probe.audit())).clocks).length;
      await mortal.kill();
      expect(all).toBe(240 + 180);

      const ends = { nothing: 0, all: 0 };
      for (let round = 0; round < ROUNDS; round++) {
        const page = await mortal.open();
        await probed.probe(page, `book-${round}`);
        await page.evaluate(() => window.probe.fill(3, 99));
        let done = -1;
        await page.exposeFunction('progress', (share: number) => {
          done = share;
        });
        let hasEnded = false;
        const bringing = page
          .evaluate((copy) => window.probe.bringIn(copy), url)
          .then(
            () => {
              hasEnded = true;
            },
            () => {},
          );
        // Anywhere in the one transaction, around its end, or once it was said to have ended.
        const at = 1.25 * next();
        if (at > 1.1) await bringing;
        else {
          while (done < Math.min(at, 0.97)) await pause(1);
          if (at > 0.97) await pause(60 * next());
        }
        const wasSaid = hasEnded;
        await mortal.kill();
        await bringing;

        const again = await mortal.open();
        await probed.probe(again, `book-${round}`);
        const { clocks, wrong } = await again.evaluate(() => window.probe.audit());
        await mortal.kill();
        expect(wrong).toEqual([]);
        const there = Object.keys(clocks).length - 3;
        expect([0, all], `round ${round}`).toContain(there);
        if (wasSaid) expect(there).toBe(all);
        ends[there === 0 ? 'nothing' : 'all']++;
      }
      console.log(`  nothing ${ends.nothing} times, all of it ${ends.all} times`);
    } finally {
      await mortal.discard();
    }
  });
});
