import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { CHROMIUM_FLAGS, findChromium } from '../tools/chromium.ts';
import { HANG_MS } from '../tools/studio.ts';

/** A browser that a test started itself and can therefore end as a power cut would. */
export class Mortal {
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
    this.#browser = await chromium.connectOverCDP(address, { timeout: HANG_MS });
    const context = this.#browser.contexts()[0]!;
    context.setDefaultTimeout(HANG_MS);
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

  /** The file that its store writes into. */
  log(): string {
    const all = join(this.folder, 'Default/IndexedDB');
    const [store] = readdirSync(all).filter((name) => name.endsWith('.indexeddb.leveldb'));
    const logs = readdirSync(join(all, store!)).filter((name) => name.endsWith('.log'));
    return join(all, store!, logs.sort().at(-1)!);
  }

  async discard(): Promise<void> {
    await this.kill();
    rmSync(this.folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  }
}
