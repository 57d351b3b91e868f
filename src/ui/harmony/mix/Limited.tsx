import type { FewestStep } from '../../../harmony/fewest.ts';
import { AMOUNTS } from '../../../harmony/vary.ts';
import { joinWords } from '../../../wording.ts';
import { formatNumber } from '../../locale.ts';
import { shelf } from '../../studio.ts';
import { mixtureTexts } from '../../words/mixing.ts';
import { targets } from '../state.ts';
import { PigmentCountChart } from './Curve.tsx';
import { Disclosure } from './Disclosure.tsx';
import { changePreferences } from './decided.ts';
import {
  findFewest,
  latestPalettesFor,
  limitedPaletteJob,
  paletteTolerance,
  paletteVariantAmount,
} from './limited.ts';
import { sentenceLabelOf } from './named.ts';
import { numberWord } from './spoken.ts';
import { ScrollTable } from './Table.tsx';
import { JobProgress } from './WorkLine.tsx';

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
