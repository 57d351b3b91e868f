import { useSignal } from '@preact/signals';
import { deltaE00 } from '../../colour/difference.ts';
import { hexOf } from '../../colour/hex.ts';
import { inSrgb } from '../../colour/rgb.ts';
import { changeWords, describe } from '../../colour/words.ts';
import { nearOf } from '../../pigment/near.ts';
import { shelf } from '../studio.ts';
import { say, shareWords } from '../words.ts';
import { mixing, stopMixing } from './answers.ts';
import { BenchPiles } from './BenchPiles.tsx';
import { answers, chosen, isKeyed, studied, targets } from './state.ts';

/** The chosen colour and the paint for it. */
export function Bench() {
  const closest = useSignal(false);
  const i = chosen.value;
  const colour = studied.value[i];
  const target = targets.value[i];
  if (!colour || !target) return null;
  const answer = answers.value[i];
  const { name, share, accent, lab: seen } = colour.gathered;
  const away = deltaE00(seen, target);
  const near = nearOf(target, shelf.value);
  const simplest = answer?.simplest;
  const better =
    answer && simplest && simplest.partsDeltaE00 - answer.partsDeltaE00 > 0.05 ? answer : null;
  return (
    <section class="bench" aria-labelledby="bench-heading">
      <h2 id="bench-heading">{name}</h2>
      <p>
        {near && `${sentence(near.words)} `}
        {sentence(describe(target))} {say.ofThePhotograph(shareWords(share))}
        {accent && ` ${say.accent}`}
        {away > 1 &&
          ` ${isKeyed.value && colour.taken.length === 0 ? say.keyingMade : say.madeOfSeen} ${changeWords(seen, target)}.`}
        {!inSrgb(target) && ` ${say.screenCannot}`}
      </p>
      {!answer && (
        <div class="work-line" role="status">
          <p>{say.mixing}</p>
          <progress max={1} value={mixing.value ?? 0} aria-label={say.mixing} />
          <button type="button" class="quiet" onClick={stopMixing}>
            {say.stop}
          </button>
        </div>
      )}
      {simplest && (
        <BenchPiles
          wanted={target}
          mixture={closest.value && better ? better : simplest}
          heading={closest.value && better ? say.closest : say.simplest}
        />
      )}
      {better && (
        <p>
          <button
            type="button"
            aria-pressed={closest.value}
            onClick={() => {
              closest.value = !closest.value;
            }}
          >
            {closest.value ? say.showSimplest : say.showClosest}
          </button>
        </p>
      )}
      <details>
        <summary>{say.number}</summary>
        <dl class="figures">
          <dt>{say.figureWanted}</dt>
          <dd>
            L* {target[0].toFixed(1)}, a* {target[1].toFixed(1)}, b* {target[2].toFixed(1)};{' '}
            {hexOf(target)}
          </dd>
          <dt>{say.figureSeen}</dt>
          <dd>
            L* {seen[0].toFixed(1)}, a* {seen[1].toFixed(1)}, b* {seen[2].toFixed(1)};{' '}
            {say.ciede(away)}
          </dd>
          {answer && (
            <>
              <dt>{say.figureBest}</dt>
              <dd>
                {say.ciede(answer.deltaE00)}:{' '}
                {answer.recipe
                  .map(({ pigment, share }) => `${pigment} ${(share * 100).toFixed(1)} %`)
                  .join(', ')}
              </dd>
            </>
          )}
        </dl>
      </details>
    </section>
  );
}

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
