import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { expect, test } from 'vitest';

const ROOT = resolve(import.meta.dirname, '..');

/** Folders of src from the ground up, as DEVELOPERS.md lists them: each may use those before it. */
const LAYERS = [
  'colour',
  'optics',
  'pigment',
  'calibration',
  'mixture',
  'photo',
  'segmentation',
  'harmony',
  'drapery',
  'palette',
  'drawing',
  'book',
  'messages',
  'sheet',
  'ui',
  'cli',
  'host',
];
/** Helpers directly in src; everything may use them. */
const HELPERS = -1;
/** The screens start the workers; nothing else does. */
const WORKERS = LAYERS.indexOf('ui');

const sources = (folder: string): string[] =>
  readdirSync(resolve(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => join(folder, name));

/** Height of a file; throws for a folder that has no place in the list. */
function layerOf(file: string): number {
  const [top, folder, ...rest] = file.split(sep);
  if (top === 'workers') return WORKERS;
  if (rest.length === 0) return HELPERS;
  const layer = LAYERS.indexOf(folder!);
  if (layer < 0) throw new Error(`${file} lies in no known layer`);
  return layer;
}

const imports = [...sources('src'), ...sources('workers')].flatMap((file) =>
  [
    ...readFileSync(resolve(ROOT, file), 'utf8').matchAll(/(?:from|import\() ?'(\.[^'?]+\.tsx?)'/g),
  ].map(([, path]) => [file, relative(ROOT, resolve(ROOT, dirname(file), path!))] as const),
);

test('imports point one way, types included', () => {
  const upwards = imports.filter(([from, to]) => layerOf(to) > layerOf(from));
  expect(upwards).toEqual([]);
  expect(imports.length).toBeGreaterThan(2000);
});

test('nothing outside the screens imports them', () => {
  const isScreen = (file: string) => file.startsWith(join('src', 'ui'));
  expect(imports.filter(([from, to]) => isScreen(to) && !isScreen(from))).toEqual([]);
});

test('effects that run for as long as the page are in the screens’ state alone', () => {
  const withEffects = [...sources('src'), ...sources('workers')].filter((file) =>
    /^effect\(/m.test(readFileSync(resolve(ROOT, file), 'utf8')),
  );
  expect(withEffects.length).toBeGreaterThan(5);
  expect(withEffects.filter((file) => !file.startsWith(join('src', 'ui', 'state')))).toEqual([]);
});
