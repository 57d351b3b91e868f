import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { changeWords, describeColour } from '../../../colour/describe-colour.ts';
import { deltaE00 } from '../../../colour/difference.ts';
import { hexOf } from '../../../colour/gamut-mapping.ts';
import type { Mixture, MixtureAnswer } from '../../../mixture/mixture-types.ts';
import { nearestMasstoneOf } from '../../../pigment/nearest-masstone.ts';
import type { Shelf } from '../../../pigment/shelf.ts';
import { Disclosure } from '../../components/Disclosure.tsx';
import { DisplayLimits } from '../../components/DisplayLimits.tsx';
import {
  answers,
  harmonyColours,
  isMappedToShelf,
  selectedIndex,
  targets,
} from '../../state/harmony/current-harmony.ts';
import {
  chooseMixture,
  chosenMixtureFor,
  contradiction,
  labKey,
} from '../../state/harmony/mixing-decisions.ts';
import {
  mixtureSearchProgress,
  restartMixtureSearch,
  stopMixtureSearch,
} from '../../state/harmony/mixture-answers.ts';
import { mixturesInUse } from '../../state/harmony/mixtures-in-use.ts';
import { isWithinReachShown } from '../../state/harmony/move-within-reach.ts';
import { formatNumber } from '../../state/locale-format.ts';
import { cssColourOf, isGamutMapped } from '../../state/screen-colour.ts';
import { shelf } from '../../state/studio.ts';
import { mixtureTexts } from '../../texts/mixture-texts.ts';
import { sharedTexts, shareWords } from '../../texts/shared-texts.ts';
import { MixturePiles } from './MixturePiles.tsx';
import { MixtureTools } from './MixtureTools.tsx';
import { PreferencesSummary } from './PreferencesForm.tsx';

/** Latest answer, with its target and shelf. */
interface ShownAnswer {
  readonly of: string;
  readonly on: Shelf;
  readonly answer: MixtureAnswer;
  readonly inUse: Mixture;
}

/** The selected colour, the mixture for it, and what can be done with that mixture. */
export function SelectedColour() {
  const isClosest = useSignal(false);
  const last = useRef<ShownAnswer | null>(null);
  const section = useRef<HTMLElement>(null);
  const room = useRef(0);
  const i = selectedIndex.value;
  const colour = harmonyColours.value[i];
  const target = targets.value[i];
  if (!colour || !target) return null;
  const answer = answers.value[i] ?? null;
  const { name, share, accent, lab: seen } = colour.gathered;
  const away = deltaE00(seen, target);
  const near = nearestMasstoneOf(target, shelf.value);
  const fresh = mixturesInUse.value[i];
  if (answer && fresh) last.current = { of: labKey(target), on: shelf.value, answer, inUse: fresh };
  // Show the latest mixtures while a search runs, so that open disclosures stay open.
  const found =
    last.current?.of === labKey(target) && last.current.on === shelf.value ? last.current : null;
  const inUse = found?.inUse;
  const better =
    found && wholePartsDeltaE(found.inUse) - wholePartsDeltaE(found.answer) > 0.05
      ? found.answer
      : null;
  const shown = isClosest.value && better ? better : inUse;
  const isChosen = chosenMixtureFor(target) !== null;
  // Keep the section's height during a search, so that the content below does not move.
  const isAwaited = !answer && mixtureSearchProgress.value !== null;
  if (!isAwaited) room.current = 0;
  else if (room.current === 0) room.current = section.current?.offsetHeight ?? 0;
  const inUseName = isChosen ? mixtureTexts.yours : sharedTexts.simplest;
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
        {sentence(describeColour(target))} {sharedTexts.ofThePhotograph(shareWords(share))}
        {accent && ` ${sharedTexts.accent}`}
        {away > 1 &&
          ` ${colour.taken.length > 0 ? sharedTexts.madeOfSeen : isWithinReachShown.value ? mixtureTexts.transposingMade : isMappedToShelf.value ? sharedTexts.keyingMade : sharedTexts.madeOfSeen} ${changeWords(seen, target)}.`}
        {isGamutMapped(cssColourOf(target)) && ` ${sharedTexts.screenCannot}`}
      </p>
      <PreferencesSummary />
      {!answer && contradiction.value === null && (
        <div class="work-line" role="status">
          {mixtureSearchProgress.value === null ? (
            <>
              <p>{mixtureTexts.mixStopped}</p>
              <button type="button" onClick={restartMixtureSearch}>
                {mixtureTexts.mixAgain}
              </button>
            </>
          ) : (
            <>
              <p>{sharedTexts.mixing}</p>
              <progress
                max={1}
                value={mixtureSearchProgress.value}
                aria-label={sharedTexts.mixing}
              />
              <button type="button" class="quiet" onClick={stopMixtureSearch}>
                {sharedTexts.stop}
              </button>
            </>
          )}
        </div>
      )}
      {shown && found && contradiction.value === null && (
        <MixturePiles
          answer={found.answer}
          mixture={shown}
          heading={shown === inUse ? inUseName : sharedTexts.closest}
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
              {isClosest.value
                ? isChosen
                  ? mixtureTexts.showYours
                  : sharedTexts.showSimplest
                : sharedTexts.showClosest}
            </button>
          )}
          {better && isClosest.value && (
            <button
              type="button"
              onClick={() => {
                chooseMixture(target, better, mixtureTexts.choseMixture(name));
                isClosest.value = false;
              }}
            >
              {mixtureTexts.useIt}
            </button>
          )}
          {isChosen && (
            <button
              type="button"
              class="quiet"
              onClick={() => chooseMixture(target, null, mixtureTexts.backToSimplestSaid(name))}
            >
              {mixtureTexts.backToSimplest}
            </button>
          )}
        </p>
      )}
      {shown && found && (
        <MixtureTools
          target={target}
          colour={name}
          answer={found.answer}
          inUse={found.inUse}
          shown={shown}
        />
      )}
      <Disclosure heading={sharedTexts.number}>
        {() => (
          <dl class="figures">
            <dt>{sharedTexts.figureWanted}</dt>
            <dd>
              L* {formatNumber(target[0], 1)}, a* {formatNumber(target[1], 1)}, b*{' '}
              {formatNumber(target[2], 1)}; {hexOf(target)}
            </dd>
            <dt>{sharedTexts.figureSeen}</dt>
            <dd>
              L* {formatNumber(seen[0], 1)}, a* {formatNumber(seen[1], 1)}, b*{' '}
              {formatNumber(seen[2], 1)}; {sharedTexts.ciede(away)}
            </dd>
            {answer && (
              <>
                <dt>{sharedTexts.figureBest}</dt>
                <dd>
                  {sharedTexts.ciede(answer.deltaE00)}:{' '}
                  {answer.recipe
                    .map(({ pigment, share }) => `${pigment} ${formatNumber(share * 100, 1)} %`)
                    .join(', ')}
                </dd>
              </>
            )}
          </dl>
        )}
      </Disclosure>
      <DisplayLimits />
    </section>
  );
}

/** CIEDE2000 to the target of a mixture in whole parts, with its let-downs. */
const wholePartsDeltaE = ({ letDown, partsDeltaE00 }: Mixture): number =>
  letDown?.deltaE00 ?? partsDeltaE00;

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
