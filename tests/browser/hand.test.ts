import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { DESKTOP, describeBrowser, inStudio } from './open.ts';
import { Probed } from './probed.ts';

/** What the stand-ins for the system's own dialogs do next, and what they were handed. */
interface Dialogs {
  next: 'close' | 'refuse' | 'fail' | 'take';
  /** How often one of them was asked for. */
  asked: number;
  readonly shared: { name: string; type: string; start: string }[];
  readonly written: { name: string; start: string; whole: boolean }[];
}
declare global {
  interface Window {
    dialogs: Dialogs;
  }
}

/** Runs before the app: no test can press the system's own share sheet or save picker. */
function standIn(): void {
  const dialogs: Dialogs = { next: 'take', asked: 0, shared: [], written: [] };
  const startOf = async (file: Blob) => (await file.slice(0, 2).text()) as string;
  const answer = () => {
    dialogs.asked++;
    if (dialogs.next === 'close') throw new DOMException('closed', 'AbortError');
    if (dialogs.next === 'refuse') throw new DOMException('not allowed here', 'SecurityError');
    if (dialogs.next === 'fail') throw new TypeError('no');
  };
  Object.assign(window, { dialogs });
  Object.defineProperties(navigator, {
    canShare: { value: ({ files }: ShareData) => files?.length === 1 },
    share: {
      value: async ({ files: [file] = [] }: ShareData) => {
        if (!navigator.userActivation.isActive) throw new DOMException('', 'NotAllowedError');
        answer();
        dialogs.shared.push({ name: file!.name, type: file!.type, start: await startOf(file!) });
      },
    },
  });
  Object.defineProperty(window, 'showSaveFilePicker', {
    value: async ({ suggestedName: name }: { suggestedName: string }) => {
      answer();
      const written = { name, start: '', whole: false };
      dialogs.written.push(written);
      return {
        createWritable: async () => ({
          write: async (file: Blob) => {
            written.start = await startOf(file);
          },
          close: async () => {
            written.whole = true;
          },
        }),
      };
    },
  });
}

describeBrowser('how a copy leaves', () => {
  const probed = new Probed();
  beforeAll(() => probed.start());
  afterAll(() => probed.stop());

  const next = (page: Page, what: Dialogs['next']) =>
    page.evaluate((answer) => {
      window.dialogs.next = answer;
    }, what);
  const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

  test('by the share sheet, by the save picker, else among the downloads', () =>
    inStudio(DESKTOP, 'light', async (page) => {
      await page.addInitScript(standIn);
      await probed.probe(page);
      await page.evaluate(() => window.probe.fill(4, 7));
      await page.goto(`${probed.url}#/book/copies`);
      await button(page, 'Make a copy of the book').click();
      const [share, save] = [button(page, 'Hand it on'), button(page, 'Save the file')];
      await share.waitFor();
      const asked = (times: number) =>
        expect.poll(() => page.evaluate(() => window.dialogs.asked)).toBe(times);
      const left = page.getByText('The copy has left Kingcup.');
      const failed = page.getByText('The file could not be written.');

      // The painter closes the sheet, then the picker: nothing has left, nothing is complained of.
      await next(page, 'close');
      await share.click();
      await save.click();
      await asked(2);
      await expect.poll(() => left.count()).toBe(0);
      await expect.poll(() => failed.count()).toBe(0);
      // Neither works: that is said, and the copy is still at hand.
      await next(page, 'fail');
      await share.click();
      await failed.waitFor();
      await button(page, 'Close').last().click();
      await save.click();
      await failed.waitFor();
      await expect.poll(() => left.count()).toBe(0);
      // A system that has the picker but does not let it be used.
      await next(page, 'refuse');
      const [download] = await Promise.all([page.waitForEvent('download'), save.click()]);
      expect(download.suggestedFilename()).toMatch(/^kingcup-book-[\d-]+\.zip$/);
      await left.waitFor();
      await page.getByText('Nothing has changed since.').waitFor();

      await next(page, 'take');
      await share.click();
      await save.click();
      const name = download.suggestedFilename();
      await expect
        .poll(() =>
          page.evaluate(() => {
            const { shared, written } = window.dialogs;
            return { shared, written };
          }),
        )
        .toEqual({
          shared: [{ name, type: 'application/zip', start: 'PK' }],
          written: [{ name, start: 'PK', whole: true }],
        });

      // An entry by itself goes the same ways.
      await page.goto(`${probed.url}#/book`);
      await page.locator('.long .row').first().click();
      await button(page, 'Copy to hand on').click();
      await share.click();
      await left.waitFor();
      await expect
        .poll(() => page.evaluate(() => window.dialogs.shared.at(-1)?.name))
        .toMatch(/^kingcup-harmony-/);
      await button(page, 'Table (CSV)').click();
      await expect
        .poll(() => page.evaluate(() => window.dialogs.written.at(-1)?.name))
        .toMatch(/^harmony-.*\.csv$/);
    }));
});
