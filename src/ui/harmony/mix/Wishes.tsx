import { NO_WISH, type Wish } from '../../../mixture/wish.ts';
import type { HazardLevel } from '../../../pigment/facts.ts';
import { joinWords } from '../../../wording.ts';
import { shelf } from '../../studio.ts';
import { mixSay } from '../../words/mixing.ts';
import { Disclosure } from './Disclosure.tsx';
import { changeWish, contradiction, lastSaid, undoSaid, wish } from './decided.ts';
import { labelOn, spokenOn } from './named.ts';

/** One phrase for each preference that differs from the default. */
function wishWords(asked: Wish, name: (pigment: string) => string): string[] {
  return [
    ...(asked.only ? [mixSay.onlySaid(joinWords(asked.only.map(name)))] : []),
    ...(asked.noBlack ? [mixSay.noBlack] : []),
    ...(asked.hazard ? [mixSay.hazardSaid(mixSay.hazards[asked.hazard])] : []),
    ...asked.leaveOut.map((pigment) => mixSay.withoutSaid(name(pigment))),
    ...asked.mustHold.map((pigment) => mixSay.withSaid(name(pigment))),
    ...(asked.most === NO_WISH.most ? [] : [mixSay.mostSaid(asked.most)]),
    ...(asked.coarse ? [mixSay.coarseSaid] : []),
    ...(asked.keep === 'nearest' ? [] : [mixSay.keepSaid[asked.keep]]),
  ];
}

/** Current mixing preferences, a contradiction between them, and undo; empty if there are none. */
export function Asked() {
  const on = shelf.value;
  const words = wishWords(wish.value, (pigment) => spokenOn(pigment, on));
  const wrong = contradiction.value;
  const last = lastSaid.value;
  if (words.length === 0 && last === null) return null;
  return (
    <div class="mix-asked" role="status">
      {words.length > 0 && (
        <p>
          <strong>{mixSay.wishNow}</strong> {words.join('; ')}.
        </p>
      )}
      {wrong !== null && <p>{wrong}</p>}
      <p class="mix-buttons">
        {last !== null && (
          <button type="button" onClick={undoSaid}>
            {mixSay.undo(last)}
          </button>
        )}
        {words.length > 0 && (
          <button
            type="button"
            class="quiet"
            onClick={() => changeWish(NO_WISH, mixSay.wishCleared)}
          >
            {mixSay.wishClear}
          </button>
        )}
      </p>
    </div>
  );
}

type Hazard = Exclude<HazardLevel, 'low'>;
const HAZARDS: readonly Hazard[] = ['very_toxic', 'toxic', 'caution'];

/** Form for mixing preferences, by kind and by pigment. */
export function Wishes() {
  return <Disclosure heading={mixSay.wishHeading}>{() => <Wanted />}</Disclosure>;
}

function Wanted() {
  const { noBlack, hazard, most } = wish.value;
  return (
    <div class="mix-inside">
      <p>{mixSay.wishAbout}</p>
      <label class="check">
        <input
          type="checkbox"
          checked={noBlack}
          onChange={({ currentTarget }) =>
            changeWish({ noBlack: currentTarget.checked }, mixSay.noBlack)
          }
        />
        {mixSay.noBlackLabel}
      </label>
      <label class="mix-field">
        {mixSay.hazardLabel}
        <select
          onChange={({ currentTarget: { value } }) => {
            const level = HAZARDS.find((one) => one === value) ?? null;
            changeWish({ hazard: level }, mixSay.hazardSaid(mixSay.hazards[level ?? 'none']));
          }}
        >
          {(['none', ...HAZARDS] as const).map((one) => (
            <option key={one} value={one} selected={one === (hazard ?? 'none')}>
              {mixSay.hazards[one]}
            </option>
          ))}
        </select>
      </label>
      <label class="mix-field">
        {mixSay.mostLabel}
        <select
          onChange={({ currentTarget: { value } }) =>
            changeWish({ most: Number(value) }, mixSay.mostSaid(Number(value)))
          }
        >
          {[1, 2, 3, 4, 5, 6].map((n) => (
            <option key={n} value={n} selected={n === most}>
              {n}
            </option>
          ))}
        </select>
      </label>
      <Disclosure heading={mixSay.eachHeading}>{() => <Each />}</Disclosure>
    </div>
  );
}

type Place = 'may' | 'out' | 'must';
const PLACES: readonly Place[] = ['may', 'out', 'must'];

/** Each pigment of the shelf: allowed, excluded or required in every mixture. */
function Each() {
  const on = shelf.value;
  const { leaveOut, mustHold } = wish.value;
  const placeOf = (pigment: string): Place =>
    leaveOut.includes(pigment) ? 'out' : mustHold.includes(pigment) ? 'must' : 'may';
  const put = (pigment: string, place: Place) => {
    const without = (all: readonly string[]) => all.filter((one) => one !== pigment);
    const name = spokenOn(pigment, on);
    changeWish(
      {
        leaveOut: [...without(leaveOut), ...(place === 'out' ? [pigment] : [])],
        mustHold: [...without(mustHold), ...(place === 'must' ? [pigment] : [])],
      },
      { may: mixSay.maySaid, out: mixSay.withoutSaid, must: mixSay.withSaid }[place](name),
    );
  };
  return (
    <ul class="mix-each">
      {on.paints.map(({ pigment }) => (
        <li key={pigment}>
          <label class="mix-field">
            {labelOn(pigment, on)}
            <select
              onChange={({ currentTarget: { value } }) =>
                put(pigment, PLACES.find((one) => one === value) ?? 'may')
              }
            >
              {PLACES.map((place) => (
                <option key={place} value={place} selected={place === placeOf(pigment)}>
                  {mixSay.each[place]}
                </option>
              ))}
            </select>
          </label>
        </li>
      ))}
    </ul>
  );
}
