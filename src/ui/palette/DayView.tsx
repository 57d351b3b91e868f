import { isDay } from '../../palette/calendar.ts';
import { joinWords } from '../../wording.ts';
import { today } from '../locale.ts';
import { go, hrefOf } from '../route.ts';
import { say } from '../words/frame.ts';
import { sayPalette } from '../words/palette.ts';
import { Begin } from './Begin.tsx';
import { Days } from './Days.tsx';
import { date, kept, palettes, passage } from './days.ts';
import { Faults } from './Faults.tsx';
import { Leftovers } from './Leftovers.tsx';
import { Planned } from './Planned.tsx';
import { isPlanning, plan } from './planning.ts';
import { rules, settle } from './rules.ts';
import { Settings } from './Settings.tsx';

/** The day: its palettes, amounts and warnings, and its actions. */
export function DayView() {
  if (kept.value === null)
    return (
      <section class="page">
        <h1 tabIndex={-1}>{sayPalette.heading}</h1>
        <p role="status">{say.bookOpening}</p>
      </section>
    );
  const planned = plan.value;
  const isEmpty = palettes.value.length === 0;
  return (
    <section class={isEmpty ? 'page pal-page' : 'page pal-page has-bar'}>
      <h1 tabIndex={-1}>{sayPalette.heading}</h1>
      <p class="lead">{isEmpty ? sayPalette.empty : sayPalette.lead}</p>
      <div class="pal-top">
        <label class="field">
          {sayPalette.day}
          <input
            type="date"
            value={date.value}
            onChange={(event) => {
              const typed = event.currentTarget.value;
              go('palette', isDay(typed) && typed !== today() ? typed : undefined);
            }}
          />
        </label>
        <label class="pal-switch">
          <input
            type="checkbox"
            checked={rules.value.pupils}
            onChange={(event) => void settle({ pupils: event.currentTarget.checked })}
          />
          <span>{sayPalette.pupils}</span>
        </label>
      </div>
      {rules.value.pupils && <p>{sayPalette.pupilsOn}</p>}
      <Leftovers />
      {isEmpty ? (
        <>
          <Begin />
          <Days />
        </>
      ) : (
        <>
          <h2>{sayPalette.passagesHeading}</h2>
          <Passages />
          <details>
            <summary>{sayPalette.addPassage}</summary>
            <Begin />
          </details>
        </>
      )}
      <Faults heading={sayPalette.faultsHeading} />
      <p role="status" class="pal-planning">
        {isPlanning.value && sayPalette.planning}
      </p>
      {planned && <Planned {...planned} />}
      <Settings />
    </section>
  );
}

/** The day's passages, each with a link. */
function Passages() {
  return (
    <ul class="pal-passages">
      {palettes.value.flatMap(({ id: on, body }) =>
        body.passages.map((id) => {
          const one = passage(id);
          if (!one) return null;
          return (
            <li key={`${on}${id}`}>
              <a href={hrefOf('palette', id)}>{one.body.name}</a>{' '}
              <span class="small">
                {palettes.value.length > 1 && `${body.name}; `}
                {joinWords(one.body.piles.map(({ name }) => name)) || sayPalette.noPiles}
              </span>
            </li>
          );
        }),
      )}
    </ul>
  );
}
