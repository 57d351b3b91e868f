import { resolve } from 'node:path';
import preact from '@preact/preset-vite';
import { defineConfig } from 'vitest/config';

const root = import.meta.dirname;

export default defineConfig({
  root,
  plugins: [preact()],
  cacheDir: resolve(root, 'node_modules/.vite'),
  test: {
    dir: resolve(root, 'tests'),
    testTimeout: 60_000,
    hookTimeout: 60_000,
    expect: { poll: { timeout: 20_000 } },
    // All cores: on two the default would be one.
    maxWorkers: '100%',
    projects: [
      {
        extends: true,
        test: {
          name: 'core',
          environment: 'node',
          include: ['**/*.test.ts'],
          exclude: ['browser/**'],
        },
      },
      {
        extends: true,
        test: {
          name: 'screens',
          environment: 'happy-dom',
          include: ['**/*.test.tsx'],
          setupFiles: [resolve(root, 'tests/tools/patience.ts')],
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          environment: 'node',
          include: ['browser/**/*.test.ts'],
          testTimeout: 240_000,
          hookTimeout: 120_000,
          // After the rest, for pages wait more than they work.
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
