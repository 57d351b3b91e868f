import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { install } from './debian.ts';

/** How Chromium runs without a screen and without asking anyone anything. */
export const CHROMIUM_FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Path of an installed Chromium, or null. KINGCUP_CHROMIUM names one that stands elsewhere. */
export function findChromium(): string | null {
  const named = process.env.KINGCUP_CHROMIUM;
  if (named) return existsSync(named) ? named : null;
  for (const name of ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable']) {
    const found = spawnSync('which', [name], { encoding: 'utf8' });
    if (found.status === 0) return found.stdout.trim();
  }
  const mac = '/Applications/Chromium.app/Contents/MacOS/Chromium';
  return existsSync(mac) ? mac : null;
}

/** Finds Chromium; on Debian as root installs it where there is none. Null where neither is possible. */
export function ensureChromium(): string | null {
  const found = findChromium();
  return found === null && install(['chromium']) ? findChromium() : found;
}
