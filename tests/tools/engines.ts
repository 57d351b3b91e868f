import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { HANG_MS } from './studio.ts';

/**
 * A page in an engine that is not Chromium: the little that the drivers of all of them can do.
 * Elements are named by XPath, the one language that all of them know.
 */
export interface Pane {
  /** Opens an address, or another place of the page that is open. */
  goto(url: string): Promise<void>;
  reload(): Promise<void>;
  /** Runs a function in the page; what goes in and what comes out is JSON. */
  run<A extends readonly unknown[], R>(task: Task<A, R>, ...given: A): Promise<R>;
  /** A real press of the mouse on the first element there. */
  press(path: string): Promise<void>;
  /** Real keys into the first element there. */
  type(path: string, keys: string): Promise<void>;
  upload(path: string, file: string): Promise<void>;
  /** Of what the page sees of the window; an engine may have a least width. */
  resize(width: number, height: number): Promise<void>;
  /** Writes what is to be seen into a PNG. */
  picture(file: string): Promise<void>;
  /** Ends the engine. */
  close(): Promise<void>;
}
export type Task<A extends readonly unknown[], R> = (...given: A) => R | Promise<R>;

export interface Engine {
  readonly name: string;
  /** Those of Debian that bring it. */
  readonly packages: readonly string[];
  isHere(): boolean;
  /** @param folder of its own, where its profile, its `downloads` and whatever else it leaves go */
  open(folder: string): Promise<Pane>;
}

const POLL_MS = 60;
/** A driver that has not answered after so long will not. */
const CALL_MS = HANG_MS / 2;

/** An open engine as a painter uses it: whatever is to be pressed is first waited for. */
export class Painter {
  readonly pane: Pane;
  readonly #folder: string;
  readonly #patienceMs: number;

  private constructor(pane: Pane, folder: string, patienceMs: number) {
    this.pane = pane;
    this.#folder = folder;
    this.#patienceMs = patienceMs;
  }

  static async with(engine: Engine, patienceMs = HANG_MS): Promise<Painter> {
    const folder = mkdtempSync(join(tmpdir(), 'kingcup-engine-'));
    mkdirSync(join(folder, 'downloads'));
    return new Painter(impatient(await engine.open(folder)), folder, patienceMs);
  }

  get downloads(): string {
    return join(this.#folder, 'downloads');
  }

  /** Waits until something holds. */
  async until(what: string, holds: () => boolean | Promise<boolean>): Promise<void> {
    const end = Date.now() + this.#patienceMs;
    while (!(await holds())) {
      if (Date.now() > end) throw new Error(`waited in vain: ${what}\n${await this.#said()}`);
      await new Promise((done) => setTimeout(done, POLL_MS));
    }
  }

  /** Places of the elements there that can be seen; the first of all is 1, as XPath counts. */
  seen(path: string): Promise<readonly number[]> {
    return this.pane.run((xpath) => {
      const type = XPathResult.ORDERED_NODE_SNAPSHOT_TYPE;
      const found = document.evaluate(xpath, document, null, type);
      const seen: number[] = [];
      for (let i = 0; i < found.snapshotLength; i++)
        if ((found.snapshotItem(i) as Element).getClientRects().length > 0) seen.push(i + 1);
      return seen;
    }, path);
  }

  see(path: string): Promise<void> {
    return this.until(path, async () => (await this.seen(path)).length > 0);
  }

  /** The first that can be seen, brought into the middle: drivers differ in how well they scroll. */
  async press(path: string): Promise<void> {
    const able = `${path}[not(@disabled)]`;
    await this.see(able);
    const one = await this.#first(able);
    await this.#uncovered(one);
    await this.pane.press(one);
  }

  /** In the place of what the field held; then goes on, as with the tab key. */
  async write(path: string, text: string): Promise<void> {
    await this.press(path);
    await this.pane.run(() => (document.activeElement as HTMLInputElement).select());
    await this.pane.type(await this.#first(path), text);
    await this.pane.run(() => (document.activeElement as HTMLElement).blur());
  }

  /** A file into a field for files, seen or not, as soon as it is there. */
  async bring(path: string, file: string): Promise<void> {
    const there = (xpath: string) =>
      document.evaluate(xpath, document, null, XPathResult.BOOLEAN_TYPE).booleanValue;
    await this.until(path, () => this.pane.run(there, path));
    await this.pane.upload(path, file);
  }

  /** The text of what is there, spaces made one. */
  text(path: string): Promise<string> {
    return this.pane.run((xpath) => {
      const found = document.evaluate(xpath, document, null, XPathResult.FIRST_ORDERED_NODE_TYPE);
      return (found.singleNodeValue?.textContent ?? '').replaceAll(/\s+/g, ' ').trim();
    }, path);
  }

  async leave(): Promise<void> {
    await this.pane.close();
    rmSync(this.#folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  }

  /** Brought into the middle until it lies under nothing else: a page may still be moving, or go back to where it was left. */
  #uncovered(one: string): Promise<void> {
    return this.until(`nothing over ${one}`, () =>
      this.pane.run((xpath) => {
        const type = XPathResult.FIRST_ORDERED_NODE_TYPE;
        const found = document.evaluate(xpath, document, null, type).singleNodeValue as Element;
        // Whoever turns the wheel is not taken back to where a page was left.
        dispatchEvent(new WheelEvent('wheel'));
        found.scrollIntoView({ block: 'center', behavior: 'instant' });
        const { x, y, width, height } = found.getBoundingClientRect();
        const top = document.elementFromPoint(x + width / 2, y + height / 2);
        return top !== null && (found.contains(top) || top.contains(found));
      }, one),
    );
  }

  async #first(path: string): Promise<string> {
    const [first] = await this.seen(path);
    const one = `(${path})[${first}]`;
    await this.pane.run((xpath) => {
      const type = XPathResult.FIRST_ORDERED_NODE_TYPE;
      const found = document.evaluate(xpath, document, null, type).singleNodeValue;
      (found as Element).scrollIntoView({ block: 'center', behavior: 'instant' });
    }, one);
    return one;
  }

  /** What the page says: for whoever reads that something was waited for in vain. */
  #said(): Promise<string> {
    return this.pane
      .run(() => {
        const bars = [...document.querySelectorAll('progress')].map(({ value }) => value);
        return `${location.href} ${bars}\n${document.body.textContent}`.slice(0, 2000);
      })
      .catch(String);
  }
}

/** A call that a driver never answers ends in an error that names it. */
function impatient(pane: Pane): Pane {
  const told = (name: string, answer: unknown): unknown => {
    if (!(answer instanceof Promise)) return answer;
    let timer: ReturnType<typeof setTimeout>;
    const late = new Promise((_, reject) => {
      timer = setTimeout(() => reject(new Error(`the driver never answered: ${name}`)), CALL_MS);
    });
    return Promise.race([answer, late]).finally(() => clearTimeout(timer));
  };
  return new Proxy(pane, {
    get: (target, name: keyof Pane) => {
      const call = target[name] as (...given: unknown[]) => unknown;
      return (...given: unknown[]) =>
        told(`${name} ${given.map(String)}`, call.apply(target, given));
    },
  });
}
