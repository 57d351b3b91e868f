import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { build } from 'vite';
import { serveApp } from '../../src/host/server.ts';
import { CHROMIUM_FLAGS, ensureChromium } from '../tools/chromium.ts';

/**
 * Measures something on the timing page, built into a folder of its own and opened in Chromium.
 * @param measure what lies in the folder is served, so it may put files there before it asks the page
 * @returns null without a browser
 */
export async function onPage<T>(
  measure: (page: Page, folder: string) => Promise<T>,
): Promise<T | null> {
  const executablePath = ensureChromium();
  if (executablePath === null) return null;
  const folder = mkdtempSync(join(tmpdir(), 'kingcup-bench-'));
  await build({
    root: resolve(import.meta.dirname, '../../tests/bench/page'),
    configFile: false,
    logLevel: 'error',
    base: './',
    worker: { format: 'es' },
    build: { outDir: folder, emptyOutDir: true, target: 'es2023' },
  });
  const { server, url } = await serveApp(folder, 0);
  const browser = await chromium.launch({ executablePath, args: CHROMIUM_FLAGS });
  try {
    const page = await browser.newPage();
    await page.goto(url);
    return await measure(page, folder);
  } finally {
    await browser.close();
    server.closeAllConnections();
    server.close();
    rmSync(folder, { recursive: true });
  }
}
