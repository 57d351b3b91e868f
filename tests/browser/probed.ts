import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { build } from 'vite';
import { serveApp } from '../../src/host/server.ts';
import { APP } from '../tools/studio.ts';

/** The built app and, at one origin with it, a page that works on the same book without any screens. */
export class Probed {
  url = '';
  #folder = '';
  #server: Awaited<ReturnType<typeof serveApp>>['server'] | null = null;

  async start(): Promise<void> {
    this.#folder = mkdtempSync(join(tmpdir(), 'kingcup-probed-'));
    cpSync(APP, this.#folder, { recursive: true });
    await build({
      // From here and from the bundled benchmark alike.
      root: resolve(import.meta.dirname, './probe'),
      configFile: false,
      logLevel: 'error',
      base: './',
      build: {
        outDir: join(this.#folder, 'probe'),
        emptyOutDir: true,
        target: 'es2023',
        modulePreload: { polyfill: false },
      },
    });
    const { server, url } = await serveApp(this.#folder, 0);
    this.#server = server;
    this.url = url;
  }

  async stop(): Promise<void> {
    const server = this.#server;
    this.#server = null;
    if (!server) return;
    server.closeAllConnections();
    await new Promise((done) => server.close(done));
    rmSync(this.#folder, { recursive: true, force: true });
  }

  /** Serves a file; the address is for pages of this origin. */
  put(name: string, bytes: Buffer): string {
    writeFileSync(join(this.#folder, name), bytes);
    return `/${name}`;
  }

  /** Opens the probe on a book, the app's own unless named; before the app has a service worker. */
  async probe(page: Page, book?: string): Promise<void> {
    await page.goto(`${this.url}probe/`);
    await page.waitForFunction(() => window.openProbe !== undefined);
    await page.evaluate((name) => window.openProbe(name), book);
  }
}
