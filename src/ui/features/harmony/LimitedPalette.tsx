import type { FewestStep } from '../../../harmony/fewest-pigments.ts';
import { AMOUNTS } from '../../../harmony/variant-target.ts';
import { joinWords } from '../../../wording.ts';
import { Disclosure } from '../../components/Disclosure.tsx';
import { JobProgress } from '../../components/JobProgress.tsx';
import { ScrollTable } from '../../components/ScrollTable.tsx';
import { targets } from '../../state/harmony/current-harmony.ts';
import {
  findFewest,
  latestPalettesFor,
  limitedPaletteJob,
  paletteTolerance,
  paletteVariantAmount,
} from '../../state/harmony/limited-palette.ts';
import { changePreferences } from '../../state/harmony/mixing-decisions.ts';
import { formatNumber } from '../../state/locale-format.ts';
import { sentenceLabelOf } from '../../state/shelf-labels.ts';
import { shelf } from '../../state/studio.ts';
import { mixtureTexts } from '../../texts/mixture-texts.ts';
import { numberWord } from './mixture-words.ts';
import { PigmentCountChart } from './PigmentCountChart.tsx';

const takeSet = ({ pigments }: FewestStep) =>
  changePreferences({ only: pigments }, mixtureTexts.setSaid(pigments.length));

/** Limited palette: the fewest pigments that mix the whole harmony. */
export function LimitedPalette() {
  return <Disclosure heading={mixtureTexts.fewestHeading}>{() => <Sought />}</Disclosure>;
}

function Sought() {
  const colours = targets.value;
  const palettes = latestPalettesFor(colours);
  const isBusy = limitedPaletteJob.progress.value !== null;
  return (
    <div class="mix-inside">
      <p>{mixtureTexts.fewestAbout}</p>
      <label class="mix-field">
        {mixtureTexts.within}
        <select
          onChange={({ currentTarget: { value } }) => {
            paletteTolerance.value = Number(value);
          }}
        >
          {Object.entries(mixtureTexts.withins).map(([limit, words]) => (
            <option key={limit} value={limit} selected={Number(limit) === paletteTolerance.value}>
              {words} ({limit})
            </option>
          ))}
        </select>
      </label>
      <label class="mix-field">
        {mixtureTexts.forWhat}
        <select
          onChange={({ currentTarget: { value } }) => {
            paletteVariantAmount.value = AMOUNTS.find((one) => one === value) ?? null;
          }}
        >
          {(['none', ...AMOUNTS] as const).map((one) => (
            <option key={one} value={one} selected={one === (paletteVariantAmount.value ?? 'none')}>
              {mixtureTexts.forWhats[one]}
            </option>
          ))}
        </select>
      </label>
      <JobProgress work={limitedPaletteJob} words={mixtureTexts.fewestWork} />
      {!isBusy && !palettes?.isOf && (
        <p class="mix-buttons">
          <button type="button" onClick={() => void findFewest(colours)}>
            {mixtureTexts.fewestAsk}
          </button>
        </p>
      )}
      {palettes && !palettes.isOf && !isBusy && <p class="small">{mixtureTexts.fewestChanged}</p>}
      {palettes?.isOf && <Palettes found={palettes} />}
    </div>
  );
}

function Palettes({ found }: { found: NonNullable<ReturnType<typeof latestPalettesFor>> }) {
  const on = shelf.value;
  const { sought, curve, enough, shelf: whole } = found.result;
  const out = whole.filter((away) => away > found.within).length;
  const names = ({ pigments }: FewestStep) =>
    joinWords(pigments.map((one) => sentenceLabelOf(one, on)));
  return (
    <>
      <div role="status">
        <p>
          <strong>
            {enough
              ? mixtureTexts.enough(numberWord(enough.count), names(enough))
              : mixtureTexts.notEnough}
          </strong>
        </p>
        {out > 0 && (
          <p>
            {mixtureTexts.beyond(
              out,
              whole.length,
              sought.some(({ way }) => way !== null),
            )}
          </p>
        )}
      </div>
      {enough && (
        <p>
          <button type="button" onClick={() => takeSet(enough)}>
            {mixtureTexts.useSetOf(enough.count)}
          </button>
        </p>
      )}
      <PigmentCountChart curve={curve} within={found.within} enough={enough?.count ?? null} />
      <Disclosure heading={mixtureTexts.everyNumber}>
        {() => (
          <ScrollTable label={mixtureTexts.everyNumber}>
            <thead>
              <tr>
                <th scope="col">
                  <span class="unseen">{mixtureTexts.howMany}</span>
                </th>
                <th scope="col">{mixtureTexts.count}</th>
                <th scope="col">{mixtureTexts.worst}</th>
                <th scope="col">{mixtureTexts.mean}</th>
              </tr>
            </thead>
            <tbody>
              {curve.map((step) => (
                <tr key={step.count}>
                  <th scope="row">{step.count}</th>
                  <td class="mix-set">
                    {names(step)}
                    <button type="button" onClick={() => takeSet(step)}>
                      {mixtureTexts.useSetOf(step.count)}
                    </button>
                  </td>
                  <td>{formatNumber(step.worst, 1)}</td>
                  <td>{formatNumber(step.mean, 1)}</td>
                </tr>
              ))}
            </tbody>
          </ScrollTable>
        )}
      </Disclosure>
    </>
  );
}
