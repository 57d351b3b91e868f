import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'vitest';
import { isCommand } from './debian.ts';

/** Whether what is printed can be read back, by poppler-utils. */
export const hasPoppler = ['pdfinfo', 'pdftotext', 'pdftoppm'].every(isCommand);
if (!hasPoppler && process.env.KINGCUP_MUST === '1') throw new Error('no poppler-utils');

/** One visible skip where nothing can read what is printed. */
export function tellUnread(what: string): void {
  if (!hasPoppler) test.skip(`${what} (skipped: no poppler-utils)`, () => {});
}

export interface Printed {
  readonly pages: number;
  /** What a PDF says of itself: "Page size: 595 x 842 pts (A4)". */
  readonly about: string;
  /** Line by line, in the order in which it was printed. */
  readonly text: string;
}

/** A PDF read back; null where nothing can read it. */
export function readPdf(pdf: Uint8Array): Printed | null {
  if (!hasPoppler) return null;
  const folder = mkdtempSync(join(tmpdir(), 'kingcup-printed-'));
  try {
    const path = join(folder, 'printed.pdf');
    writeFileSync(path, pdf);
    const about = execFileSync('pdfinfo', [path], { encoding: 'utf8' });
    const text = execFileSync('pdftotext', ['-raw', path, '-'], { encoding: 'utf8' });
    return { pages: Number(/^Pages:\s+(\d+)$/m.exec(about)?.[1]), about, text };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
