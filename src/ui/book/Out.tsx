import { render } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import type { Entry } from '../../book/record.ts';
import { PrintIcon } from '../drawn/icons.tsx';
import { atOnce } from '../drawn/turn.ts';
import { sayBook } from '../words/book.ts';
import { contentsOf } from './contents.ts';
import { Drawing } from './Drawing.tsx';
import { MakingLine } from './MakingLine.tsx';
import { makeEntryCopy, making } from './making.ts';
import { pigmentWords } from './names.ts';
import { type Form, takeOut } from './takeout.tsx';

const FORMS: readonly (readonly [Form, string])[] = [
  ['svg', sayBook.asCard],
  ['csv', sayBook.asCsv],
  ['json', sayBook.asJson],
];

/** The export buttons of an entry. */
export function Out({ entry }: { entry: Entry }) {
  return (
    <section class="out" aria-labelledby="out-heading">
      <h3 id="out-heading">{sayBook.outHeading}</h3>
      <p class="out-forms">
        {FORMS.map(([form, text]) => (
          <button key={form} type="button" onClick={() => void takeOut(entry, form)}>
            {text}
          </button>
        ))}
        <button type="button" onClick={() => print()}>
          <PrintIcon size={20} />
          {sayBook.asPrint}
        </button>
        <button type="button" onClick={() => void copyOf(entry)}>
          {sayBook.copyOne}
        </button>
      </p>
      {making.value?.of === entry.id && <MakingLine />}
    </section>
  );
}

async function copyOf(entry: Entry): Promise<void> {
  const { fileNameOf } = await import('../../book/out.ts');
  await makeEntryCopy(entry.id, `kingcup-${fileNameOf(entry, 'zip')}`);
}

/**
 * The page to print, rendered synchronously on `beforeprint`, because printing does not wait for an
 * asynchronous render.
 */
export function Printed({ entry }: { entry: Entry }) {
  const sheet = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const draw = () => {
      const groups = contentsOf(entry, pigmentWords);
      atOnce(() => render(<Drawing entry={entry} groups={groups} />, sheet.current!));
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
