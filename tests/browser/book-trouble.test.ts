import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { violations } from '../tools/axe.ts';
import { onDisk } from './disk.ts';
import { describeBrowser, PHONE, Studio } from './open.ts';
import { Probed } from './probed.ts';

const JAY = resolve(import.meta.dirname, '../../samples/jay-feather.jpg');

const line = (page: Page) => page.locator('.save-line');

describeBrowser('the book in trouble', () => {
  const probed = new Probed();
  beforeAll(() => probed.start());
  afterAll(() => probed.stop());

  test('a page is marked while it writes, and leaves no mark behind when it is left in order', async () => {
    const studio = new Studio();
    try {
      const page = await studio.open();
      const marks = async () => {
        const keys = await page.evaluate(onDisk, { table: 'meta', onlyKeys: true });
        return (keys as string[]).filter((one) => one.startsWith('at work ')).length;
      };
      await page.goto(probed.url);
      await page.getByLabel('Choose a photograph').setInputFiles(JAY);
      await page.getByRole('button', { name: 'Keep this harmony' }).waitFor();
      expect(await marks()).toBe(1);
      await page.goto(`${probed.url}icons/192.png`);
      await expect.poll(marks).toBe(0);
    } finally {
      await studio.discard();
    }
  });

  test('a full disk: not saved is said, what was there stays, a copy leaves, and later it is saved', async () => {
    const studio = new Studio();
    try {
      const before = await studio.open();
      await probed.probe(before);
      await before.evaluate(() => window.probe.fill(12, 5, true));
      await before.goto(`${probed.url}#/book`);
      await before.locator('.long .row').first().waitFor();
      // All of the app is on the device before its room is taken away.
      await before.waitForFunction(() => navigator.serviceWorker.controller !== null);
      await studio.close();
      // Chromium remembers for half a minute how much room there was: it starts anew.
      const page = await studio.open();
      await page.addInitScript(() => {
        Object.defineProperty(window, 'showSaveFilePicker', { value: undefined });
      });
      const session = await page.context().newCDPSession(page);
      const { origin } = new URL(probed.url);
      await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1000 });
      await page.goto(`${probed.url}#/book`);
      await page.locator('.long .row').first().waitFor();
      await page.getByRole('searchbox').fill('Weir');
      await page.locator('.found').getByText(' of ').waitFor();
      const row = page.locator('.long .row').first();
      const name = await row.locator('.row-name').innerText();
      await row.click();
      const heading = page.locator('.entry h2');
      await expect.poll(() => heading.innerText()).toBe(name);
      await page.getByRole('button', { name: 'Rename' }).click();
      await page.getByRole('textbox', { name: 'Name' }).fill('Weir with no room');
      await page.getByRole('button', { name: 'Rename' }).click();
      await expect.poll(() => line(page).getAttribute('data-state')).toBe('not saved');
      expect(await line(page).innerText()).toContain('no room left on this device');
      expect(await heading.innerText()).toBe(name);
      expect(await violations(page)).toEqual([]);

      await line(page).getByRole('link', { name: 'Make a copy' }).click();
      await page.getByRole('button', { name: 'Make a copy of the book' }).click();
      const save = page.getByRole('button', { name: 'Save the file' });
      await save.waitFor();
      const [download] = await Promise.all([page.waitForEvent('download'), save.click()]);
      expect(readFileSync(await download.path()).length).toBeGreaterThan(10_000);
      // The line does not change its mind while nothing has changed.
      expect(await line(page).getAttribute('data-state')).toBe('not saved');

      await session.send('Storage.overrideQuotaForOrigin', { origin });
      await line(page).getByRole('button', { name: 'Try again' }).click();
      await expect.poll(() => line(page).getAttribute('data-state')).toBe('saved');
      await page.goto(`${probed.url}#/book`);
      await page.getByText('Weir with no room').first().waitFor();
      await page.reload();
      await page.getByText('Weir with no room').first().waitFor();
    } finally {
      await studio.discard();
    }
  });

  test('a newer window takes over: this one says that it no longer writes; reloaded, it reads only', async () => {
    const studio = new Studio();
    try {
      const page = await studio.open();
      await probed.probe(page);
      await page.evaluate(() => window.probe.fill(8, 5));
      await page.goto(`${probed.url}#/book`);
      await page.locator('.long .row').first().waitFor();

      const newer = await page.context().newPage();
      await newer.goto(`${probed.url}robots.txt`);
      const version = await newer.evaluate(
        () =>
          new Promise<number>((done, failed) => {
            const asked = indexedDB.open('studio-book', 99);
            asked.onsuccess = () => {
              done(asked.result.version);
              asked.result.close();
            };
            asked.onerror = () => failed(asked.error);
          }),
      );
      expect(version).toBe(99);
      await expect
        .poll(() => line(page).innerText())
        .toContain('A newer Kingcup has opened this book');
      expect(await line(page).getAttribute('data-state')).toBe('not saved');
      expect(await violations(page)).toEqual([]);

      await page.reload();
      await expect.poll(() => line(page).innerText()).toContain('can be read here but not changed');
      expect(await line(page).innerText()).toContain('Read only.');
      await page.locator('.long .row').first().waitFor();
      expect(await page.locator('.found').innerText()).toBe('8 entries');
      await expect.poll(() => page.getByRole('button', { name: 'Rename' }).count()).toBe(0);
      await expect
        .poll(() => page.getByRole('button', { name: 'Put into the bin' }).count())
        .toBe(0);
      expect(await violations(page)).toEqual([]);
      // A copy of it can still be made; nothing can be brought in.
      await page.getByRole('link', { name: 'Copies', exact: true }).click();
      await page.getByRole('button', { name: 'Make a copy of the book' }).click();
      await page.getByText('The copy is ready: 8 entries').waitFor();
      await expect.poll(() => page.getByLabel('Choose a copy').count()).toBe(0);
    } finally {
      await studio.discard();
    }
  });

  test('an older window holds the book: it is said which window to close, then all goes on', async () => {
    const studio = new Studio();
    try {
      const older = await studio.open();
      await probed.probe(older);
      await older.evaluate(async () => {
        await window.probe.fill(8, 5);
        await window.probe.close();
      });
      // A window from before there was any thought of newer ones: it lets go of nothing.
      await older.goto(`${probed.url}robots.txt`);
      await older.evaluate(
        () =>
          new Promise<void>((done) => {
            const asked = indexedDB.open('studio-book');
            asked.onsuccess = () => {
              Object.assign(window, { held: asked.result });
              done();
            };
          }),
      );
      const page = await studio.context.newPage();
      // Today's app as the next version will be: it asks for a newer book.
      await page.addInitScript(() => {
        const { open } = IDBFactory.prototype;
        IDBFactory.prototype.open = function (name: string, version?: number) {
          return open.call(this, name, version === undefined ? undefined : version + 1);
        };
      });
      await page.goto(`${probed.url}#/book`);
      await page.getByText('Close the other window, and this one goes on by itself.').waitFor();
      expect(await violations(page)).toEqual([]);
      await older.close();
      await page.locator('.long .row').first().waitFor();
      await expect.poll(() => page.getByText('Close the other window').count()).toBe(0);
      await expect.poll(() => line(page).innerText()).toBe('Saved in this browser');
    } finally {
      await studio.discard();
    }
  });

  test('a browser that keeps nothing: that is said, and stays said', async () => {
    const studio = new Studio();
    try {
      const page = await studio.open();
      await page.addInitScript(() => {
        IDBFactory.prototype.open = () => {
          throw new DOMException('denied', 'InvalidStateError');
        };
      });
      await page.goto(`${probed.url}#/walk`);
      await expect.poll(() => line(page).innerText()).toContain('lets Kingcup keep nothing');
      await page.getByRole('button', { name: 'Close' }).click();
      expect(await line(page).getAttribute('data-state')).toBe('not saved');
      expect(await violations(page)).toEqual([]);
    } finally {
      await studio.discard();
    }
  });

  test('a browser that threw the book away: that is said, at the next start or when it is next used', async () => {
    const studio = new Studio();
    try {
      const page = await studio.open(PHONE);
      const session = await page.context().newCDPSession(page);
      const { origin } = new URL(probed.url);
      const lose = () =>
        session.send('Storage.clearDataForOrigin', { origin, storageTypes: 'indexeddb' });
      const gone = page.getByText(/^The book that was in this browser is gone/);
      const save = async () => {
        await page.goto(probed.url);
        await page.getByLabel('Choose a photograph').setInputFiles(JAY);
        await page.getByRole('button', { name: 'Keep this harmony' }).waitFor();
      };
      await save();
      expect(await gone.count()).toBe(0);
      await page.goto(`${probed.url}icons/192.png`);
      await lose();
      await page.goto(probed.url);
      await gone.waitFor();
      expect(await violations(page)).toEqual([]);
      await page.reload();
      await page.getByRole('heading', { name: 'What did you see?' }).waitFor();
      await expect.poll(() => line(page).innerText()).toBe('Saved in this browser');
      expect(await gone.count()).toBe(0);

      await save();
      await lose();
      await page.getByRole('link', { name: 'Book', exact: true }).click();
      await gone.waitFor();
    } finally {
      await studio.discard();
    }
  });

  test('two windows of one version see each other’s changes', async () => {
    const studio = new Studio();
    try {
      const one = await studio.open();
      await probed.probe(one);
      await one.evaluate(() => window.probe.fill(8, 5));
      await one.goto(`${probed.url}#/book`);
      await one.locator('.long .row').first().waitFor();
      const two = await studio.context.newPage();
      await two.goto(`${probed.url}#/book`);
      await two.locator('.long .row').first().waitFor();
      await two.getByRole('button', { name: 'Put into the bin' }).click();
      await expect.poll(() => one.locator('.found').innerText()).toBe('7 entries');
      expect(studio.errors).toEqual([]);
    } finally {
      await studio.discard();
    }
  });

  test('what is typed is on the disk when the page hides, and the line never says saved before', async () => {
    const studio = new Studio();
    try {
      const page = await studio.open();
      await page.goto(probed.url);
      await page.getByLabel('Choose a photograph').setInputFiles(JAY);
      await page.getByRole('button', { name: 'Keep this harmony' }).waitFor();
      await page
        .getByRole('img', { name: /mixed into one pile/ })
        .first()
        .waitFor();
      await page.getByRole('button', { name: 'Keep this harmony' }).click();
      await page.getByText('This harmony is in the book').waitFor();
      await expect.poll(() => line(page).innerText()).toBe('Saved in this browser');
      const name = page.getByRole('textbox', { name: 'Name' });
      const said = await name.evaluate(async (field: HTMLInputElement) => {
        // No timer runs any more: only the page that hides can save.
        window.setTimeout = (() => 0) as unknown as typeof window.setTimeout;
        field.value = 'Typed to the last letter';
        field.dispatchEvent(new InputEvent('input', { bubbles: true }));
        await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
        const line = document.querySelector<HTMLElement>('.save-line')!.dataset.state;
        Object.defineProperty(document, 'visibilityState', { value: 'hidden' });
        document.dispatchEvent(new Event('visibilitychange', { bubbles: true }));
        return line;
      });
      expect(said).toBe('saving');
      await expect.poll(() => line(page).getAttribute('data-state')).toBe('saved');
      await page.reload();
      await page.getByRole('heading', { name: 'Typed to the last letter' }).waitFor();
    } finally {
      await studio.discard();
    }
  });
});
