import { signal } from '@preact/signals';
import { canonical } from '../../../book/digest.ts';
import type { Lab } from '../../../colour/lab.ts';
import { KEEPS } from '../../../mixture/metric.ts';
import type { Lack } from '../../../mixture/shortfall.ts';
import type { Shelf } from '../../../pigment/shelf.ts';
import { workMixtures } from '../../jobs.ts';
import { job } from '../../state/job.ts';
import { shelf } from '../../studio.ts';
import { mixSay } from '../../words/mixing.ts';
import { Disclosure } from './Disclosure.tsx';
import { changeWish, mixOptions, nameOfLab, wish, wishKey } from './decided.ts';
import { WorkLine } from './WorkLine.tsx';

/** Maximum number of pigments on the screen. */
const TOLD = 5;
const looking = job();
const lacks = signal<{ readonly of: string; readonly on: Shelf; readonly found: Lack[] } | null>(
  null,
);
const ofTarget = (target: Lab) => canonical([nameOfLab(target), wishKey.value]);

/** Searches for pigments outside the shelf that would bring the target nearer. */
async function lookFor(target: Lab): Promise<void> {
  const [on, of] = [shelf.value, ofTarget(target)];
  const { most = 4, constraints = {} } = mixOptions.value;
  const result = await looking.run((options) =>
    workMixtures('lacks', { target, shelf: on, options: { most, constraints } }, options),
  );
  if (result?.ok) lacks.value = { of, on, found: result.value };
}

/** For a colour out of reach: what to preserve of it, and which further pigments would reach it. */
export function Reach({ target }: { target: Lab }) {
  return <Disclosure heading={mixSay.reachHeading}>{() => <Choices target={target} />}</Disclosure>;
}

function Choices({ target }: { target: Lab }) {
  const last = lacks.value;
  const found = last?.of === ofTarget(target) && last.on === shelf.value ? last.found : null;
  return (
    <div class="mix-inside">
      <fieldset class="mix-radios">
        <legend>{mixSay.keepLegend}</legend>
        {KEEPS.map((keep) => (
          <label class="check" key={keep}>
            <input
              type="radio"
              name="mix-keep"
              checked={wish.value.keep === keep}
              onChange={() => changeWish({ keep }, mixSay.keepSaid[keep])}
            />
            {mixSay.keeps[keep]}
          </label>
        ))}
      </fieldset>
      {found === null ? (
        <>
          <WorkLine work={looking} words={mixSay.lacksWork} />
          {looking.progress.value === null && (
            <p>
              <button type="button" onClick={() => void lookFor(target)}>
                {mixSay.lacksAsk}
              </button>
            </p>
          )}
        </>
      ) : (
        <div role="status">
          {found.length === 0 ? (
            <p>{mixSay.lacksNone}</p>
          ) : (
            <>
              <ul class="mix-points">
                {found.slice(0, TOLD).map(({ pigment, label, reachable }) => (
                  <li key={pigment}>
                    {reachable ? mixSay.lackReaches(label) : mixSay.lackNearer(label)}
                  </li>
                ))}
              </ul>
              <Disclosure heading={mixSay.figuresHeading}>
                {() => (
                  <dl class="figures">
                    {found.slice(0, TOLD).map(({ pigment, label, deltaE00 }) => (
                      <div key={pigment}>
                        <dt>{label}</dt>
                        <dd>{mixSay.ciede(deltaE00)}</dd>
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
