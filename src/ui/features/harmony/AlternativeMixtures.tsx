import type { Lab } from '../../../colour/lab.ts';
import { measuredRecipeOf } from '../../../mixture/measured-recipe.ts';
import type { Mixture, MixtureAnswer } from '../../../mixture/mixture-types.ts';
import { joinWords } from '../../../wording.ts';
import { Disclosure } from '../../components/Disclosure.tsx';
import { partsWords } from '../../components/drawn/alternative-text.ts';
import { ColourComparison } from '../../components/drawn/ColourComparison.tsx';
import { chooseMixture } from '../../state/harmony/mixing-decisions.ts';
import {
  type AssessedMixture,
  assessMixtures,
  pigmentSetKey,
} from '../../state/harmony/mixtures-in-use.ts';
import { formatNumber } from '../../state/locale-format.ts';
import { cssColourOf } from '../../state/screen-colour.ts';
import { sentenceLabelOf, shelfLabelOf } from '../../state/shelf-labels.ts';
import { shelf } from '../../state/studio.ts';
import { differenceKey, mixtureTexts } from '../../texts/mixture-texts.ts';
import { sharedTexts } from '../../texts/shared-texts.ts';
import { lightfastnessWords } from './mixture-words.ts';

/**
 * Other mixtures of the selected colour, each with its advantages and drawbacks.
 * @param target CIELAB under D65
 * @param inUse the current mixture; shown first and not offered
 */
export function AlternativeMixtures({
  target,
  colour,
  answer,
  inUse,
}: {
  target: Lab;
  colour: string;
  answer: MixtureAnswer;
  inUse: Mixture;
}) {
  const others = different([inUse, answer.simplest, answer, ...answer.alternatives]).slice(1);
  return (
    <Disclosure heading={mixtureTexts.othersHeading(others.length)}>
      {() =>
        others.length === 0 ? (
          <>
            <p>{mixtureTexts.noOthers}</p>
            <ul class="mix-others">
              <Way
                one={assessMixtures([inUse])[0]!}
                wanted={target}
                isReached={answer.reachable}
                inUse
              />
            </ul>
          </>
        ) : (
          <ul class="mix-others">
            {assessMixtures([inUse, ...others]).map((one, i) => (
              <Way
                key={pigmentSetKey(one.mixture)}
                one={one}
                wanted={target}
                isReached={answer.reachable}
                inUse={i === 0}
                onUse={() => chooseMixture(target, one.mixture, mixtureTexts.choseMixture(colour))}
              />
            ))}
          </ul>
        )
      }
    </Disclosure>
  );
}

/** Removes mixtures whose pigments equal those of an earlier one. */
function different(all: readonly Mixture[]): Mixture[] {
  const seen = new Set<string>();
  return all.filter((one) => !seen.has(pigmentSetKey(one)) && seen.add(pigmentSetKey(one)));
}

function Way({
  one,
  wanted,
  isReached,
  inUse,
  onUse,
}: {
  one: AssessedMixture;
  wanted: Lab;
  /** Whether any mixture of the shelf reaches the target. */
  isReached: boolean;
  inUse: boolean;
  onUse?: () => void;
}) {
  const on = shelf.value;
  const bench = measuredRecipeOf(one.mixture, on);
  const { judgement, drift, hasNoNeighbours: alone } = one;
  const { weakest, hazards, unknown, slip, pigments, opacity, films, pairs } = judgement;
  const name = joinWords(bench.pigments.map(({ pigment }) => sentenceLabelOf(pigment, on)));
  const strongest = sentenceLabelOf(slip.pigment, on);
  return (
    <li class="mix-way">
      <h4>{name.charAt(0).toUpperCase() + name.slice(1)}</h4>
      <ColourComparison
        wanted={{ name: sharedTexts.wanted, hex: cssColourOf(wanted) }}
        mixed={{ name: sharedTexts.mixed, hex: cssColourOf(bench.lab) }}
        reachable={one.mixture.reachable || isReached}
        class="mix-patch"
      />
      <p class="small">
        {bench.parts
          .map(
            ({ pigment, parts }) => `${partsWords(parts)} ${sentenceLabelOf(pigment, bench.shelf)}`,
          )
          .join(', ')}
      </p>
      <ul class="mix-points">
        <li>{sharedTexts.differs[differenceKey(bench.deltaE00)]}</li>
        <li>
          {mixtureTexts.pigments(pigments)}; {mixtureTexts.covers[opacity]}.
        </li>
        <li>
          {weakest
            ? mixtureTexts.lasting(
                sentenceLabelOf(weakest.pigment, on),
                lightfastnessWords(weakest.class),
                weakest.ofAll,
              )
            : mixtureTexts.lastingUnknown}
        </li>
        <li>
          {
            (alone ? mixtureTexts.lampAlone : mixtureTexts.lamp)[
              differenceKey(alone ? judgement.lampShift : drift)
            ]
          }
        </li>
        {pigments > 1 && <li>{mixtureTexts.slip[differenceKey(slip.deltaE00)](strongest)}</li>}
        {hazards.length > 0 && (
          <li>
            {sentence(
              joinWords(
                hazards.map(
                  ({ pigment, level }) =>
                    `${sentenceLabelOf(pigment, on)} (${mixtureTexts.hazardWords[level]})`,
                ),
              ),
            )}
          </li>
        )}
        {unknown.length > 0 && (
          <li>
            {mixtureTexts.unknownHazard(joinWords(unknown.map((one) => sentenceLabelOf(one, on))))}
          </li>
        )}
        {hazards.length + unknown.length === 0 && <li>{mixtureTexts.noHazard}</li>}
        {films.map((pigment) => (
          <li key={pigment}>{mixtureTexts.film(shelfLabelOf(pigment, on))}</li>
        ))}
      </ul>
      {(hazards.length > 0 || pairs.length > 0) && (
        <Disclosure heading={mixtureTexts.cautionsHeading}>
          {() => (
            <ul class="mix-points">
              {hazards.map(({ pigment, sentence: what, caution }) => (
                <li key={pigment}>
                  <strong>{shelfLabelOf(pigment, on)}.</strong> {what} {caution}
                </li>
              ))}
              {pairs.map(({ pigments: two, why }) => (
                <li key={two.join()}>
                  <strong>{joinWords(two.map((pigment) => shelfLabelOf(pigment, on)))}.</strong>{' '}
                  {why.join(' ')}
                </li>
              ))}
              <li>{mixtureTexts.sheets}</li>
            </ul>
          )}
        </Disclosure>
      )}
      <Disclosure heading={mixtureTexts.figuresHeading}>
        {() => (
          <dl class="figures">
            <dt>{mixtureTexts.figure.difference}</dt>
            <dd>{mixtureTexts.ciede(bench.deltaE00)}</dd>
            <dt>{mixtureTexts.figure.contrast}</dt>
            <dd>{formatNumber(judgement.contrast, 2)}</dd>
            {!alone && (
              <>
                <dt>{mixtureTexts.figure.lampDrift}</dt>
                <dd>{mixtureTexts.ciede(drift)}</dd>
              </>
            )}
            <dt>{mixtureTexts.figure.lampShift}</dt>
            <dd>{mixtureTexts.ciede(judgement.lampShift)}</dd>
            <dt>{mixtureTexts.figure.slip}</dt>
            <dd>
              {strongest}: {mixtureTexts.ciede(slip.deltaE00)}
            </dd>
            {weakest && (
              <>
                <dt>{mixtureTexts.figure.lasting}</dt>
                <dd>
                  {shelfLabelOf(weakest.pigment, on)}: {weakest.class}. {weakest.note}
                </dd>
              </>
            )}
          </dl>
        )}
      </Disclosure>
      {inUse ? (
        <p class="mix-in-use">{mixtureTexts.inUse}</p>
      ) : (
        <button type="button" onClick={onUse}>
          {mixtureTexts.useIt}
          <span class="unseen">: {name}</span>
        </button>
      )}
    </li>
  );
}

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
