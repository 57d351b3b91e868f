import { mkdirSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { scratch } from '../cli/run.ts';
import { firstScript } from '../tools/first-script.ts';
import { requireFresh } from '../tools/fresh.ts';

const folder = scratch();

describe('a built file', () => {
  const built = join(folder, 'built.js');
  const source = join(folder, 'source');
  const deep = join(source, 'deep/mix.ts');
  mkdirSync(join(source, 'deep'), { recursive: true });
  writeFileSync(join(source, 'old.ts'), '');
  utimesSync(join(source, 'old.ts'), 1_000, 1_000);
  writeFileSync(deep, '');
  const check = () => requireFresh(built, [source], 'npm run bundle');

  test('that is missing is refused, with what to do', () => {
    expect(() => requireFresh(join(folder, 'none.js'), [source], 'npm run bundle')).toThrow(
      /none\.js is missing\. Run `npm run bundle`/,
    );
  });

  test('that is older than a source is refused, with what to do', () => {
    writeFileSync(built, '');
    utimesSync(built, 2_000, 2_000);
    utimesSync(deep, 2_001, 2_001);
    expect(check).toThrow(/built\.js is older than .*mix\.ts\. Run `npm run bundle` first/);
    utimesSync(deep, 2_000, 2_000);
    expect(check).not.toThrow();
  });
});

describe('scripts of the first screen', () => {
  const page = (html: string) => {
    writeFileSync(join(folder, 'index.html'), html);
    return firstScript(folder);
  };
  mkdirSync(join(folder, 'assets'));
  writeFileSync(
    join(folder, 'assets/a.js'),
    'import{b}from"./b.js";import"./c.js";import("./d.js")',
  );
  for (const name of 'bcde')
    writeFileSync(join(folder, `assets/${name}.js`), `export const ${name}=1`);

  test.each(['/assets/', './assets/', 'assets/'])('are found under “%s”', (at) => {
    const { files, bytes } = page(
      `<link rel="stylesheet" href="x.css"><script type="module" src="${at}a.js"></script><link rel='modulepreload' href='${at}e.js'><link rel="modulepreload" href="${at}b.js">`,
    );
    expect(files.toSorted()).toEqual(['a', 'b', 'c', 'e'].map((name) => `assets/${name}.js`));
    expect(bytes).toBeGreaterThan(4 * 20);
  });

  test('that are none, missing or elsewhere are refused', () => {
    expect(() => page('<script>1</script>')).toThrow(/runs no script/);
    expect(() => page('<script src="/assets/none.js"></script>')).toThrow(/none\.js/);
    expect(() => page('<script src="https://example.com/a.js"></script>')).toThrow(/elsewhere/);
  });
});
