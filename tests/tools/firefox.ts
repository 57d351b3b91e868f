import { existsSync } from 'node:fs';
import { join } from 'node:path';
import puppeteer, { type ElementHandle } from 'puppeteer-core';
import type { Engine, Pane } from './engines.ts';
import { HANG_MS } from './studio.ts';

const PATHS = ['/usr/bin/firefox-esr', '/usr/bin/firefox'];
const find = () => PATHS.find((path) => existsSync(path));

/** Firefox without a screen, over WebDriver BiDi. */
export const firefox: Engine = {
  name: 'Firefox',
  packages: ['firefox-esr'],
  isHere: () => find() !== undefined,
  async open(folder) {
    const browser = await puppeteer.launch({
      browser: 'firefox',
      executablePath: find()!,
      headless: true,
      timeout: HANG_MS,
      protocolTimeout: HANG_MS,
      userDataDir: join(folder, 'profile'),
      extraPrefsFirefox: {
        'browser.download.folderList': 2,
        'browser.download.dir': join(folder, 'downloads'),
      },
    });
    const page = (await browser.pages())[0] ?? (await browser.newPage());
    page.setDefaultTimeout(HANG_MS);
    const element = async (path: string): Promise<ElementHandle> => {
      const found = await page.$(`xpath/${path}`);
      if (!found) throw new Error(`nothing there: ${path}`);
      return found;
    };
    return {
      async goto(url) {
        await page.goto(url);
      },
      async reload() {
        await page.reload();
      },
      // The same function with looser types.
      run: page.evaluate.bind(page) as unknown as Pane['run'],
      press: async (path) => (await element(path)).click(),
      type: async (path, keys) => (await element(path)).type(keys),
      upload: async (path, file) =>
        ((await element(path)) as ElementHandle<HTMLInputElement>).uploadFile(file),
      resize: (width, height) => page.setViewport({ width, height }),
      async picture(file) {
        await page.screenshot({ path: file as `${string}.png` });
      },
      close: () => browser.close(),
    };
  },
};
