import { readFile } from 'node:fs/promises';
import { Plain } from './fault.ts';

/** A file's text. @throws Plain */
export async function readText(path: string): Promise<string> {
  try {
    return await readFile(path, 'utf8');
  } catch {
    throw new Plain(`${path} cannot be opened. Check its name and place.`);
  }
}
