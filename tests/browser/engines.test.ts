import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { openCopy } from '../../src/book/transfer/unpack.ts';
import { hasShared, SHARED } from '../shared.ts';
import { type Engine, Painter } from '../tools/engines.ts';
import { firefox } from '../tools/firefox.ts';
import { BROAD, widePng } from '../tools/gamut.ts';
import { DESKTOP, PHONE, Served } from '../tools/studio.ts';
import { webkit } from '../tools/webkit.ts';
import { onDisk } from './disk.ts';
import { expectAlike, gatheredOf, inNode } from './gathered.ts';

const JAY = resolve(import.meta.dirname, '../../samples/jay-feather.jpg');
const LADYBIRD = join(SHARED, 'photos/ladybird-forget-me-nots.jpg');
/** A folder for pictures to look at; none unless told. */
const LOOK = process.env.KINGCUP_LOOK;

const button = (name: string) => `//button[normalize-space()="${name}"]`;
const link = (name: string) => `//a[normalize-space()="${name}"]`;
const heading = (name: string) => `//*[self::h1 or self::h2][normalize-space()="${name}"]`;
const row = (name: string, kind: string) =>
  `//a[@class="row"][.//*[normalize-space()="${name}"]][contains(., "${kind}")]`;
const saying = (text: string) => `//main//*[contains(text(), "${text}")]`;
const field = (label: string) => {
  const named = `//label[starts-with(normalize-space(), "${label}")]`;
  return `(${named}//input | ${named}//textarea | //*[@id=${named}/@for])`;
};
const PHOTOGRAPH = field('Choose a photograph');
const SAVED = '//*[contains(@class, "save-line")][normalize-space()="Saved in this browser"]';
const PILE = `//*[@role="img"][contains(., "mixed into one pile")]`;

function describeEngine(engine: Engine, checks: () => void): void {
  if (engine.isHere()) describe(engine.name, checks);
  else if (process.env.KINGCUP_MUST === '1') throw new Error(`no ${engine.name}`);
  else test.skip(`${engine.name} (skipped: it needs ${engine.packages.join(', ')})`, () => {});
}

describe.each([firefox, webkit])('the whole story in another engine', (engine) => {
  describeEngine(engine, () => {
    const served = new Served();
    let painter: Painter;
    let began = 0;
    beforeAll(async () => {
      await served.start();
      painter = await Painter.with(engine);
    });
    afterAll(async () => {
      await painter?.leave();
      await served.stop();
    });
    beforeEach(() => {
      began = Date.now();
    });
    afterEach(({ task }) => {
      console.log(`  ${engine.name}, ${task.name}: ${((Date.now() - began) / 1000).toFixed(1)} s`);
    });

    let shot = 0;
    async function look(): Promise<void> {
      if (LOOK) await painter.pane.picture(join(LOOK, `${engine.name}-${++shot}.png`));
    }
    /** Every complaint of the page from here on; a page that is loaded anew begins anew. */
    const listen = () =>
      painter.pane.run(() => {
        const heard: string[] = [];
        Object.assign(window, { heard });
        addEventListener('error', (event) => heard.push(event.message));
        addEventListener('unhandledrejection', (event) => heard.push(String(event.reason)));
        addEventListener('securitypolicyviolation', (event) => heard.push(event.blockedURI));
      });
    const heard = () =>
      painter.pane.run(() => (window as unknown as { heard: readonly string[] }).heard);

    /** Brings a photograph, waits for its harmony, and compares that with what Node gathers. */
    async function gather(path: string): Promise<void> {
      const { pane } = painter;
      await painter.bring(PHOTOGRAPH, path);
      await painter.until('a new specimen', async () =>
        /^#\/harmony\/./.test(await pane.run(() => location.hash)),
      );
      await painter.see(button('Keep this harmony'));
      const id = await pane.run(() => location.hash.split('/')[2]!);
      const found = async () => gatheredOf(await pane.run(onDisk, { table: 'records', key: id }));
      await painter.until('colours in the book', async () => (await found()).length > 0);
      const most = expectAlike(await found(), await inNode(path));
      console.log(
        `  ${engine.name}: at most ${most.deltaE00.toFixed(2)} (CIEDE2000) and ${most.share.toFixed(4)} of share from Node`,
      );
    }

    test('on a phone: from a photograph to a harmony in the book', async () => {
      const { pane } = painter;
      await pane.resize(PHONE.width, PHONE.height);
      await pane.goto(served.url);
      await listen();
      await painter.see(heading('What did you see?'));
      await gather(JAY);
      await painter.see(PILE);
      expect(await painter.text('//*[contains(@class, "bench")]')).toMatch(/\d+ parts?/);
      await look();
      await painter.write(field('Name'), 'Jay');
      await painter.press(button('Keep this harmony'));
      await painter.see(saying('This harmony is in the book'));
      await painter.see(SAVED);
      expect(await heard()).toEqual([]);
    });

    test('a drapery, a palette and its morning sheet', async () => {
      const { pane } = painter;
      await painter.press(button('Make a drapery of it'));
      await painter.see(`${button('Keep it as a formula')}[not(@disabled)]`);
      await painter.write(field('Name of the drapery'), 'Cloths of the jay');
      await painter.press(button('Keep this drapery'));
      await painter.see(saying('This drapery is in the book.'));
      // What can be undone stays in sight until it is put away: on a phone, over the foot of the page.
      await painter.press('//*[@class="notices"]//button[normalize-space()="Close"]');
      await look();
      await painter.press(link('Palette'));
      await painter.press('//button[contains(., "Jay")][contains(., "harmony")]');
      await painter.see(heading('Jay'));
      await painter.write(field('Canvas width, cm'), '50');
      await painter.write(field('Canvas height, cm'), '25');
      await painter.see(SAVED);
      await painter.press(link('The day’s palette'));
      await painter.see('//*[@role="img"][contains(., "palette with the thumb hole")]');
      await look();
      await painter.press(link('Morning sheet'));
      await painter.see('//*[contains(@class, "sheet")]');
      await look();
      expect(await heard()).toEqual([]);
      expect(
        await pane.run(() => document.documentElement.scrollWidth - innerWidth),
      ).toBeLessThanOrEqual(0);
    });

    test('on a desktop: found in the book, and a copy leaves', async () => {
      const { pane } = painter;
      await pane.resize(DESKTOP.width, DESKTOP.height);
      await painter.press(link('Book'));
      await painter.press(row('Jay', 'Harmony'));
      await painter.see('//article//h2[normalize-space()="Jay"]');
      await look();
      await painter.press(link('Copies'));
      // Engines promise differently, and some say nothing; none of their answers says "safe".
      const promise = '//section[h2/@id="keeping-heading"]/p';
      await painter.see(promise);
      expect(await painter.text(promise)).toMatch(/[Mm]ake copies/);
      console.log(`  ${engine.name} says: ${await painter.text(promise)}`);
      await painter.press(button('Make a copy of the book'));
      await painter.press(button('Save the file'));
      await painter.see(saying('The copy has left Kingcup.'));
      const arrived = () =>
        readdirSync(painter.downloads).filter((name) => /^kingcup-book-[\d-]+\.zip$/.test(name));
      await painter.until('the copy among the downloads', () => arrived().length === 1);
      const bytes = new Uint8Array(readFileSync(join(painter.downloads, arrived()[0]!)));
      const copy = await openCopy(bytes, { subtle: crypto.subtle });
      expect(copy.ok && copy.value.records.map(({ kind }) => kind).sort()).toEqual(
        expect.arrayContaining(['drapery', 'harmony', 'palette', 'passage', 'specimen']),
      );
      expect(await heard()).toEqual([]);
    });

    test('with no server: all of it is still there, and another photograph is gathered', async () => {
      const { pane } = painter;
      await painter.until('the service worker', () =>
        pane.run(() => navigator.serviceWorker.controller !== null),
      );
      await served.stop();
      await pane.goto(`${served.url}#/book`);
      await pane.reload();
      await listen();
      await painter.see(row('Cloths of the jay', 'Drapery'));
      await painter.press(row('Jay', 'Harmony'));
      await painter.press(link('Open in Harmony'));
      await painter.see(heading('Jay'));
      await painter.see(PILE);
      // Typed, and loaded anew before anything had the time to be saved.
      await painter.write(field('Name'), 'Jay on moss');
      await pane.reload();
      await listen();
      await painter.see(heading('Jay on moss'));
      await painter.press(link('Walk'));
      await painter.see(heading('What did you see?'));
      await gather(hasShared ? LADYBIRD : JAY);
      await look();
      expect(await heard()).toEqual([]);
      await served.start();
    });

    test('colours beyond sRGB: those of Display P3 as in Node, others with a remark', async () => {
      const fields = [
        [255, 0, 0],
        [0, 255, 0],
        [90, 90, 90],
        [200, 180, 40],
      ];
      const rgb = new Uint8Array(200 * 200 * 3);
      for (let i = 0; i < 200 * 200; i++)
        rgb.set(fields[(i % 200 < 100 ? 0 : 1) + (i < 200 * 100 ? 0 : 2)]!, i * 3);
      const [p3, broad] = ['p3.png', 'broad.png'].map((name) => join(painter.downloads, name));
      writeFileSync(p3!, await widePng(rgb, 200, 200));
      writeFileSync(broad!, await widePng(rgb, 200, 200, BROAD));
      await painter.press(link('Walk'));
      await painter.see(heading('What did you see?'));
      await gather(p3!);
      // Neither engine has a canvas beyond sRGB on this system.
      await painter.press(link('Walk'));
      await painter.bring(PHOTOGRAPH, broad!);
      await painter.see(saying('This browser reads colours no further than sRGB'));
    });
  });
});
