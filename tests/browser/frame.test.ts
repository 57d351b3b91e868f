import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { serveApp } from '../../src/host/server.ts';
import { APP, Served, Studio } from '../tools/studio.ts';
import { describeBrowser } from './open.ts';

const JAY = resolve(import.meta.dirname, '../../samples/jay-feather.jpg');

describeBrowser('the frame of the app', () => {
  test('a new version waits for the painter’s word, then one window changes to it', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'kingcup-app-'));
    cpSync(APP, folder, { recursive: true });
    const { server, url } = await serveApp(folder, 0);
    const studio = new Studio();
    try {
      const page = await studio.open();
      await page.goto(url);
      await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
      await expect.poll(() => page.getByText('A newer Kingcup is ready').count()).toBe(0);
      // A harmony that is kept, and a name that is still being typed when the painter agrees.
      await page.getByLabel('Choose a photograph').setInputFiles(JAY);
      await page.getByRole('button', { name: 'Keep this harmony' }).click();
      await page.getByText('This harmony is in the book').waitFor();
      await expect.poll(() => page.locator('.save-line').innerText()).toBe('Saved in this browser');

      const worker = join(folder, 'service.worker.js');
      writeFileSync(worker, `${readFileSync(worker, 'utf8')}\n// another version\n`);
      await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
      await page.getByText('A newer Kingcup is ready').waitFor();
      const waiting = () =>
        page.evaluate(async () => (await navigator.serviceWorker.ready).waiting !== null);
      expect(await waiting()).toBe(true);

      const reloaded = page.waitForEvent('load');
      await page.getByLabel('Name').last().fill('Typed at the last moment');
      await page.getByRole('button', { name: 'Change to it now' }).click();
      await reloaded;
      await page.getByRole('heading', { name: 'Typed at the last moment' }).waitFor();
      expect(await waiting()).toBe(false);
      expect(studio.errors).toEqual([]);
    } finally {
      await studio.discard();
      server.closeAllConnections();
      server.close();
      rmSync(folder, { recursive: true });
    }
  });

  test('the policy is sent as a header and stands in the page; what is not there is 404', async () => {
    const served = new Served();
    await served.start();
    try {
      const page = await fetch(served.url);
      expect(page.headers.get('content-security-policy')).toContain("default-src 'none'");
      expect(page.headers.get('cache-control')).toBe('no-cache');
      expect(await page.text()).toContain('http-equiv="Content-Security-Policy"');
      for (const path of ['assets/gone.js', 'harmony', '.git/config', '../package.json'])
        expect((await fetch(served.url + path)).status, path).toBe(404);
      expect((await fetch(`${served.url}robots.txt`)).status).toBe(200);
    } finally {
      await served.stop();
    }
  });

  test('the stored photograph carries nothing of the camera’s notes', async () => {
    const served = new Served();
    await served.start();
    const studio = new Studio();
    try {
      const { default: sharp } = await import('sharp');
      const noted = await sharp(JAY)
        .withExif({ IFD0: { Make: 'a camera' }, IFD3: { GPSLatitudeRef: 'N' } })
        .jpeg()
        .toBuffer();
      expect(noted.includes('Exif')).toBe(true);
      const page = await studio.open();
      await page.goto(served.url);
      await page
        .getByLabel('Choose a photograph')
        .setInputFiles({ name: 'noted.jpg', mimeType: 'image/jpeg', buffer: noted });
      await page.getByRole('button', { name: 'Keep this harmony' }).waitFor();
      const stored = await page.evaluate(async () => {
        const src = document.querySelector<HTMLImageElement>('.photograph img')!.src;
        const image = await new Promise<IDBDatabase>((done, failed) => {
          const asked = indexedDB.open('studio-book');
          asked.onsuccess = () => done(asked.result);
          asked.onerror = () => failed(asked.error);
        });
        const files = await new Promise<{ bytes: ArrayBuffer; type: string }[]>((done) => {
          const all = image.transaction('files').objectStore('files').getAll();
          all.onsuccess = () => done(all.result);
        });
        const text = (bytes: ArrayBuffer) =>
          Array.from(new Uint8Array(bytes), (byte) => String.fromCharCode(byte)).join('');
        return {
          src,
          jpegs: files.filter(({ type }) => type === 'image/jpeg').map((f) => text(f.bytes)),
        };
      });
      expect(stored.jpegs.length).toBeGreaterThan(0);
      for (const jpeg of stored.jpegs) {
        expect(jpeg.slice(0, 2)).toBe('\xff\xd8');
        expect(jpeg).not.toContain('Exif');
        expect(jpeg).not.toContain('a camera');
      }
    } finally {
      await studio.discard();
      await served.stop();
    }
  });
});
