import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { defineConfig } from 'vite';

const root = import.meta.dirname;

/** Everything that runs on Node, bundled for it: the command line first, then the project's own scripts. */
const ENTRIES = {
  kingcup: 'src/cli/kingcup.ts',
  'gather-worker': 'src/cli/gather-worker.ts',
  start: 'src/cli/start.ts',
  check: 'tests/tools/check.ts',
  bench: 'tests/bench/bench.ts',
  mutants: 'tests/tools/mutants.ts',
  samples: 'tests/tools/samples.ts',
  pictures: 'tests/tools/pictures.ts',
  icons: 'tests/tools/icons.ts',
  audit: 'tests/tools/audit.ts',
  watercolours: 'src/cli/watercolours.ts',
};

export default defineConfig({
  root,
  publicDir: false,
  cacheDir: resolve(root, 'node_modules/.vite'),
  build: {
    ssr: true,
    outDir: resolve(root, 'dist/cli'),
    emptyOutDir: true,
    target: 'node20',
    rolldownOptions: {
      input: Object.fromEntries(
        Object.entries(ENTRIES)
          .map(([name, path]) => [name, resolve(root, path)] as const)
          .filter(([, path]) => existsSync(path)),
      ),
      output: { entryFileNames: '[name].js', chunkFileNames: 'part-[hash].js' },
    },
  },
});
