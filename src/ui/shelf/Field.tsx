import { type StockFault, type StockField, stockFaultWords } from '../../pigment/validate.ts';
import { described, Labelled } from '../Labelled.tsx';

/** What is wrong with one field, in words; nothing where it is sound. */
const wrongWith = (faults: readonly StockFault[], field: StockField): string =>
  faults
    .filter((fault) => fault.field === field)
    .map(stockFaultWords)
    .join(' ');

/** The same where it stands below something other than a line of text. */
export function Faulty({ faults, field }: { faults: readonly StockFault[]; field: StockField }) {
  const words = wrongWith(faults, field);
  if (words === '') return null;
  return (
    <p class="field-fault" role="alert" id={`shelf-fault-${field ?? 'all'}`}>
      {words}
    </p>
  );
}

/** A line of text with its label, its help and what is wrong with it. */
export function Field({
  name,
  label,
  help,
  start,
  inputMode = 'text',
  faults,
}: {
  name: Exclude<StockField, null>;
  label: string;
  help?: string;
  start: string;
  inputMode?: 'text' | 'decimal';
  faults: readonly StockFault[];
}) {
  const id = `shelf-${name}`;
  const fault = wrongWith(faults, name);
  return (
    <Labelled id={id} label={label} help={help} fault={fault} class="shelf-field">
      <input
        id={id}
        name={name}
        type="text"
        inputMode={inputMode}
        autocomplete="off"
        defaultValue={start}
        aria-invalid={fault !== ''}
        aria-describedby={described(id, help, fault)}
      />
    </Labelled>
  );
}
