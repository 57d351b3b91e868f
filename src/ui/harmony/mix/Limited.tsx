import type { FewestStep } from '../../../harmony/fewest.ts';
import { AMOUNTS } from '../../../harmony/vary.ts';
import { joinWords } from '../../../wording.ts';
import { figure } from '../../locale.ts';
import { shelf } from '../../studio.ts';
import { mixSay } from '../../words/mixing.ts';
import { targets } from '../state.ts';
import { Curve } from './Curve.tsx';
import { Disclosure } from './Disclosure.tsx';
import { changeWish } from './decided.ts';
import { findFewest, limiting, palettesOf, variants, within } from './limited.ts';
import { spokenOn } from './named.ts';
import { numberWord } from './spoken.ts';
import { Table } from './Table.tsx';
import { WorkLine } from './WorkLine.tsx';

const takeSet = ({ pigments }: FewestStep) =>
  changeWish({ only: pigments }, mixSay.setSaid(pigments.length));

/** Limited palette: the fewest pigments that mix the whole harmony. */
export function Limited() {
  return <Disclosure heading={mixSay.fewestHeading}>{() => <Sought />}</Disclosure>;
}

function Sought() {
  const colours = targets.value;
  const palettes = palettesOf(colours);
  const isBusy = limiting.progress.value !== null;
  return (
    <div class="mix-inside">
      <p>{mixSay.fewestAbout}</p>
      <label class="mix-field">
        {mixSay.within}
        <select
          onChange={({ currentTarget: { value } }) => {
            within.value = Number(value);
          }}
        >
          {Object.entries(mixSay.withins).map(([limit, words]) => (
            <option key={limit} value={limit} selected={Number(limit) === within.value}>
              {words} ({limit})
            </option>
          ))}
        </select>
      </label>
      <label class="mix-field">
        {mixSay.forWhat}
        <select
          onChange={({ currentTarget: { value } }) => {
            variants.value = AMOUNTS.find((one) => one === value) ?? null;
          }}
        >
          {(['none', ...AMOUNTS] as const).map((one) => (
            <option key={one} value={one} selected={one === (variants.value ?? 'none')}>
              {mixSay.forWhats[one]}
            </option>
          ))}
        </select>
      </label>
      <WorkLine work={limiting} words={mixSay.fewestWork} />
      {!isBusy && !palettes?.isOf && (
        <p class="mix-buttons">
          <button type="button" onClick={() => void findFewest(colours)}>
            {mixSay.fewestAsk}
          </button>
        </p>
      )}
      {palettes && !palettes.isOf && !isBusy && <p class="small">{mixSay.fewestChanged}</p>}
      {palettes?.isOf && <Palettes found={palettes} />}
    </div>
  );
}

function Palettes({ found }: { found: NonNullable<ReturnType<typeof palettesOf>> }) {
  const on = shelf.value;
  const { sought, curve, enough, shelf: whole } = found.result;
  const out = whole.filter((away) => away > found.within).length;
  const names = ({ pigments }: FewestStep) => joinWords(pigments.map((one) => spokenOn(one, on)));
  return (
    <>
      <div role="status">
        <p>
          <strong>
            {enough ? mixSay.enough(numberWord(enough.count), names(enough)) : mixSay.notEnough}
          </strong>
        </p>
        {out > 0 && (
          <p>
            {mixSay.beyond(
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
            {mixSay.useSetOf(enough.count)}
          </button>
        </p>
      )}
      <Curve curve={curve} within={found.within} enough={enough?.count ?? null} />
      <Disclosure heading={mixSay.everyNumber}>
        {() => (
          <Table label={mixSay.everyNumber}>
            <thead>
              <tr>
                <th scope="col">
                  <span class="unseen">{mixSay.howMany}</span>
                </th>
                <th scope="col">{mixSay.count}</th>
                <th scope="col">{mixSay.worst}</th>
                <th scope="col">{mixSay.mean}</th>
              </tr>
            </thead>
            <tbody>
              {curve.map((step) => (
                <tr key={step.count}>
                  <th scope="row">{step.count}</th>
                  <td class="mix-set">
                    {names(step)}
                    <button type="button" onClick={() => takeSet(step)}>
                      {mixSay.useSetOf(step.count)}
                    </button>
                  </td>
                  <td>{figure(step.worst, 1)}</td>
                  <td>{figure(step.mean, 1)}</td>
                </tr>
              ))}
            </tbody>
          </Table>
        )}
      </Disclosure>
    </>
  );
}
