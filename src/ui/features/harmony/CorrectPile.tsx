import { useEffect } from 'preact/hooks';
import { changeWords } from '../../../colour/describe-colour.ts';
import type { Lab } from '../../../colour/lab.ts';
import { VARIANT_WAYS } from '../../../harmony/variant-target.ts';
import { startAgainWords } from '../../../messages/mixture-messages.ts';
import type { Addition } from '../../../mixture/addition-search.ts';
import type { MeasuredRecipe } from '../../../mixture/measured-recipe.ts';
import { joinWords } from '../../../wording.ts';
import { Disclosure } from '../../components/Disclosure.tsx';
import { ColourComparison } from '../../components/drawn/ColourComparison.tsx';
import { JobProgress } from '../../components/JobProgress.tsx';
import { NumberInput } from '../../components/NumberInput.tsx';
import {
  addObservedStep,
  changePile,
  correctionJob,
  findAdditions,
  latestCorrectionState,
  observedColour,
  pileToCorrect,
  predictedColour,
  startCorrection,
} from '../../state/harmony/pile-correction.ts';
import { formatNumber } from '../../state/locale-format.ts';
import { cssColourOf } from '../../state/screen-colour.ts';
import { sentenceLabelOf, shelfLabelOf } from '../../state/shelf-labels.ts';
import { shelf } from '../../state/studio.ts';
import { differenceKey, mixtureTexts } from '../../texts/mixture-texts.ts';
import { sharedTexts, VARIANT_WAY_WORDS } from '../../texts/shared-texts.ts';
import { LogPileButton } from '../calibration/LogPileButton.tsx';
import { roughPartsWords, timesWords } from './mixture-words.ts';

/** Maximum number of additions on the screen. */
const MAX_ADDITIONS_SHOWN = 3;

/** Correction of a pile that came out wrong: what to add to it. */
export function CorrectPile({ target, bench }: { target: Lab; bench: MeasuredRecipe }) {
  return (
    <Disclosure heading={mixtureTexts.mendHeading}>
      {() => <Mend target={target} bench={bench} />}
    </Disclosure>
  );
}

function Mend({ target, bench }: { target: Lab; bench: MeasuredRecipe }) {
  useEffect(() => startCorrection(target, bench.pigments), [target, bench]);
  const wrong = pileToCorrect.value;
  const on = shelf.value;
  if (!wrong) return null;
  const [from, seen] = [predictedColour.value, observedColour.value];
  const found = latestCorrectionState();
  return (
    <div class="mix-inside">
      <p>{mixtureTexts.mendAbout}</p>
      <fieldset class="mix-parts">
        <legend>{mixtureTexts.mendPile}</legend>
        {wrong.parts.map((part, i) => (
          <NumberInput
            key={part.pigment}
            label={shelfLabelOf(part.pigment, on)}
            value={part.parts}
            onNumber={(parts) => {
              if (parts !== null)
                changePile({ parts: wrong.parts.map((p, k) => (k === i ? { ...p, parts } : p)) });
            }}
          />
        ))}
        <NumberInput
          label={mixtureTexts.mendVolume}
          value={wrong.cm3}
          onNumber={(cm3) => changePile({ cm3: cm3 === 0 ? null : cm3 })}
        />
      </fieldset>
      {from && seen && (
        <>
          <div class="mix-seen">
            <ColourComparison
              wanted={{ name: sharedTexts.wanted, hex: cssColourOf(target) }}
              mixed={{ name: mixtureTexts.cameOut, hex: cssColourOf(seen) }}
            />
            <fieldset class="mix-steps">
              <legend>{mixtureTexts.mendSteps}</legend>
              {VARIANT_WAYS.map((way) => (
                <button type="button" key={way} onClick={() => addObservedStep(way)}>
                  {VARIANT_WAY_WORDS[way]}
                </button>
              ))}
            </fieldset>
          </div>
          <p class="mix-buttons" role="status">
            <span>
              {wrong.steps.length === 0 && wrong.measured === null
                ? `${mixtureTexts.mendSeen} ${mixtureTexts.mendPromised}.`
                : `${mixtureTexts.mendSeen} ${changeWords(from, seen)}.`}
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
                  {mixtureTexts.mendStepBack}
                </button>
                <button
                  type="button"
                  class="quiet"
                  onClick={() => changePile({ steps: [], measured: null })}
                >
                  {mixtureTexts.mendBack}
                </button>
              </>
            )}
          </p>
          <Disclosure heading={mixtureTexts.mendNumbers}>
            {() => <Measured seen={seen} />}
          </Disclosure>
        </>
      )}
      <JobProgress work={correctionJob} words={mixtureTexts.mendWork} />
      {correctionJob.progress.value === null && !found?.isOf && (
        <p class="mix-buttons">
          <button type="button" disabled={!seen} onClick={() => void findAdditions()}>
            {mixtureTexts.mendAsk}
          </button>
          {seen && (
            <LogPileButton parts={wrong.parts} seen={seen} isMeasured={wrong.measured !== null} />
          )}
        </p>
      )}
      {found && !found.isOf && correctionJob.progress.value === null && (
        <p class="small">{mixtureTexts.mendChanged}</p>
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
  const found = latestCorrectionState();
  if (!found) return null;
  const { now, options, slip, startAgain } = found.result;
  if (options.length === 0 && startAgain === null)
    return <p role="status">{now <= 1 ? mixtureTexts.mendRight : mixtureTexts.mendNone}</p>;
  const what = ({ add }: Addition) =>
    joinWords(
      add.map(
        ({ pigment, parts, cm3 }) =>
          `${roughPartsWords(parts)}${cm3 === null ? '' : ` (${formatNumber(cm3, cm3 < 1 ? 2 : 1)} ml)`} of ${sentenceLabelOf(pigment, on)}`,
      ),
    );
  return (
    <div class="mix-found" role="status">
      {startAgain && (
        <p>
          <strong>{startAgainWords(startAgain, formatNumber)}</strong>
        </p>
      )}
      {slip && (
        <p>{mixtureTexts.mendSlip(sentenceLabelOf(slip.pigment, on), timesWords(slip.factor))}</p>
      )}
      {options.length === 0 && <p>{mixtureTexts.mendNone}</p>}
      <ol class="mix-options">
        {options.slice(0, MAX_ADDITIONS_SHOWN).map((one) => (
          <li key={what(one)}>
            {mixtureTexts.mendAdd(what(one))} {mixtureTexts.mendOf(shareOf(one.total))}{' '}
            {mixtureTexts.mendThen[differenceKey(one.deltaE00)]}
          </li>
        ))}
      </ol>
      <Disclosure heading={mixtureTexts.figuresHeading}>
        {() => (
          <dl class="figures">
            {options.slice(0, MAX_ADDITIONS_SHOWN).map((one) => (
              <div key={what(one)}>
                <dt>{what(one)}</dt>
                <dd>
                  {one.add.map(({ parts }) => formatNumber(parts, 3)).join(' + ')};{' '}
                  {mixtureTexts.ciede(one.deltaE00)}
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
  return `${formatNumber(total, 1)} times the size`;
}
