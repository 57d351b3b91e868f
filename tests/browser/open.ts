import { describe, test } from 'vitest';
import { findChromium } from '../tools/chromium.ts';

export { APP, DESKTOP, PHONE, Served, Studio } from '../tools/studio.ts';

const present = findChromium() !== null;
if (!present && process.env.KINGCUP_MUST === '1') throw new Error('no Chromium');

/** Checks that need a browser; one visible skip where there is none. */
export function describeBrowser(name: string, checks: () => void): void {
  if (present) describe(name, checks);
  else test.skip(`${name} (skipped: no Chromium)`, () => {});
}
