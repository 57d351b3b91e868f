import { readdirSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';

const ROOT = join(import.meta.dirname, '../..');
const shown = (path: string): string => (path.startsWith(ROOT) ? relative(ROOT, path) : path);

/**
 * Refuses a built file that does not come from today's source, by the times of the files.
 * @param sources folders, looked through to the bottom
 * @param command what builds it
 * @throws Error with what to do when the file is missing, or older than any file of its sources
 */
export function requireFresh(built: string, sources: readonly string[], command: string): void {
  const at = statSync(built, { throwIfNoEntry: false })?.mtimeMs;
  if (at === undefined) throw new Error(`${shown(built)} is missing. Run \`${command}\` first.`);
  const files = sources.flatMap((folder) =>
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name)),
  );
  if (files.length === 0) throw new Error(`There are no sources in ${sources.map(shown)}.`);
  const newer = files.find((file) => statSync(file).mtimeMs > at);
  if (newer !== undefined)
    throw new Error(
      `${shown(built)} is older than ${shown(newer)}. Run \`${command}\` first: these tests look at what was built.`,
    );
}
