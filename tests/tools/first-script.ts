import { readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { gzipSync } from 'node:zlib';

/** Most bytes of compressed script before the first screen. */
export const MOST_SCRIPT = 77_000;

const HOST = 'http://app.invalid';

/** Scripts that a page needs before its first screen. */
export interface FirstScript {
  /** Paths from the app's folder, each once. */
  readonly files: readonly string[];
  /** All of them, each compressed on its own (gzip, level 9). */
  readonly bytes: number;
}

/**
 * The scripts that index.html runs, all that these import statically, and what it preloads as modules.
 * @param app folder of the built app
 * @throws Error when the page or a script is missing, when a script lies on another host, or when the
 *         page runs none
 */
export function firstScript(app: string): FirstScript {
  const html = readFileSync(join(app, 'index.html'), 'utf8');
  const run = tags(html, 'script').flatMap((tag) => attribute(tag, 'src') ?? []);
  if (run.length === 0) throw new Error('index.html runs no script.');
  const preloaded = tags(html, 'link')
    .filter((tag) => attribute(tag, 'rel') === 'modulepreload')
    .flatMap((tag) => attribute(tag, 'href') ?? []);
  const files = new Set<string>();
  const add = (path: string): void => {
    if (files.has(path)) return;
    files.add(path);
    const code = readFileSync(join(app, path), 'utf8');
    for (const [, from] of code.matchAll(/\b(?:from|import)\s*["'`](\.{1,2}\/[^"'`]+)["'`]/g))
      add(posix.join(posix.dirname(path), from!));
  };
  for (const address of run) add(pathOf(address));
  for (const address of preloaded) files.add(pathOf(address));
  const bytes = [...files].reduce(
    (sum, path) => sum + gzipSync(readFileSync(join(app, path)), { level: 9 }).length,
    0,
  );
  return { files: [...files], bytes };
}

const tags = (html: string, name: string): string[] =>
  [...html.matchAll(new RegExp(`<${name}\\b[^>]*>`, 'gi'))].map(([tag]) => tag);

function attribute(tag: string, name: string): string | undefined {
  const found = new RegExp(`\\s${name}\\s*=\\s*(?:"([^"]*)"|'([^']*)'|([^\\s"'>]+))`, 'i').exec(
    tag,
  );
  return found?.[1] ?? found?.[2] ?? found?.[3];
}

/** “/assets/a.js”, “./assets/a.js” and “assets/a.js” are one file. */
function pathOf(address: string): string {
  const url = new URL(address, `${HOST}/`);
  if (url.origin !== HOST) throw new Error(`index.html loads a script from elsewhere: ${address}`);
  return url.pathname.slice(1);
}
