import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';

const ROOT = resolve(import.meta.dirname, '../..');
const read = (path: string) => readFileSync(resolve(ROOT, path), 'utf8');

// One package of each bundle: the page, a worker, the service worker. MIT and ISC ask for their notice to go along.
test.each(['preact', 'fflate', 'workbox-precaching'])(
  'the app brings the licence of %s',
  (name) => {
    const { version, license } = JSON.parse(read(`node_modules/${name}/package.json`));
    const [, notice] = read('dist/app/third-party.txt').split(
      `\n${name} ${version} (${license})\n`,
    );
    expect(notice?.split('\n\n\n')[0]).toMatch(/permission/i);
  },
);

test('the licences are kept for offline use and linked from the guide', () => {
  expect(read('dist/app/service.worker.js')).toMatch(
    /url:\s*["'`]third-party\.txt|"url":"third-party\.txt"/,
  );
  expect(read('src/ui/features/guide/GuideScreen.tsx')).toContain('href="./third-party.txt"');
});
