import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import preact from '@preact/preset-vite';
import license, { type Dependency } from 'rollup-plugin-license';
import { defineConfig, type Plugin, type UserConfig } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { CONTENT_SECURITY } from './src/host/headers.ts';
import { SHARE_FIELD, SHARE_PATH } from './workers/share-target.ts';

const root = import.meta.dirname;

/** The icon of one of the installed app's shortcuts. */
const shortcut = (name: string) => [
  { src: `icons/shortcut-${name}.png`, sizes: '96x96', type: 'image/png' },
];

/** The policy stands in the page too, for hosts that send no headers; frame-ancestors is for headers only. */
const contentSecurity: Plugin = {
  name: 'content-security',
  apply: 'build',
  transformIndexHtml: () => [
    {
      tag: 'meta',
      injectTo: 'head-prepend',
      attrs: {
        'http-equiv': 'Content-Security-Policy',
        content: CONTENT_SECURITY.filter((rule) => !rule.startsWith('frame-ancestors')).join('; '),
      },
    },
  ],
};

/** What opens the book is fetched along with the page, not once the page has run. */
const bookAlong: Plugin = {
  name: 'book-along',
  apply: 'build',
  transformIndexHtml: {
    order: 'post',
    handler(_, { bundle = {} }) {
      const chunks = Object.values(bundle).filter((one) => one.type === 'chunk');
      const store = chunks.find(({ facadeModuleId }) =>
        facadeModuleId?.endsWith('/src/book/store/open-book.ts'),
      );
      if (!store) throw new Error('no chunk opens the book: has its module moved?');
      const page = chunks.find(({ isEntry }) => isEntry);
      const there = new Set(page?.imports);
      return [store.fileName, ...store.imports]
        .filter((name) => !there.has(name))
        .map((name) => ({
          tag: 'link',
          injectTo: 'head' as const,
          attrs: { rel: 'modulepreload', crossorigin: true, href: `/${name}` },
        }));
    },
  },
};

/** Our own specimens and the sample book go along, so that the app can be tried with no photograph at hand. */
const samples: Plugin = {
  name: 'samples',
  apply: 'build',
  generateBundle() {
    const folder = resolve(root, 'samples');
    for (const name of readdirSync(folder).filter((file) => /\.(jpg|zip)$/.test(file)))
      this.emitFile({
        type: 'asset',
        fileName: `samples/${name}`,
        source: readFileSync(resolve(folder, name)),
      });
  },
};

/** Scripts and styles stand there compressed as well, for the server to send; their names hold a hash, so none goes stale. */
const compressed: Plugin = {
  name: 'compressed',
  apply: 'build',
  enforce: 'post',
  closeBundle() {
    const folder = resolve(root, 'dist/app/assets');
    for (const name of readdirSync(folder).filter((file) => /\.(js|css)$/.test(file))) {
      const bytes = readFileSync(resolve(folder, name));
      writeFileSync(resolve(folder, `${name}.br`), brotliCompressSync(bytes));
      writeFileSync(resolve(folder, `${name}.gz`), gzipSync(bytes));
    }
  },
};

/** Beside the page; the guide links to it. */
const NOTICES = 'third-party.txt';

/** Packages whose code went into the page, its workers or the service worker, by name and version. */
const bundled = new Map<string, Dependency>();
const collectNotices = () =>
  license({
    thirdParty: {
      output: (packages) => {
        for (const one of packages) bundled.set(`${one.name} ${one.version}`, one);
      },
    },
  }) as unknown as Plugin;

/**
 * Writes the notices of all bundled packages into one text beside the page. It belongs to the service worker's
 * build, the last one: every other bundle is done, and the list of files kept for offline use is still to come.
 */
const notices: Plugin = {
  name: 'third-party-notices',
  apply: 'build',
  enforce: 'post',
  closeBundle: {
    order: 'post',
    sequential: true,
    handler() {
      const parts = [...bundled]
        .toSorted(([a], [b]) => a.localeCompare(b))
        .map(([name, { license: terms, licenseText }]) =>
          [`${name} (${terms})`, licenseText?.trim() ?? 'No licence text in the package.'].join(
            '\n\n',
          ),
        );
      writeFileSync(
        resolve(root, 'dist/app', NOTICES),
        `Kingcup includes code of these packages.\n\n\n${parts.join('\n\n\n')}\n`,
      );
    },
  },
};

/** What runs on Node, bundled for it because Node 20 does not run TypeScript: the command line, then our own scripts. */
const ENTRIES = {
  kingcup: 'src/cli/kingcup.ts',
  'gather-worker': 'src/cli/gather-worker.ts',
  start: 'src/host/show-and-serve.ts',
  check: 'tests/tools/check.ts',
  bench: 'tests/bench/bench.ts',
  mutants: 'tests/tools/mutants.ts',
  samples: 'tests/tools/samples.ts',
  pictures: 'tests/tools/pictures.ts',
  icons: 'tests/tools/icons.ts',
  audit: 'tests/tools/audit.ts',
  watercolours: 'src/cli/watercolour-accuracy.ts',
};

const commandLine: UserConfig = {
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
};

const app: UserConfig = {
  root: resolve(root, 'src'),
  publicDir: resolve(root, 'src/ui/public'),
  envDir: root,
  cacheDir: resolve(root, 'node_modules/.vite'),
  build: {
    outDir: resolve(root, 'dist/app'),
    emptyOutDir: true,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    target: 'es2023',
  },
  worker: { format: 'es', plugins: () => [collectNotices()] },
  plugins: [
    preact(),
    contentSecurity,
    bookAlong,
    samples,
    compressed,
    collectNotices(),
    VitePWA({
      strategies: 'injectManifest',
      srcDir: '../workers',
      filename: 'service.worker.ts',
      registerType: 'prompt',
      injectRegister: false,
      injectManifest: {
        rollupFormat: 'iife',
        buildPlugins: { vite: [collectNotices(), notices] },
        globPatterns: ['**/*.{html,js,css,svg,png,webmanifest,jpg,json,zip}', NOTICES],
        globIgnores: ['**/*.map', 'icons/**', 'manifest.webmanifest'],
      },
      manifest: {
        id: '/',
        name: 'Kingcup',
        short_name: 'Kingcup',
        description:
          'From what you saw on a walk to mixtures of the pigments on your shelf, kept in a studio book.',
        lang: 'en',
        start_url: '/',
        scope: '/',
        display: 'standalone',
        background_color: '#c8c8c8',
        theme_color: '#c8c8c8',
        categories: ['productivity', 'education'],
        icons: [
          { src: 'icons/192.png', sizes: '192x192', type: 'image/png' },
          { src: 'icons/512.png', sizes: '512x512', type: 'image/png' },
          {
            src: 'icons/maskable-512.png',
            sizes: '512x512',
            type: 'image/png',
            purpose: 'maskable',
          },
          {
            src: 'icons/monochrome-512.png',
            sizes: '512x512',
            type: 'image/png',
            purpose: 'monochrome',
          },
        ],
        shortcuts: [
          {
            name: 'What did you see?',
            short_name: 'Walk',
            url: '/#/walk',
            icons: shortcut('walk'),
          },
          {
            name: 'Today’s palette',
            short_name: 'Palette',
            url: '/#/palette',
            icons: shortcut('palette'),
          },
          {
            name: 'Morning sheet',
            short_name: 'Sheet',
            url: '/#/palette/sheet',
            icons: shortcut('sheet'),
          },
          { name: 'The studio book', short_name: 'Book', url: '/#/book', icons: shortcut('book') },
        ],
        share_target: {
          action: SHARE_PATH,
          method: 'POST',
          enctype: 'multipart/form-data',
          params: { files: [{ name: SHARE_FIELD, accept: ['image/*'] }] },
        },
      },
    }),
  ],
};

/** `vite build` makes the app, `vite build --mode node` the command line and the scripts. */
export default defineConfig(({ mode }) => (mode === 'node' ? commandLine : app));
