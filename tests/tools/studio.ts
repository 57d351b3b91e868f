import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { serveApp } from '../../src/host/server.ts';
import { CHROMIUM_FLAGS, findChromium } from './chromium.ts';

export const APP = resolve(import.meta.dirname, '../../dist/app');
export const DESKTOP = { width: 1280, height: 860 };
export const PHONE = { width: 390, height: 844 };

/** After so long a page is taken to hang: far beyond what a slow or busy machine needs for any one step. */
export const HANG_MS = 240_000;

/** Frames without any change after which a page is taken to have come to rest. */
const REST_FRAMES = 6;

/** Waits until nothing in the page changes any more, counted in its own frames: a slow page has slow ones. */
export const still = (page: Page): Promise<void> =>
  page.evaluate(
    (frames) =>
      new Promise<void>((done) => {
        let quiet = 0;
        const observer = new MutationObserver(() => {
          quiet = 0;
        });
        const every = { subtree: true, childList: true, attributes: true, characterData: true };
        observer.observe(document, every);
        const frame = () => {
          if (++quiet <= frames) requestAnimationFrame(frame);
          else {
            observer.disconnect();
            done();
          }
        };
        requestAnimationFrame(frame);
      }),
    REST_FRAMES,
  );

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
  /** Rejects with the first complaint: what is waited for after it may never come. */
  readonly complaint: Promise<never>;
  readonly #folder = mkdtempSync(join(tmpdir(), 'kingcup-profile-'));
  #reject!: (reason: Error) => void;
  context!: BrowserContext;
  /** The page of the latest {@link open}. */
  page: Page | null = null;

  constructor() {
    this.complaint = new Promise((_, reject) => {
      this.#reject = reject;
    });
    // Most tests look at `errors` at their end instead.
    this.complaint.catch(() => {});
  }

  async open(
    viewport = DESKTOP,
    colorScheme: 'light' | 'dark' = 'light',
    locale = 'en-GB',
  ): Promise<Page> {
    const executablePath = findChromium();
    if (executablePath === null) throw new Error('no Chromium');
    this.context = await chromium.launchPersistentContext(this.#folder, {
      executablePath,
      timeout: HANG_MS,
      args: CHROMIUM_FLAGS,
      headless: true,
      viewport,
      colorScheme,
      locale,
      hasTouch: viewport === PHONE,
      reducedMotion: 'reduce',
    });
    this.context.setDefaultTimeout(HANG_MS);
    const page = this.context.pages()[0] ?? (await this.context.newPage());
    page.on('console', (message) => {
      if (message.type() === 'error' || message.type() === 'warning')
        this.#complain(message.text());
    });
    page.on('pageerror', (error) => this.#complain(String(error)));
    this.page = page;
    return page;
  }

  #complain(words: string): void {
    this.errors.push(words);
    this.#reject(new Error(`the page complained: ${words}`));
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
