import { render } from 'preact';
import type { Entry } from '../../../book/schema/record.ts';
import { bookFaultWords } from '../../../messages/book-faults.ts';
import { drawSynchronously } from '../../components/drawn/draw-queue.ts';
import { saveFile } from '../../components/save-file.ts';
import { showError } from '../../state/studio.ts';
import { bookTexts } from '../../texts/book-texts.ts';
import { EntryDrawing } from './EntryDrawing.tsx';
import { pigmentWords } from './entry-names.ts';
import { entryItems } from './entry-text.ts';

export type ExportFormat = 'svg' | 'csv' | 'json';
const TYPES: Record<ExportFormat, string> = {
  svg: 'image/svg+xml',
  csv: 'text/csv',
  json: 'application/json',
};

/** Exports an entry as a file for other programs. */
export async function exportEntry(entry: Entry, form: ExportFormat): Promise<void> {
  try {
    const { csvOf, fileNameOf, jsonOf } = await import('../../../book/transfer/export-entry.ts');
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
