import type { Bench } from '../../../mixture/bench.ts';
import { figure } from '../../locale.ts';
import { NumberInput } from '../../NumberInput.tsx';
import { mixSay } from '../../words/mixing.ts';
import { Disclosure } from './Disclosure.tsx';
import { changeWish, wish } from './decided.ts';
import { by, measured, millilitres, WAYS_TO_MEASURE } from './measuring.ts';
import { labelOn } from './named.ts';
import { Table } from './Table.tsx';

const percent = (share: number) => `${figure(share * 100, share < 0.1 ? 1 : 0)} %`;
const small = (amount: number) => figure(amount, amount < 1 ? 2 : 1);

/** Table of a pile's parts, volume (ml) and weight (g), in the order of mixing. */
export function Measures({ bench }: { bench: Bench }) {
  return (
    <Disclosure heading={mixSay.measureHeading}>{() => <Measured bench={bench} />}</Disclosure>
  );
}

function Measured({ bench }: { bench: Bench }) {
  const rows = measured(bench, millilitres.value);
  const way = by.value;
  const { columns } = mixSay;
  const isWeighed = rows.every(({ grams }) => grams !== null);
  return (
    <div class="mix-inside">
      <fieldset class="choice">
        <legend>{mixSay.by}</legend>
        {WAYS_TO_MEASURE.map((one) => (
          <label key={one}>
            <input
              type="radio"
              name="mix-by"
              checked={way === one}
              onChange={() => {
                by.value = one;
              }}
            />
            <span>{mixSay.measures[one]}</span>
          </label>
        ))}
      </fieldset>
      <NumberInput
        label={mixSay.inAll}
        value={millilitres.value}
        onNumber={(ml) => {
          if (ml && ml <= 10_000) millilitres.value = ml;
        }}
      />
      <p>{mixSay.measureAbout[way]}</p>
      {way === 'scale' && !isWeighed && <p>{mixSay.noWeights}</p>}
      <p>{mixSay.order}</p>
      <Table label={mixSay.measureHeading}>
        <thead>
          <tr>
            <th scope="col">
              <span class="unseen">{columns.order}</span>
            </th>
            <th scope="col">{columns.paint}</th>
            <th scope="col">{columns[way]}</th>
            <th scope="col">{columns.ml}</th>
            <th scope="col">{way === 'scale' ? columns.weight : columns.volume}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ pigment, parts, cm3, grams, volume, weight }, i) => (
            <tr key={pigment}>
              <td>{i + 1}</td>
              <th scope="row">{labelOn(pigment, bench.shelf)}</th>
              <td>{way === 'scale' ? (grams === null ? '–' : small(grams)) : parts}</td>
              <td>{small(cm3)}</td>
              <td>
                {way === 'scale' ? (weight === null ? '–' : percent(weight)) : percent(volume)}
              </td>
            </tr>
          ))}
        </tbody>
      </Table>
      <label class="check">
        <input
          type="checkbox"
          checked={wish.value.coarse}
          onChange={({ currentTarget }) =>
            changeWish({ coarse: currentTarget.checked }, mixSay.coarseSaid)
          }
        />
        {mixSay.coarse}
      </label>
    </div>
  );
}
