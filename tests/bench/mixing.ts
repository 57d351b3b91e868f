import { onPage } from './browser.ts';
import type { Row } from './mixture.ts';

const ROUNDS = 5;

/** The times of the mixture search in a worker of Chromium. Null without a browser. */
export const benchMixing = (): Promise<Row[] | null> =>
  onPage(async (page) => {
    const { rows, wholeMs } = await page.evaluate((rounds) => window.timeMixtures(rounds), ROUNDS);
    const ms = wholeMs.toSorted((a, b) => a - b)[Math.floor(ROUNDS / 2)]!;
    const ratio = ms / rows[0]!.ms;
    const note = 'median; every job has a worker of its own';
    return [...rows, { what: "the app's worker, from its start to its answer", ms, ratio, note }];
  });
