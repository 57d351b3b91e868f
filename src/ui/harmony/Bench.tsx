import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { deltaE00 } from '../../colour/difference.ts';
import { hexOf } from '../../colour/hex.ts';
import { changeWords, describe } from '../../colour/words.ts';
import type { Answer, Mixture } from '../../mixture/mixture.ts';
import { nearOf } from '../../pigment/near.ts';
import type { Shelf } from '../../pigment/shelf.ts';
import { isNearest, shownOf } from '../drawn/screen.ts';
import { Screens } from '../held/Screens.tsx';
import { figure } from '../locale.ts';
import { shelf } from '../studio.ts';
import { say, shareWords } from '../words/frame.ts';
import { mixSay } from '../words/mixing.ts';
import { mixAgain, mixing, stopMixing } from './answers.ts';
import { BenchPiles } from './BenchPiles.tsx';
import { BenchMix } from './mix/BenchMix.tsx';
import { Disclosure } from './mix/Disclosure.tsx';
import { chosenFor, contradiction, nameOfLab, takeMixture } from './mix/decided.ts';
import { isTransposed } from './mix/transposing.ts';
import { used } from './mix/used.ts';
import { Asked } from './mix/Wishes.tsx';
import { answers, chosen, isKeyed, studied, targets } from './state.ts';

/** Latest answer, with its target and shelf. */
interface Found {
  readonly of: string;
  readonly on: Shelf;
  readonly answer: Answer;
  readonly inUse: Mixture;
}

/** The selected colour, the mixture for it, and what can be done with that mixture. */
export function Bench() {
  const isClosest = useSignal(false);
  const last = useRef<Found | null>(null);
  const section = useRef<HTMLElement>(null);
  const room = useRef(0);
  const i = chosen.value;
  const colour = studied.value[i];
  const target = targets.value[i];
  if (!colour || !target) return null;
  const answer = answers.value[i] ?? null;
  const { name, share, accent, lab: seen } = colour.gathered;
  const away = deltaE00(seen, target);
  const near = nearOf(target, shelf.value);
  const fresh = used.value[i];
  if (answer && fresh)
    last.current = { of: nameOfLab(target), on: shelf.value, answer, inUse: fresh };
  // Show the latest mixtures while a search runs, so that open disclosures stay open.
  const found =
    last.current?.of === nameOfLab(target) && last.current.on === shelf.value ? last.current : null;
  const inUse = found?.inUse;
  const better =
    found && differenceOf(found.inUse) - differenceOf(found.answer) > 0.05 ? found.answer : null;
  const shown = isClosest.value && better ? better : inUse;
  const isChosen = chosenFor(target) !== null;
  // Keep the section's height during a search, so that the content below does not move.
  const isAwaited = !answer && mixing.value !== null;
  if (!isAwaited) room.current = 0;
  else if (room.current === 0) room.current = section.current?.offsetHeight ?? 0;
  const inUseName = isChosen ? mixSay.yours : say.simplest;
  return (
    <section
      ref={section}
      class="bench"
      aria-labelledby="bench-heading"
      style={room.current > 0 ? { minHeight: `${room.current}px` } : undefined}
    >
      <h2 id="bench-heading">{name}</h2>
      <p>
        {near && `${sentence(near.words)} `}
        {sentence(describe(target))} {say.ofThePhotograph(shareWords(share))}
        {accent && ` ${say.accent}`}
        {away > 1 &&
          ` ${colour.taken.length > 0 ? say.madeOfSeen : isTransposed.value ? mixSay.transposingMade : isKeyed.value ? say.keyingMade : say.madeOfSeen} ${changeWords(seen, target)}.`}
        {isNearest(shownOf(target)) && ` ${say.screenCannot}`}
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
      {shown && found && contradiction.value === null && (
        <BenchPiles
          answer={found.answer}
          mixture={shown}
          heading={shown === inUse ? inUseName : say.closest}
        />
      )}
      {(better || isChosen) && contradiction.value === null && (
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
      {shown && found && (
        <BenchMix
          target={target}
          colour={name}
          answer={found.answer}
          inUse={found.inUse}
          shown={shown}
        />
      )}
      <Disclosure heading={say.number}>
        {() => (
          <dl class="figures">
            <dt>{say.figureWanted}</dt>
            <dd>
              L* {figure(target[0], 1)}, a* {figure(target[1], 1)}, b* {figure(target[2], 1)};{' '}
              {hexOf(target)}
            </dd>
            <dt>{say.figureSeen}</dt>
            <dd>
              L* {figure(seen[0], 1)}, a* {figure(seen[1], 1)}, b* {figure(seen[2], 1)};{' '}
              {say.ciede(away)}
            </dd>
            {answer && (
              <>
                <dt>{say.figureBest}</dt>
                <dd>
                  {say.ciede(answer.deltaE00)}:{' '}
                  {answer.recipe
                    .map(({ pigment, share }) => `${pigment} ${figure(share * 100, 1)} %`)
                    .join(', ')}
                </dd>
              </>
            )}
          </dl>
        )}
      </Disclosure>
      <Screens />
    </section>
  );
}

/** CIEDE2000 to the target of a mixture in whole parts, with its let-downs. */
const differenceOf = ({ letDown, partsDeltaE00 }: Mixture): number =>
  letDown?.deltaE00 ?? partsDeltaE00;

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
