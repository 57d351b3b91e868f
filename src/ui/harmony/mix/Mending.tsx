import { useEffect } from 'preact/hooks';
import type { Lab } from '../../../colour/lab.ts';
import { changeWords } from '../../../colour/words.ts';
import { WAYS } from '../../../harmony/vary.ts';
import type { Bench } from '../../../mixture/bench.ts';
import { startAgainWords } from '../../../mixture/faults.ts';
import type { Addition } from '../../../mixture/mender.ts';
import { joinWords } from '../../../wording.ts';
import { BesideWanted } from '../../drawn/BesideWanted.tsx';
import { shownOf } from '../../drawn/screen.ts';
import { figure } from '../../locale.ts';
import { NumberInput } from '../../NumberInput.tsx';
import { shelf } from '../../studio.ts';
import { KeepPile } from '../../swatches/KeepPile.tsx';
import { say, WAY_WORDS } from '../../words/frame.ts';
import { farOf, mixSay } from '../../words/mixing.ts';
import { Disclosure } from './Disclosure.tsx';
import {
  cameOut,
  changePile,
  correction,
  findAdditions,
  layPile,
  mending,
  pile,
  promised,
  touch,
} from './mending.ts';
import { labelOn, spokenOn } from './named.ts';
import { partsRoughly, timesWords } from './spoken.ts';
import { WorkLine } from './WorkLine.tsx';

/** Maximum number of additions on the screen. */
const SHOWN = 3;

/** Correction of a pile that came out wrong: what to add to it. */
export function Mending({ target, bench }: { target: Lab; bench: Bench }) {
  return (
    <Disclosure heading={mixSay.mendHeading}>
      {() => <Mend target={target} bench={bench} />}
    </Disclosure>
  );
}

function Mend({ target, bench }: { target: Lab; bench: Bench }) {
  useEffect(() => layPile(target, bench.pigments), [target, bench]);
  const wrong = pile.value;
  const on = shelf.value;
  if (!wrong) return null;
  const [from, seen] = [promised.value, cameOut.value];
  const found = correction();
  return (
    <div class="mix-inside">
      <p>{mixSay.mendAbout}</p>
      <fieldset class="mix-parts">
        <legend>{mixSay.mendPile}</legend>
        {wrong.parts.map((part, i) => (
          <NumberInput
            key={part.pigment}
            label={labelOn(part.pigment, on)}
            value={part.parts}
            onNumber={(parts) => {
              if (parts !== null)
                changePile({ parts: wrong.parts.map((p, k) => (k === i ? { ...p, parts } : p)) });
            }}
          />
        ))}
        <NumberInput
          label={mixSay.mendVolume}
          value={wrong.cm3}
          onNumber={(cm3) => changePile({ cm3: cm3 === 0 ? null : cm3 })}
        />
      </fieldset>
      {from && seen && (
        <>
          <div class="mix-seen">
            <BesideWanted
              wanted={{ name: say.wanted, hex: shownOf(target) }}
              mixed={{ name: mixSay.cameOut, hex: shownOf(seen) }}
            />
            <fieldset class="mix-steps">
              <legend>{mixSay.mendSteps}</legend>
              {WAYS.map((way) => (
                <button type="button" key={way} onClick={() => touch(way)}>
                  {WAY_WORDS[way]}
                </button>
              ))}
            </fieldset>
          </div>
          <p class="mix-buttons" role="status">
            <span>
              {wrong.steps.length === 0 && wrong.measured === null
                ? `${mixSay.mendSeen} ${mixSay.mendPromised}.`
                : `${mixSay.mendSeen} ${changeWords(from, seen)}.`}
            </span>
            {(wrong.steps.length > 0 || wrong.measured !== null) && (
              <>
                <button
                  type="button"
                  class="quiet"
                  onClick={() =>
                    changePile(
                      wrong.measured ? { measured: null } : { steps: wrong.steps.slice(0, -1) },
                    )
                  }
                >
                  {mixSay.mendStepBack}
                </button>
                <button
                  type="button"
                  class="quiet"
                  onClick={() => changePile({ steps: [], measured: null })}
                >
                  {mixSay.mendBack}
                </button>
              </>
            )}
          </p>
          <Disclosure heading={mixSay.mendNumbers}>{() => <Measured seen={seen} />}</Disclosure>
        </>
      )}
      <WorkLine work={mending} words={mixSay.mendWork} />
      {mending.progress.value === null && !found?.isOf && (
        <p class="mix-buttons">
          <button type="button" disabled={!seen} onClick={() => void findAdditions()}>
            {mixSay.mendAsk}
          </button>
          {seen && (
            <KeepPile parts={wrong.parts} seen={seen} isMeasured={wrong.measured !== null} />
          )}
        </p>
      )}
      {found && !found.isOf && mending.progress.value === null && (
        <p class="small">{mixSay.mendChanged}</p>
      )}
      {found?.isOf && <Found />}
    </div>
  );
}

/** Input of the pile's measured L*, a* and b*. @param seen initial values, CIELAB under D65 */
function Measured({ seen }: { seen: Lab }) {
  const AXES = ['L*', 'a*', 'b*'] as const;
  return (
    <div class="mix-numbers">
      {AXES.map((axis, i) => (
        <NumberInput
          key={axis}
          label={axis}
          value={seen[i]!}
          decimals={2}
          signed={i > 0}
          late
          onNumber={(value) => {
            if (value === null || Math.abs(value) > (i === 0 ? 100 : 160)) return;
            const next: [number, number, number] = [...seen];
            next[i] = value;
            changePile({ measured: next });
          }}
        />
      ))}
    </div>
  );
}

function Found() {
  const on = shelf.value;
  const found = correction();
  if (!found) return null;
  const { now, options, slip, startAgain } = found.result;
  if (options.length === 0 && startAgain === null)
    return <p role="status">{now <= 1 ? mixSay.mendRight : mixSay.mendNone}</p>;
  const what = ({ add }: Addition) =>
    joinWords(
      add.map(
        ({ pigment, parts, cm3 }) =>
          `${partsRoughly(parts)}${cm3 === null ? '' : ` (${figure(cm3, cm3 < 1 ? 2 : 1)} ml)`} of ${spokenOn(pigment, on)}`,
      ),
    );
  return (
    <div class="mix-found" role="status">
      {startAgain && (
        <p>
          <strong>{startAgainWords(startAgain)}</strong>
        </p>
      )}
      {slip && <p>{mixSay.mendSlip(spokenOn(slip.pigment, on), timesWords(slip.factor))}</p>}
      {options.length === 0 && <p>{mixSay.mendNone}</p>}
      <ol class="mix-options">
        {options.slice(0, SHOWN).map((one) => (
          <li key={what(one)}>
            {mixSay.mendAdd(what(one))} {mixSay.mendOf(shareOf(one.total))}{' '}
            {mixSay.mendThen[farOf(one.deltaE00)]}
          </li>
        ))}
      </ol>
      <Disclosure heading={mixSay.figuresHeading}>
        {() => (
          <dl class="figures">
            {options.slice(0, SHOWN).map((one) => (
              <div key={what(one)}>
                <dt>{what(one)}</dt>
                <dd>
                  {one.add.map(({ parts }) => figure(parts, 3)).join(' + ')};{' '}
                  {mixSay.ciede(one.deltaE00)}
                </dd>
              </div>
            ))}
          </dl>
        )}
      </Disclosure>
    </div>
  );
}

/** Size of an addition in words. @param total volume relative to the pile */
function shareOf(total: number): string {
  if (total < 0.02) return 'a hundredth or so';
  if (total < 1) return `${Math.round(total * 100)} %`;
  return `${figure(total, 1)} times the size`;
}
