import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import {
  OWN_ID_PREFIX,
  type StockEntry,
  type StockForm,
  type StoredCurve,
  UNITS,
  type Unit,
} from '../../../pigment/stock.ts';
import { labelOf } from '../../../pigment/stock-label.ts';
import type { StockFault } from '../../../pigment/validate-stock.ts';
import { SelectField } from '../../components/SelectField.tsx';
import { formatForField } from '../../state/locale-format.ts';
import { newId } from '../../state/new-id.ts';
import { go, hrefOf } from '../../state/route.ts';
import { STOCK_FORM_WORDS, shelfTexts } from '../../texts/shelf-texts.ts';
import { ContainerIcon } from './ContainerIcon.tsx';
import { CurveField } from './CurveField.tsx';
import { CustomPigmentFields } from './CustomPigmentFields.tsx';
import { Faulty, PaintField } from './PaintField.tsx';
import { PigmentSelect } from './PigmentSelect.tsx';
import { NEW_OWN, readPaintForm } from './paint-form-values.ts';
import { lineOf } from './shelf-search.ts';
import { add, edit, ownStock } from './stock-state.ts';

/** Form to add or edit a paint. Errors appear at their fields, and all input is kept. */
export function PaintForm({ entry }: { entry: StockEntry | null }) {
  const stock = ownStock.value;
  const pigment = useSignal(entry?.pigment ?? '');
  const kind = useSignal<StockForm>(entry?.form ?? 'tube');
  const lotCurve = useSignal<StoredCurve | null>(entry?.curve ?? null);
  const ownCurve = useSignal<StoredCurve | null>(
    stock.own.find(({ id }) => id === entry?.pigment)?.curve ?? null,
  );
  const faults = useSignal<readonly StockFault[]>([]);
  const form = useRef<HTMLFormElement>(null);
  const isOwn = pigment.value.startsWith(OWN_ID_PREFIX);

  const submit = async (event: SubmitEvent) => {
    event.preventDefault();
    if (!form.current) return;
    // A colour that could not be read must be corrected or removed; it is never ignored.
    const wrong = form.current.querySelector('[data-wrong]')?.closest('fieldset');
    if (wrong) return wrong.querySelector<HTMLElement>('[type="file"], [type="text"]')?.focus();
    const written = readPaintForm(form.current, stock, entry, {
      lot: lotCurve.value,
      own: ownCurve.value,
    });
    const id = entry?.id ?? newId();
    const done = entry ? await edit(id, written) : await add(written, id);
    if (done.ok) return go('book', 'shelf', id);
    faults.value = done.fault;
    const first = done.fault[0]?.field;
    if (first) form.current?.querySelector<HTMLElement>(`[name="${first}"]`)?.focus();
  };

  return (
    <form class="shelf-form" ref={form} onSubmit={(event) => void submit(event)} noValidate>
      <h2 tabIndex={-1}>
        {entry ? shelfTexts.editHeading(labelOf(stock, entry)) : shelfTexts.addHeading}
      </h2>
      <Faulty faults={faults.value} field={null} />
      <PigmentSelect
        pigment={pigment}
        own={stock.own}
        faults={faults.value}
        chosen={(own) => {
          ownCurve.value = own?.curve ?? null;
        }}
      />
      {isOwn && (
        <CustomPigmentFields
          key={pigment.value}
          own={stock.own.find(({ id }) => id === pigment.value) ?? null}
          curve={ownCurve}
          faults={faults.value}
        />
      )}
      <fieldset>
        <legend>{shelfTexts.form}</legend>
        <div class="choice shelf-choice">
          {(Object.keys(UNITS) as StockForm[]).toReversed().map((one) => (
            <label key={one}>
              <input
                type="radio"
                name="form"
                value={one}
                checked={kind.value === one}
                onChange={() => {
                  kind.value = one;
                }}
              />
              <span>
                <ContainerIcon form={one} />
                {STOCK_FORM_WORDS[one]}
              </span>
            </label>
          ))}
        </div>
      </fieldset>
      <div class="shelf-row shelf-amount">
        <PaintField
          name="amount"
          label={shelfTexts.amount}
          help={shelfTexts.amountHelp}
          start={written(entry?.amount)}
          inputMode="decimal"
          faults={faults.value}
        />
        <UnitSelect key={kind.value} kind={kind.value} start={entry?.unit} />
      </div>
      <Faulty faults={faults.value} field="unit" />
      <div class="shelf-row">
        <PaintField
          name="grade"
          label={shelfTexts.grade}
          help={shelfTexts.gradeHelp}
          start={entry?.grade ?? ''}
          faults={faults.value}
        />
        <PaintField
          name="lot"
          label={shelfTexts.lot}
          start={entry?.lot ?? ''}
          faults={faults.value}
        />
      </div>
      <label>
        {shelfTexts.note}
        <textarea name="note" rows={2} maxLength={2000} defaultValue={entry?.note ?? ''} />
      </label>
      <details open={entry !== null && (entry.density ?? entry.oil ?? entry.curve) !== null}>
        <summary>{shelfTexts.more}</summary>
        <div class="shelf-fields">
          <p class="small">{shelfTexts.moreAbout}</p>
          <div class="shelf-row">
            <PaintField
              name="density"
              label={shelfTexts.densityLabel}
              start={written(entry?.density)}
              inputMode="decimal"
              faults={faults.value}
            />
            <PaintField
              name="oil"
              label={shelfTexts.oilLabel}
              start={written(entry?.oil)}
              inputMode="decimal"
              faults={faults.value}
            />
          </div>
          {pigment.value !== NEW_OWN && (
            <CurveField
              name="lot"
              legend={shelfTexts.colour}
              curve={lotCurve}
              start={entry && lineOf(stock, entry).lab}
              none={shelfTexts.asPigment}
            />
          )}
          <Faulty faults={faults.value} field="curve" />
        </div>
      </details>
      <p class="shelf-actions">
        <button type="submit" class="main">
          {entry ? shelfTexts.saveEdit : shelfTexts.save}
        </button>
        <a
          class="button shelf-quiet"
          href={entry ? hrefOf('book', 'shelf', entry.id) : hrefOf('book', 'shelf')}
        >
          {shelfTexts.cancel}
        </a>
      </p>
    </form>
  );
}

function UnitSelect({ kind, start }: { kind: StockForm; start: Unit | undefined }) {
  return (
    <SelectField
      label={shelfTexts.unit}
      name="unit"
      options={UNITS[kind].map((unit) => [unit, unit] as const)}
      chosen={start}
    />
  );
}

/** A number in the form of its input field; '' when missing. */
const written = (figure: number | null | undefined): string =>
  figure == null ? '' : formatForField(figure, 6);
