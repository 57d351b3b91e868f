import { statSync, truncateSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { seededRandom } from '../../src/random.ts';
import { HANG_MS } from '../tools/studio.ts';
import { Mortal } from './mortal.ts';
import { describeBrowser } from './open.ts';
import { Probed } from './probed.ts';

const ROUNDS = process.env.KINGCUP_SOAK === '1' ? 100 : 10;

const pause = (ms: number) => new Promise((done) => setTimeout(done, ms));

/** When an import is cut off: among its writes, while they are committed, once it was said to have ended. */
const MOMENTS = ['inside', 'commit', 'commit', 'ended', 'commit'] as const;
/** How far a merge says it is when only the commit is left to come. */
const LAST = 0.97;
/** Its multiples, without their whole parts, lie evenly between 0 and 1 however many there are. */
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** How far the page's merge is; tells when it has come so far. */
async function watchProgress(page: Page): Promise<{ reach(share: number): Promise<void> }> {
  let done = -1;
  await page.exposeFunction('progress', (share: number) => {
    done = share;
  });
  return {
    async reach(share) {
      while (done < share) await pause(1);
    },
  };
}

/** Once its merge is so far the page stands still for good: it has written, and commits nothing. */
const stopAt = (page: Page, share: number): Promise<void> =>
  page.evaluate((last) => {
    const tell = window.progress!;
    window.progress = async (done) => {
      void tell(done);
      while (done >= last);
    };
  }, share);

describeBrowser('the browser is killed', () => {
  const probed = new Probed();
  beforeAll(() => probed.start());
  afterAll(() => probed.stop());

  test(`${ROUNDS} times while it saves: all that was confirmed is there and whole`, {
    timeout: HANG_MS + 60_000 * ROUNDS,
  }, async () => {
    const next = seededRandom(31);
    const mortal = new Mortal();
    /** The latest version that the book said is on disk. */
    const confirmed = new Map<string, string>();
    try {
      for (let round = 0; ; round++) {
        // The browser that looks at what the last one left behind is the next to be killed.
        const page = await mortal.open();
        await page.exposeFunction('confirmed', (id: string, clock: string) => {
          confirmed.set(id, clock);
        });
        await probed.probe(page);
        const { clocks, wrong } = await page.evaluate(() => window.probe.audit());
        expect(wrong).toEqual([]);
        for (const [id, clock] of confirmed)
          expect(
            (clocks[id] ?? '') >= clock,
            `kill ${round}: ${id} of ${clock} is ${clocks[id] ?? 'gone'}`,
          ).toBe(true);
        if (round === ROUNDS) break;

        const before = confirmed.size;
        const saving = page.evaluate((seed) => window.probe.saveWithoutPause(seed), round + 1);
        saving.catch(() => {});
        while (confirmed.size === before) await pause(5);
        await pause(next() * 700);
        await mortal.kill();
      }
      expect(confirmed.size).toBeGreaterThanOrEqual(ROUNDS);
      console.log(`  ${confirmed.size} confirmed entries over ${ROUNDS} kills`);
    } finally {
      await mortal.discard();
    }
  });

  // Chromium goes on in such a log, and throws the book away at the start after that: seen once in 150 kills
  // among writes, and each time that a log is cut off like this.
  test.each([1, 300, 40_000])(
    'its log is torn %i bytes before the end: what came before and after is there',
    async (bytes) => {
      const mortal = new Mortal();
      const open = async () => {
        const page = await mortal.open();
        await probed.probe(page);
        return page;
      };
      const whole = async (page: Page) => {
        const { clocks, wrong } = await page.evaluate(() => window.probe.audit());
        expect(wrong).toEqual([]);
        return Object.keys(clocks).length;
      };
      try {
        const first = await open();
        await first.evaluate(() => window.probe.fill(24, 5, true));
        await mortal.kill();
        const log = mortal.log();
        truncateSync(log, statSync(log).size - bytes);

        const second = await open();
        expect(await whole(second)).toBeGreaterThan(0);
        await second.evaluate(() => window.probe.fill(8, 9, true));
        const all = await whole(second);
        await mortal.kill();
        expect(await whole(await open())).toBe(all);
      } finally {
        await mortal.discard();
      }
    },
  );

  test(`${ROUNDS} times while it brings in a copy: all of it is there or nothing`, {
    timeout: HANG_MS + 60_000 * ROUNDS,
  }, async () => {
    const next = seededRandom(57);
    const mortal = new Mortal();
    try {
      const first = await mortal.open();
      await probed.probe(first, 'source');
      await first.evaluate(() => window.probe.fill(240, 3, true));
      const bytes = Buffer.from(await first.evaluate(() => window.probe.copy()), 'base64');
      const url = probed.put('copy.zip', bytes);
      await probed.probe(first, 'measured');
      const measured = await watchProgress(first);
      const whole = first.evaluate((copy) => window.probe.bringIn(copy), url);
      await measured.reach(LAST);
      const began = performance.now();
      await whole;
      const commitMs = performance.now() - began;
      const all = Object.keys((await first.evaluate(() => window.probe.audit())).clocks).length;
      await mortal.kill();
      expect(all).toBe(240 + 180);

      const ends = { nothing: 0, all: 0 };
      const atCommit = { nothing: 0, all: 0 };
      let tries = 0;
      let killed: { readonly moment: (typeof MOMENTS)[number]; readonly wasSaid: boolean } | null =
        null;
      for (let round = 0; ; round++) {
        // The browser that looks at what the last one left behind is the next to be killed.
        const page = await mortal.open();
        if (killed) {
          await probed.probe(page, `book-${round - 1}`);
          const { clocks, wrong } = await page.evaluate(() => window.probe.audit());
          expect(wrong).toEqual([]);
          const there = Object.keys(clocks).length - 3;
          expect([0, all], `kill ${round}`).toContain(there);
          if (killed.wasSaid) expect(there).toBe(all);
          const end = there === 0 ? 'nothing' : 'all';
          ends[end]++;
          if (killed.moment === 'commit') atCommit[end]++;
        }
        if (round === ROUNDS) break;

        await probed.probe(page, `book-${round}`);
        await page.evaluate(() => window.probe.fill(3, 99));
        const progress = await watchProgress(page);
        const moment = MOMENTS[round % MOMENTS.length]!;
        const share = 0.9 * next();
        if (moment === 'inside') await stopAt(page, share);
        let hasEnded = false;
        const bringing = page
          .evaluate((copy) => window.probe.bringIn(copy), url)
          .then(
            () => {
              hasEnded = true;
            },
            () => {},
          );
        if (moment === 'inside') await progress.reach(share);
        else if (moment === 'ended') await bringing;
        else {
          // Evenly over the time that the commit takes, and a little beyond.
          tries++;
          await progress.reach(LAST);
          await pause(commitMs * 1.3 * ((tries * GOLDEN) % 1));
        }
        killed = { moment, wasSaid: hasEnded };
        await mortal.kill();
        await bringing;
      }
      console.log(
        `  nothing ${ends.nothing} times, all of it ${ends.all} times; during the commit of ${Math.round(commitMs)} ms ${atCommit.nothing} and ${atCommit.all}`,
      );
      expect(ends.nothing).toBeGreaterThan(0);
      expect(ends.all).toBeGreaterThan(0);
    } finally {
      await mortal.discard();
    }
  });
});
