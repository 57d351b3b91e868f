import { readFile } from 'node:fs/promises';
import { CliError } from './cli-error.ts';

/** A file's text. @throws CliError */
export async function readText(path: string): Promise<string> {
  try {
    return await readFile(path, 'utf8');
  } catch {
    throw new CliError(`${path} cannot be opened. Check its name and place.`);
  }
}
