import { signal } from '@preact/signals';
import { canonical } from '../../../book/schema/digest.ts';
import type { Lab } from '../../../colour/lab.ts';
import { mixFaultWords } from '../../../messages/mixture-messages.ts';
import { PRESERVED_AXES } from '../../../mixture/search/target-metric.ts';
import type { MissingPigment } from '../../../mixture/shortfall.ts';
import type { Shelf } from '../../../pigment/shelf.ts';
import { Disclosure } from '../../components/Disclosure.tsx';
import { JobProgress } from '../../components/JobProgress.tsx';
import {
  changePreferences,
  labKey,
  mixingPreferences,
  mixOptions,
  preferencesKey,
} from '../../state/harmony/mixing-decisions.ts';
import { job } from '../../state/job.ts';
import { shelfLabelOf } from '../../state/shelf-labels.ts';
import { shelf, showError } from '../../state/studio.ts';
import { runMixtureJob } from '../../state/worker-jobs.ts';
import { mixtureTexts } from '../../texts/mixture-texts.ts';

/** Maximum number of pigments on the screen. */
const MAX_PIGMENTS_SHOWN = 5;
const missingPigmentsJob = job();
const missingPigments = signal<{
  readonly of: string;
  readonly on: Shelf;
  readonly found: MissingPigment[];
} | null>(null);
const missingPigmentsKey = (target: Lab) => canonical([labKey(target), preferencesKey.value]);

/** Searches for pigments outside the shelf that would bring the target nearer. */
async function findMissingPigments(target: Lab): Promise<void> {
  const [on, of] = [shelf.value, missingPigmentsKey(target)];
  const { most = 4, constraints = {} } = mixOptions.value;
  const result = await missingPigmentsJob.run((options) =>
    runMixtureJob('lacks', { target, shelf: on, options: { most, constraints } }, options),
  );
  if (result === null) return;
  if (!result.ok)
    return showError(mixFaultWords(result.fault, (pigment) => shelfLabelOf(pigment, on)));
  missingPigments.value = { of, on, found: result.value };
}

/** For a colour out of reach: what to preserve of it, and which further pigments would reach it. */
export function OutOfReach({ target }: { target: Lab }) {
  return (
    <Disclosure heading={mixtureTexts.reachHeading}>{() => <Choices target={target} />}</Disclosure>
  );
}

function Choices({ target }: { target: Lab }) {
  const last = missingPigments.value;
  const found =
    last?.of === missingPigmentsKey(target) && last.on === shelf.value ? last.found : null;
  return (
    <div class="mix-inside">
      <fieldset class="mix-radios">
        <legend>{mixtureTexts.keepLegend}</legend>
        {PRESERVED_AXES.map((keep) => (
          <label class="check" key={keep}>
            <input
              type="radio"
              name="mix-keep"
              checked={mixingPreferences.value.keep === keep}
              onChange={() => changePreferences({ keep }, mixtureTexts.keepSaid[keep])}
            />
            {mixtureTexts.keeps[keep]}
          </label>
        ))}
      </fieldset>
      {found === null ? (
        <>
          <JobProgress work={missingPigmentsJob} words={mixtureTexts.lacksWork} />
          {missingPigmentsJob.progress.value === null && (
            <p>
              <button type="button" onClick={() => void findMissingPigments(target)}>
                {mixtureTexts.lacksAsk}
              </button>
            </p>
          )}
        </>
      ) : (
        <div role="status">
          {found.length === 0 ? (
            <p>{mixtureTexts.lacksNone}</p>
          ) : (
            <>
              <ul class="mix-points">
                {found.slice(0, MAX_PIGMENTS_SHOWN).map(({ pigment, label, reachable }) => (
                  <li key={pigment}>
                    {reachable ? mixtureTexts.lackReaches(label) : mixtureTexts.lackNearer(label)}
                  </li>
                ))}
              </ul>
              <Disclosure heading={mixtureTexts.figuresHeading}>
                {() => (
                  <dl class="figures">
                    {found.slice(0, MAX_PIGMENTS_SHOWN).map(({ pigment, label, deltaE00 }) => (
                      <div key={pigment}>
                        <dt>{label}</dt>
                        <dd>{mixtureTexts.ciede(deltaE00)}</dd>
                      </div>
                    ))}
                  </dl>
                )}
              </Disclosure>
            </>
          )}
        </div>
      )}
    </div>
  );
}
