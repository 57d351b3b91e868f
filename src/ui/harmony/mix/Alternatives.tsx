import type { Lab } from '../../../colour/lab.ts';
import { benchOf } from '../../../mixture/bench.ts';
import type { Answer, Mixture } from '../../../mixture/mixture.ts';
import { joinWords } from '../../../wording.ts';
import { BesideWanted } from '../../drawn/BesideWanted.tsx';
import { partsWords } from '../../drawn/say.ts';
import { shownOf } from '../../drawn/screen.ts';
import { figure } from '../../locale.ts';
import { shelf } from '../../studio.ts';
import { say } from '../../words/frame.ts';
import { farOf, mixSay } from '../../words/mixing.ts';
import { Disclosure } from './Disclosure.tsx';
import { takeMixture } from './decided.ts';
import { labelOn, spokenOn } from './named.ts';
import { lastingWords } from './spoken.ts';
import { pigmentsOf, type Weighed, weigh } from './used.ts';

/**
 * Other mixtures of the selected colour, each with its advantages and drawbacks.
 * @param target CIELAB under D65
 * @param inUse the current mixture; shown first and not offered
 */
export function Alternatives({
  target,
  colour,
  answer,
  inUse,
}: {
  target: Lab;
  colour: string;
  answer: Answer;
  inUse: Mixture;
}) {
  const others = different([inUse, answer.simplest, answer, ...answer.alternatives]).slice(1);
  return (
    <Disclosure heading={mixSay.othersHeading(others.length)}>
      {() =>
        others.length === 0 ? (
          <>
            <p>{mixSay.noOthers}</p>
            <ul class="mix-others">
              <Way one={weigh([inUse])[0]!} wanted={target} isReached={answer.reachable} inUse />
            </ul>
          </>
        ) : (
          <ul class="mix-others">
            {weigh([inUse, ...others]).map((one, i) => (
              <Way
                key={pigmentsOf(one.mixture)}
                one={one}
                wanted={target}
                isReached={answer.reachable}
                inUse={i === 0}
                onUse={() => takeMixture(target, one.mixture, mixSay.choseMixture(colour))}
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
  return all.filter((one) => !seen.has(pigmentsOf(one)) && seen.add(pigmentsOf(one)));
}

function Way({
  one,
  wanted,
  isReached,
  inUse,
  onUse,
}: {
  one: Weighed;
  wanted: Lab;
  /** Whether any mixture of the shelf reaches the target. */
  isReached: boolean;
  inUse: boolean;
  onUse?: () => void;
}) {
  const on = shelf.value;
  const bench = benchOf(one.mixture, on);
  const { judgement, drift, alone } = one;
  const { weakest, hazards, unknown, slip, pigments, opacity, films, pairs } = judgement;
  const name = joinWords(bench.pigments.map(({ pigment }) => spokenOn(pigment, on)));
  const strongest = spokenOn(slip.pigment, on);
  return (
    <li class="mix-way">
      <h4>{name.charAt(0).toUpperCase() + name.slice(1)}</h4>
      <BesideWanted
        wanted={{ name: say.wanted, hex: shownOf(wanted) }}
        mixed={{ name: say.mixed, hex: shownOf(bench.lab) }}
        reachable={one.mixture.reachable || isReached}
        class="mix-patch"
      />
      <p class="small">
        {bench.parts
          .map(({ pigment, parts }) => `${partsWords(parts)} ${spokenOn(pigment, bench.shelf)}`)
          .join(', ')}
      </p>
      <ul class="mix-points">
        <li>{say.differs[farOf(bench.deltaE00)]}</li>
        <li>
          {mixSay.pigments(pigments)}; {mixSay.covers[opacity]}.
        </li>
        <li>
          {weakest
            ? mixSay.lasting(
                spokenOn(weakest.pigment, on),
                lastingWords(weakest.class),
                weakest.ofAll,
              )
            : mixSay.lastingUnknown}
        </li>
        <li>
          {(alone ? mixSay.lampAlone : mixSay.lamp)[farOf(alone ? judgement.lampShift : drift)]}
        </li>
        {pigments > 1 && <li>{mixSay.slip[farOf(slip.deltaE00)](strongest)}</li>}
        {hazards.length > 0 && (
          <li>
            {sentence(
              joinWords(
                hazards.map(
                  ({ pigment, level }) => `${spokenOn(pigment, on)} (${mixSay.hazardWords[level]})`,
                ),
              ),
            )}
          </li>
        )}
        {unknown.length > 0 && (
          <li>{mixSay.unknownHazard(joinWords(unknown.map((one) => spokenOn(one, on))))}</li>
        )}
        {hazards.length + unknown.length === 0 && <li>{mixSay.noHazard}</li>}
        {films.map((pigment) => (
          <li key={pigment}>{mixSay.film(labelOn(pigment, on))}</li>
        ))}
      </ul>
      {(hazards.length > 0 || pairs.length > 0) && (
        <Disclosure heading={mixSay.cautionsHeading}>
          {() => (
            <ul class="mix-points">
              {hazards.map(({ pigment, sentence: what, caution }) => (
                <li key={pigment}>
                  <strong>{labelOn(pigment, on)}.</strong> {what} {caution}
                </li>
              ))}
              {pairs.map(({ pigments: two, why }) => (
                <li key={two.join()}>
                  <strong>{joinWords(two.map((pigment) => labelOn(pigment, on)))}.</strong>{' '}
                  {why.join(' ')}
                </li>
              ))}
              <li>{mixSay.sheets}</li>
            </ul>
          )}
        </Disclosure>
      )}
      <Disclosure heading={mixSay.figuresHeading}>
        {() => (
          <dl class="figures">
            <dt>{mixSay.figure.difference}</dt>
            <dd>{mixSay.ciede(bench.deltaE00)}</dd>
            <dt>{mixSay.figure.contrast}</dt>
            <dd>{figure(judgement.contrast, 2)}</dd>
            {!alone && (
              <>
                <dt>{mixSay.figure.lampDrift}</dt>
                <dd>{mixSay.ciede(drift)}</dd>
              </>
            )}
            <dt>{mixSay.figure.lampShift}</dt>
            <dd>{mixSay.ciede(judgement.lampShift)}</dd>
            <dt>{mixSay.figure.slip}</dt>
            <dd>
              {strongest}: {mixSay.ciede(slip.deltaE00)}
            </dd>
            {weakest && (
              <>
                <dt>{mixSay.figure.lasting}</dt>
                <dd>
                  {labelOn(weakest.pigment, on)}: {weakest.class}. {weakest.note}
                </dd>
              </>
            )}
          </dl>
        )}
      </Disclosure>
      {inUse ? (
        <p class="mix-in-use">{mixSay.inUse}</p>
      ) : (
        <button type="button" onClick={onUse}>
          {mixSay.useIt}
          <span class="unseen">: {name}</span>
        </button>
      )}
    </li>
  );
}

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
