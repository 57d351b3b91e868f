import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { serveApp } from '../../src/host/server.ts';
import { CHROMIUM_FLAGS, findChromium } from './chromium.ts';

export const APP = resolve(import.meta.dirname, '../../dist/app');
export const DESKTOP = { width: 1280, height: 860 };
export const PHONE = { width: 390, height: 844 };

/** The built app, served; the server can be stopped and started again on the same port. */
export class Served {
  url = '';
  #server: Awaited<ReturnType<typeof serveApp>>['server'] | null = null;

  /** Does nothing where it is already being served. */
  async start(): Promise<void> {
    if (this.#server !== null) return;
    const port = this.url === '' ? 0 : Number(new URL(this.url).port);
    const { server, url } = await serveApp(APP, port);
    this.#server = server;
    this.url = url;
  }

  async stop(): Promise<void> {
    const server = this.#server;
    if (server === null) return;
    this.#server = null;
    server.closeAllConnections();
    await new Promise((done) => server.close(done));
  }
}

/** A browser with a profile of its own on disk, as a painter's is; `errors` gathers all that the page complains of. */
export class Studio {
  readonly errors: string[] = [];
  readonly #folder = mkdtempSync(join(tmpdir(), 'kingcup-profile-'));
  context!: BrowserContext;

  async open(
    viewport = DESKTOP,
    colorScheme: 'light' | 'dark' = 'light',
    locale = 'en-GB',
  ): Promise<Page> {
    const executablePath = findChromium();
    if (executablePath === null) throw new Error('no Chromium');
    this.context = await chromium.launchPersistentContext(this.#folder, {
      executablePath,
      args: CHROMIUM_FLAGS,
      headless: true,
      viewport,
      colorScheme,
      locale,
      hasTouch: viewport === PHONE,
      reducedMotion: 'reduce',
    });
    const page = this.context.pages()[0] ?? (await this.context.newPage());
    page.on('console', (message) => {
      if (message.type() === 'error' || message.type() === 'warning')
        this.errors.push(message.text());
    });
    page.on('pageerror', (error) => this.errors.push(String(error)));
    return page;
  }

  /** Closes the browser; the profile stays for the next {@link open}. */
  async close(): Promise<void> {
    await this.context?.close();
  }

  async discard(): Promise<void> {
    await this.close();
    rmSync(this.#folder, { recursive: true, force: true });
  }
}
