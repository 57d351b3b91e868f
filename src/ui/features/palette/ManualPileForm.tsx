import { useState } from 'preact/hooks';
import type { Entry } from '../../../book/schema/record.ts';
import { newId } from '../../state/new-id.ts';
import { manualMixture } from '../../state/palette/palette-records.ts';
import { planningStudio } from '../../state/palette/plan-job.ts';
import { paletteTexts } from '../../texts/palette-texts.ts';
import { addPiles } from './passage-actions.ts';
import { parseNumberField, StoredSelect } from './StoredFields.tsx';

interface Row {
  readonly pigment: string;
  readonly parts: string;
}

/** Form for a pile mixed by hand from the shelf's pigments. */
export function ManualPileForm({ passage }: { passage: Entry<'passage'> }) {
  const { paints } = planningStudio.value.shelf;
  const first: Row = {
    pigment: planningStudio.value.shelf.white ?? paints[0]?.pigment ?? '',
    parts: '1',
  };
  const [rows, setRows] = useState<readonly Row[]>([first]);
  const [name, setName] = useState('');
  const [fault, setFault] = useState('');
  const submit = (event: SubmitEvent) => {
    event.preventDefault();
    const parts = new Map<string, number>();
    for (const row of rows) {
      const count = parseNumberField(row.parts);
      if (!(count > 0 && Number.isFinite(count))) return setFault(paletteTexts.noParts);
      parts.set(row.pigment, (parts.get(row.pigment) ?? 0) + count);
    }
    if (name.trim() === '') return setFault(paletteTexts.aName);
    setFault('');
    const mixture = manualMixture(
      [...parts].map(([pigment, count]) => ({ pigment, parts: count })),
      planningStudio.value.shelf,
    );
    const pile = { id: newId(), name: name.trim(), mixture, film: 'body colour', areaCm2: 100 };
    void addPiles(passage, [pile]).then(() => {
      setRows([first]);
      setName('');
    });
  };
  const change = (at: number, row: Partial<Row>) =>
    setRows(rows.with(at, { ...rows[at]!, ...row }));
  return (
    <details class="pal-hand">
      <summary>{paletteTexts.addByHand}</summary>
      <form onSubmit={submit} class="pal-handform" noValidate>
        <label class="field">
          {paletteTexts.nameOf}
          <input
            type="text"
            maxLength={120}
            autocomplete="off"
            value={name}
            onInput={(event) => setName(event.currentTarget.value)}
          />
        </label>
        {rows.map((row, at) => (
          <div class="pal-row" key={at}>
            <label class="field">
              {paletteTexts.partsOf}
              <input
                type="text"
                inputMode="decimal"
                autocomplete="off"
                value={row.parts}
                onInput={(event) => change(at, { parts: event.currentTarget.value })}
              />
            </label>
            <StoredSelect
              label={paletteTexts.pigment}
              value={row.pigment}
              options={paints.map(({ pigment, label }) => [pigment, label] as const)}
              onKeep={(pigment) => change(at, { pigment })}
            />
          </div>
        ))}
        {fault !== '' && (
          <p class="field-fault" role="alert">
            {fault}
          </p>
        )}
        <p class="pal-actions">
          {rows.length < 8 && (
            <button type="button" onClick={() => setRows([...rows, first])}>
              {paletteTexts.anotherPigment}
            </button>
          )}
          <button type="submit">{paletteTexts.makePile}</button>
        </p>
      </form>
    </details>
  );
}
