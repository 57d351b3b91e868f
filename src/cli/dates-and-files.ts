import { writeFile } from 'node:fs/promises';
import { CliError } from './cli-error.ts';

/** A day as it was typed; null where none was. @throws CliError for what is no day */
export function dayOf(text: string | undefined): string | null {
  if (text === undefined) return null;
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text) || Number.isNaN(Date.parse(text)))
    throw new CliError(`--date takes a day like 2026-05-01, not “${text}”.`);
  return text;
}

/** Writes a file of text. @throws CliError when it cannot be written */
export async function written(path: string, text: string): Promise<void> {
  try {
    await writeFile(path, text);
  } catch {
    throw new CliError(`${path} cannot be written. Check its place, and whether there is room.`);
  }
}
