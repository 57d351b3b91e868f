import { render } from 'preact';
import { bookFaultWords } from '../../book/faults.ts';
import type { Entry } from '../../book/record.ts';
import { drawSynchronously } from '../drawn/turn.ts';
import { showError } from '../studio.ts';
import { bookTexts } from '../words/book.ts';
import { entryItems } from './contents.ts';
import { EntryDrawing } from './Drawing.tsx';
import { saveFile } from './hand.ts';
import { pigmentWords } from './names.ts';

export type ExportFormat = 'svg' | 'csv' | 'json';
const TYPES: Record<ExportFormat, string> = {
  svg: 'image/svg+xml',
  csv: 'text/csv',
  json: 'application/json',
};

/** Exports an entry as a file for other programs. */
export async function exportEntry(entry: Entry, form: ExportFormat): Promise<void> {
  try {
    const { csvOf, fileNameOf, jsonOf } = await import('../../book/out.ts');
    const text = form === 'svg' ? svgOf(entry) : form === 'csv' ? csvOf(entry) : jsonOf(entry);
    const file = new File([text], fileNameOf(entry, form), { type: TYPES[form] });
    if ((await saveFile(file)) === 'failed') showError(bookTexts.fileFailed);
  } catch (error) {
    showError(bookFaultWords({ code: 'not-read', detail: String(error) }));
  }
}

/** The entry's drawing as an SVG document. The serialiser escapes the painter's text. */
export function svgOf(entry: Entry): string {
  const host = document.createElement('div');
  drawSynchronously(() =>
    render(<EntryDrawing entry={entry} groups={entryItems(entry, pigmentWords)} />, host),
  );
  const text = new XMLSerializer().serializeToString(host.firstElementChild!);
  render(null, host);
  return `<?xml version="1.0" encoding="UTF-8"?>\n${text}\n`;
}
