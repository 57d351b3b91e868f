import {
  DEFAULT_PREFERENCES,
  type MixingPreferences,
} from '../../../mixture/mixing-preferences.ts';
import type { HazardLevel } from '../../../pigment/pigment-facts.ts';
import { joinWords } from '../../../wording.ts';
import { Disclosure } from '../../components/Disclosure.tsx';
import {
  changePreferences,
  contradiction,
  mixingPreferences,
  undoableDecision,
  undoDecision,
} from '../../state/harmony/mixing-decisions.ts';
import { sentenceLabelOf, shelfLabelOf } from '../../state/shelf-labels.ts';
import { shelf } from '../../state/studio.ts';
import { mixtureTexts } from '../../texts/mixture-texts.ts';

/** One phrase for each preference that differs from the default. */
function preferenceWords(asked: MixingPreferences, name: (pigment: string) => string): string[] {
  return [
    ...(asked.only ? [mixtureTexts.onlySaid(joinWords(asked.only.map(name)))] : []),
    ...(asked.noBlack ? [mixtureTexts.noBlack] : []),
    ...(asked.hazard ? [mixtureTexts.hazardSaid(mixtureTexts.hazards[asked.hazard])] : []),
    ...asked.leaveOut.map((pigment) => mixtureTexts.withoutSaid(name(pigment))),
    ...asked.mustHold.map((pigment) => mixtureTexts.withSaid(name(pigment))),
    ...(asked.most === DEFAULT_PREFERENCES.most ? [] : [mixtureTexts.mostSaid(asked.most)]),
    ...(asked.coarse ? [mixtureTexts.coarseSaid] : []),
    ...(asked.keep === 'nearest' ? [] : [mixtureTexts.keepSaid[asked.keep]]),
  ];
}

/** Current mixing preferences, a contradiction between them, and undo; empty if there are none. */
export function PreferencesSummary() {
  const on = shelf.value;
  const words = preferenceWords(mixingPreferences.value, (pigment) => sentenceLabelOf(pigment, on));
  const wrong = contradiction.value;
  const last = undoableDecision.value;
  if (words.length === 0 && last === null) return null;
  return (
    <div class="mix-asked" role="status">
      {words.length > 0 && (
        <p>
          <strong>{mixtureTexts.wishNow}</strong> {words.join('; ')}.
        </p>
      )}
      {wrong !== null && <p>{wrong}</p>}
      <p class="mix-buttons">
        {last !== null && (
          <button type="button" onClick={undoDecision}>
            {mixtureTexts.undo(last)}
          </button>
        )}
        {words.length > 0 && (
          <button
            type="button"
            class="quiet"
            onClick={() => changePreferences(DEFAULT_PREFERENCES, mixtureTexts.wishCleared)}
          >
            {mixtureTexts.wishClear}
          </button>
        )}
      </p>
    </div>
  );
}

type Hazard = Exclude<HazardLevel, 'low'>;
const HAZARDS: readonly Hazard[] = ['very_toxic', 'toxic', 'caution'];

/** Form for mixing preferences, by kind and by pigment. */
export function PreferencesForm() {
  return <Disclosure heading={mixtureTexts.wishHeading}>{() => <Wanted />}</Disclosure>;
}

function Wanted() {
  const { noBlack, hazard, most } = mixingPreferences.value;
  return (
    <div class="mix-inside">
      <p>{mixtureTexts.wishAbout}</p>
      <label class="check">
        <input
          type="checkbox"
          checked={noBlack}
          onChange={({ currentTarget }) =>
            changePreferences({ noBlack: currentTarget.checked }, mixtureTexts.noBlack)
          }
        />
        {mixtureTexts.noBlackLabel}
      </label>
      <label class="mix-field">
        {mixtureTexts.hazardLabel}
        <select
          onChange={({ currentTarget: { value } }) => {
            const level = HAZARDS.find((one) => one === value) ?? null;
            changePreferences(
              { hazard: level },
              mixtureTexts.hazardSaid(mixtureTexts.hazards[level ?? 'none']),
            );
          }}
        >
          {(['none', ...HAZARDS] as const).map((one) => (
            <option key={one} value={one} selected={one === (hazard ?? 'none')}>
              {mixtureTexts.hazards[one]}
            </option>
          ))}
        </select>
      </label>
      <label class="mix-field">
        {mixtureTexts.mostLabel}
        <select
          onChange={({ currentTarget: { value } }) =>
            changePreferences({ most: Number(value) }, mixtureTexts.mostSaid(Number(value)))
          }
        >
          {[1, 2, 3, 4, 5, 6].map((n) => (
            <option key={n} value={n} selected={n === most}>
              {n}
            </option>
          ))}
        </select>
      </label>
      <Disclosure heading={mixtureTexts.eachHeading}>{() => <Each />}</Disclosure>
    </div>
  );
}

type PigmentRule = 'may' | 'out' | 'must';
const PIGMENT_RULES: readonly PigmentRule[] = ['may', 'out', 'must'];

/** Each pigment of the shelf: allowed, excluded or required in every mixture. */
function Each() {
  const on = shelf.value;
  const { leaveOut, mustHold } = mixingPreferences.value;
  const placeOf = (pigment: string): PigmentRule =>
    leaveOut.includes(pigment) ? 'out' : mustHold.includes(pigment) ? 'must' : 'may';
  const put = (pigment: string, place: PigmentRule) => {
    const without = (all: readonly string[]) => all.filter((one) => one !== pigment);
    const name = sentenceLabelOf(pigment, on);
    changePreferences(
      {
        leaveOut: [...without(leaveOut), ...(place === 'out' ? [pigment] : [])],
        mustHold: [...without(mustHold), ...(place === 'must' ? [pigment] : [])],
      },
      { may: mixtureTexts.maySaid, out: mixtureTexts.withoutSaid, must: mixtureTexts.withSaid }[
        place
      ](name),
    );
  };
  return (
    <ul class="mix-each">
      {on.paints.map(({ pigment }) => (
        <li key={pigment}>
          <label class="mix-field">
            {shelfLabelOf(pigment, on)}
            <select
              onChange={({ currentTarget: { value } }) =>
                put(pigment, PIGMENT_RULES.find((one) => one === value) ?? 'may')
              }
            >
              {PIGMENT_RULES.map((place) => (
                <option key={place} value={place} selected={place === placeOf(pigment)}>
                  {mixtureTexts.each[place]}
                </option>
              ))}
            </select>
          </label>
        </li>
      ))}
    </ul>
  );
}
