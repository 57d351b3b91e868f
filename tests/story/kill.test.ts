import { afterAll, beforeAll, expect, test } from 'vitest';
import { Mortal } from '../browser/mortal.ts';
import { describeBrowser } from '../browser/open.ts';
import { Probed } from '../browser/probed.ts';

/** The first is killed after a specimen was saved, the second after a harmony, the third after a change of it. */
const ROUNDS = 3;

describeBrowser('the browser is killed', () => {
  const probed = new Probed();
  beforeAll(() => probed.start());
  afterAll(() => probed.stop());

  test(`${ROUNDS} times, each as soon as the book confirms a save: all that was confirmed is there and whole`, async () => {
    const mortal = new Mortal();
    /** The latest version that the book said is on disk. */
    const confirmed = new Map<string, string>();
    try {
      for (let round = 0; ; round++) {
        // The browser that looks at what the last one left behind is the next to be killed.
        const page = await mortal.open();
        let count = 0;
        let tell!: () => void;
        const enough = new Promise<void>((done) => {
          tell = done;
        });
        await page.exposeFunction('confirmed', (id: string, clock: string) => {
          confirmed.set(id, clock);
          if (++count > round) tell();
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

        const saving = page.evaluate((seed) => window.probe.saveWithoutPause(seed), round + 1);
        const ended = saving.then(
          () => 'ended',
          (error) => String(error),
        );
        expect(await Promise.race([enough.then(() => 'confirmed'), ended])).toBe('confirmed');
        await mortal.kill();
        await ended;
      }
      expect(confirmed.size).toBeGreaterThanOrEqual(ROUNDS);
    } finally {
      await mortal.discard();
    }
  });
});
