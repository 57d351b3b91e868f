import { stockFaultWords } from '../../../messages/stock-faults.ts';
import type { StockFault, StockField } from '../../../pigment/validate-stock.ts';
import { described, LabelledControl } from '../../components/LabelledControl.tsx';
import { formatNumber } from '../../state/locale-format.ts';

/** The messages for one field's faults, joined; '' when it is valid. */
const wrongWith = (faults: readonly StockFault[], field: StockField): string =>
  faults
    .filter((fault) => fault.field === field)
    .map((fault) => stockFaultWords(fault, formatNumber))
    .join(' ');

/** The faults of a field that is not a text input. */
export function Faulty({ faults, field }: { faults: readonly StockFault[]; field: StockField }) {
  const words = wrongWith(faults, field);
  if (words === '') return null;
  return (
    <p class="field-fault" role="alert" id={`shelf-fault-${field ?? 'all'}`}>
      {words}
    </p>
  );
}

/** A text input with label, help and error message. */
export function PaintField({
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
    <LabelledControl id={id} label={label} help={help} fault={fault} class="shelf-field">
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
    </LabelledControl>
  );
}
