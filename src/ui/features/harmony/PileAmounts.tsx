import type { MeasuredRecipe } from '../../../mixture/measured-recipe.ts';
import { Disclosure } from '../../components/Disclosure.tsx';
import { NumberInput } from '../../components/NumberInput.tsx';
import { ScrollTable } from '../../components/ScrollTable.tsx';
import {
  MEASURING_METHODS,
  measuringMethod,
  pileMillilitres,
  recipeAmounts,
} from '../../state/harmony/measuring-method.ts';
import { changePreferences, mixingPreferences } from '../../state/harmony/mixing-decisions.ts';
import { formatNumber } from '../../state/locale-format.ts';
import { shelfLabelOf } from '../../state/shelf-labels.ts';
import { mixtureTexts } from '../../texts/mixture-texts.ts';

const percent = (share: number) => `${formatNumber(share * 100, share < 0.1 ? 1 : 0)} %`;
const small = (amount: number) => formatNumber(amount, amount < 1 ? 2 : 1);

/** Table of a pile's parts, volume (ml) and weight (g), in the order of mixing. */
export function PileAmounts({ bench }: { bench: MeasuredRecipe }) {
  return (
    <Disclosure heading={mixtureTexts.measureHeading}>
      {() => <Measured bench={bench} />}
    </Disclosure>
  );
}

function Measured({ bench }: { bench: MeasuredRecipe }) {
  const rows = recipeAmounts(bench, pileMillilitres.value);
  const way = measuringMethod.value;
  const { columns } = mixtureTexts;
  const isWeighed = rows.every(({ grams }) => grams !== null);
  return (
    <div class="mix-inside">
      <fieldset class="choice">
        <legend>{mixtureTexts.by}</legend>
        {MEASURING_METHODS.map((one) => (
          <label key={one}>
            <input
              type="radio"
              name="mix-by"
              checked={way === one}
              onChange={() => {
                measuringMethod.value = one;
              }}
            />
            <span>{mixtureTexts.measures[one]}</span>
          </label>
        ))}
      </fieldset>
      <NumberInput
        label={mixtureTexts.inAll}
        value={pileMillilitres.value}
        onNumber={(ml) => {
          if (ml && ml <= 10_000) pileMillilitres.value = ml;
        }}
      />
      <p>{mixtureTexts.measureAbout[way]}</p>
      {way === 'scale' && !isWeighed && <p>{mixtureTexts.noWeights}</p>}
      <p>{mixtureTexts.order}</p>
      <ScrollTable label={mixtureTexts.measureHeading}>
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
              <th scope="row">{shelfLabelOf(pigment, bench.shelf)}</th>
              <td>{way === 'scale' ? (grams === null ? '–' : small(grams)) : parts}</td>
              <td>{small(cm3)}</td>
              <td>
                {way === 'scale' ? (weight === null ? '–' : percent(weight)) : percent(volume)}
              </td>
            </tr>
          ))}
        </tbody>
      </ScrollTable>
      <label class="check">
        <input
          type="checkbox"
          checked={mixingPreferences.value.coarse}
          onChange={({ currentTarget }) =>
            changePreferences({ coarse: currentTarget.checked }, mixtureTexts.coarseSaid)
          }
        />
        {mixtureTexts.coarse}
      </label>
    </div>
  );
}
