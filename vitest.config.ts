import { resolve } from 'node:path';
import preact from '@preact/preset-vite';
import { defineConfig } from 'vitest/config';

const root = import.meta.dirname;

/** Folders of tests that are a project of their own; every other test in Node is a unit test. */
const APART = ['published/**', 'smoke/**', 'story/**', 'simulation/**', 'browser/**'];

/** Tests that share one module graph per thread: most of their time would go into loading it anew. */
const shared = { environment: 'node', pool: 'threads', isolate: false } as const;

/**
 * Tests that drive processes or a browser: after the rest, for they wait more than they work. Their limits only end
 * what hangs: one wait may take as long as on a machine that is many times slower.
 */
const driving = {
  environment: 'node',
  testTimeout: 900_000,
  hookTimeout: 240_000,
  expect: { poll: { timeout: 240_000 } },
} as const;

// `npm test` runs unit, screens, published, smoke and story; `npm run test:all` adds simulation and browser.
export default defineConfig({
  root,
  plugins: [preact()],
  cacheDir: resolve(root, 'node_modules/.vite'),
  test: {
    dir: resolve(root, 'tests'),
    testTimeout: 60_000,
    hookTimeout: 60_000,
    expect: { poll: { timeout: 20_000 } },
    // A style sheet that is imported as text keeps its text; without this it would be empty.
    css: { include: [/\.css\?raw$/] },
    // All cores: on two the default would be one.
    maxWorkers: '100%',
    projects: [
      {
        extends: true,
        test: { ...shared, name: 'unit', include: ['**/*.test.ts'], exclude: APART },
      },
      {
        extends: true,
        test: {
          ...shared,
          name: 'screens',
          // Module mocks and signals of one file must not reach another.
          isolate: true,
          environment: 'happy-dom',
          include: ['**/*.test.tsx'],
          setupFiles: [resolve(root, 'tests/tools/patience.ts')],
        },
      },
      {
        extends: true,
        test: { ...shared, name: 'published', include: ['published/**/*.test.ts'] },
      },
      {
        extends: true,
        test: { ...driving, name: 'smoke', include: ['smoke/**/*.test.ts'] },
      },
      {
        extends: true,
        test: {
          ...driving,
          name: 'story',
          include: ['story/**/*.test.ts'],
          sequence: { groupOrder: 1 },
        },
      },
      {
        extends: true,
        test: { ...shared, name: 'simulation', include: ['simulation/**/*.test.ts'] },
      },
      {
        extends: true,
        test: {
          ...driving,
          name: 'browser',
          include: ['browser/**/*.test.ts'],
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
