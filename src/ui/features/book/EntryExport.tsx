import { render } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import type { Entry } from '../../../book/schema/record.ts';
import { drawSynchronously } from '../../components/drawn/draw-queue.ts';
import { PrintIcon } from '../../components/drawn/icons.tsx';
import { bookTexts } from '../../texts/book-texts.ts';
import { CopyProgress } from './CopyProgress.tsx';
import { type ExportFormat, exportEntry } from './download-entry.tsx';
import { EntryDrawing } from './EntryDrawing.tsx';
import { pigmentWords } from './entry-names.ts';
import { entryItems } from './entry-text.ts';
import { copyInProgress, makeEntryCopy } from './make-copy.ts';

const FORMS: readonly (readonly [ExportFormat, string])[] = [
  ['svg', bookTexts.asCard],
  ['csv', bookTexts.asCsv],
  ['json', bookTexts.asJson],
];

/** The export buttons of an entry. */
export function EntryExport({ entry }: { entry: Entry }) {
  return (
    <section class="out" aria-labelledby="out-heading">
      <h3 id="out-heading">{bookTexts.outHeading}</h3>
      <p class="out-forms">
        {FORMS.map(([form, text]) => (
          <button key={form} type="button" onClick={() => void exportEntry(entry, form)}>
            {text}
          </button>
        ))}
        <button type="button" onClick={() => print()}>
          <PrintIcon size={20} />
          {bookTexts.asPrint}
        </button>
        <button type="button" onClick={() => void copyOf(entry)}>
          {bookTexts.copyOne}
        </button>
      </p>
      {copyInProgress.value?.of === entry.id && <CopyProgress />}
    </section>
  );
}

async function copyOf(entry: Entry): Promise<void> {
  const { fileNameOf } = await import('../../../book/transfer/export-entry.ts');
  await makeEntryCopy(entry.id, `kingcup-${fileNameOf(entry, 'zip')}`);
}

/**
 * The page to print, rendered synchronously on `beforeprint`, because printing does not wait for an
 * asynchronous render.
 */
export function PrintedEntry({ entry }: { entry: Entry }) {
  const sheet = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const draw = () => {
      const groups = entryItems(entry, pigmentWords);
      drawSynchronously(() =>
        render(<EntryDrawing entry={entry} groups={groups} />, sheet.current!),
      );
    };
    const clear = () => render(null, sheet.current!);
    addEventListener('beforeprint', draw);
    addEventListener('afterprint', clear);
    return () => {
      removeEventListener('beforeprint', draw);
      removeEventListener('afterprint', clear);
    };
  }, [entry]);
  return <div class="print-only" ref={sheet} />;
}
