import { useSignal } from '@preact/signals';
import { deltaE00 } from '../../colour/difference.ts';
import { hexOf } from '../../colour/hex.ts';
import { inSrgb } from '../../colour/rgb.ts';
import { changeWords, describe } from '../../colour/words.ts';
import type { Mixture } from '../../mixture/mixture.ts';
import { nearOf } from '../../pigment/near.ts';
import { shelf } from '../studio.ts';
import { say, shareWords } from '../words.ts';
import { mixAgain, mixing, stopMixing } from './answers.ts';
import { BenchPiles } from './BenchPiles.tsx';
import { BenchMix } from './mix/BenchMix.tsx';
import { chosenFor, contradiction, takeMixture } from './mix/decided.ts';
import { isTransposed } from './mix/transposing.ts';
import { used } from './mix/used.ts';
import { Asked } from './mix/Wishes.tsx';
import { mixSay } from './mix/words.ts';
import { answers, chosen, isKeyed, studied, targets } from './state.ts';

/** The chosen colour and the paint for it. */
export function Bench() {
  const isClosest = useSignal(false);
  const i = chosen.value;
  const colour = studied.value[i];
  const target = targets.value[i];
  if (!colour || !target) return null;
  const answer = answers.value[i];
  const { name, share, accent, lab: seen } = colour.gathered;
  const away = deltaE00(seen, target);
  const near = nearOf(target, shelf.value);
  const inUse = used.value[i];
  const better =
    answer && inUse && differenceOf(inUse) - differenceOf(answer) > 0.05 ? answer : null;
  const shown = isClosest.value && better ? better : inUse;
  const isChosen = chosenFor(target) !== null;
  const inUseName = isChosen ? mixSay.yours : say.simplest;
  return (
    <section class="bench" aria-labelledby="bench-heading">
      <h2 id="bench-heading">{name}</h2>
      <p>
        {near && `${sentence(near.words)} `}
        {sentence(describe(target))} {say.ofThePhotograph(shareWords(share))}
        {accent && ` ${say.accent}`}
        {away > 1 &&
          ` ${colour.taken.length > 0 ? say.madeOfSeen : isTransposed.value ? mixSay.transposingMade : isKeyed.value ? say.keyingMade : say.madeOfSeen} ${changeWords(seen, target)}.`}
        {!inSrgb(target) && ` ${say.screenCannot}`}
      </p>
      <Asked />
      {!answer && contradiction.value === null && (
        <div class="work-line" role="status">
          {mixing.value === null ? (
            <>
              <p>{mixSay.mixStopped}</p>
              <button type="button" onClick={mixAgain}>
                {mixSay.mixAgain}
              </button>
            </>
          ) : (
            <>
              <p>{say.mixing}</p>
              <progress max={1} value={mixing.value} aria-label={say.mixing} />
              <button type="button" class="quiet" onClick={stopMixing}>
                {say.stop}
              </button>
            </>
          )}
        </div>
      )}
      {shown && (
        <BenchPiles
          wanted={target}
          mixture={shown}
          heading={shown === inUse ? inUseName : say.closest}
        />
      )}
      {(better || isChosen) && (
        <p class="mix-buttons">
          {better && (
            <button
              type="button"
              aria-pressed={isClosest.value}
              onClick={() => {
                isClosest.value = !isClosest.value;
              }}
            >
              {isClosest.value ? (isChosen ? mixSay.showYours : say.showSimplest) : say.showClosest}
            </button>
          )}
          {better && isClosest.value && (
            <button
              type="button"
              onClick={() => {
                takeMixture(target, better, mixSay.choseMixture(name));
                isClosest.value = false;
              }}
            >
              {mixSay.useIt}
            </button>
          )}
          {isChosen && (
            <button
              type="button"
              class="quiet"
              onClick={() => takeMixture(target, null, mixSay.backToSimplestSaid(name))}
            >
              {mixSay.backToSimplest}
            </button>
          )}
        </p>
      )}
      {shown && answer && inUse && <BenchMix {...{ target, answer, inUse, shown }} colour={name} />}
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

/** CIEDE2000 of a mixture as it stands on the bench. */
const differenceOf = ({ letDown, partsDeltaE00 }: Mixture): number =>
  letDown?.deltaE00 ?? partsDeltaE00;

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
