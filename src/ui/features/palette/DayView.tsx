import { isDay } from '../../../palette/iso-date.ts';
import { joinWords } from '../../../wording.ts';
import { today } from '../../state/locale-format.ts';
import {
  dayEntries,
  dayPalettes,
  passageById,
  plannedDate,
} from '../../state/palette/day-entries.ts';
import { dayPlan, isPlanning } from '../../state/palette/plan-job.ts';
import { studioRules, updateStudioRules } from '../../state/palette/studio-rules.ts';
import { go, hrefOf } from '../../state/route.ts';
import { paletteTexts } from '../../texts/palette-texts.ts';
import { sharedTexts } from '../../texts/shared-texts.ts';
import { DayPlanView } from './DayPlanView.tsx';
import { LeftoverList } from './LeftoverList.tsx';
import { NewPassage } from './NewPassage.tsx';
import { OtherDays } from './OtherDays.tsx';
import { PlanFaults } from './PlanFaults.tsx';
import { StudioSettings } from './StudioSettings.tsx';

/** The day: its palettes, amounts and warnings, and its actions. */
export function DayView() {
  if (dayEntries.value === null)
    return (
      <section class="page">
        <h1 tabIndex={-1}>{paletteTexts.heading}</h1>
        <p role="status">{sharedTexts.bookOpening}</p>
      </section>
    );
  const planned = dayPlan.value;
  const isEmpty = dayPalettes.value.length === 0;
  return (
    <section class={isEmpty ? 'page pal-page' : 'page pal-page has-bar'}>
      <h1 tabIndex={-1}>{paletteTexts.heading}</h1>
      <p class="lead">{isEmpty ? paletteTexts.empty : paletteTexts.lead}</p>
      <div class="pal-top">
        <label class="field">
          {paletteTexts.day}
          <input
            type="date"
            value={plannedDate.value}
            onChange={(event) => {
              const typed = event.currentTarget.value;
              go('palette', isDay(typed) && typed !== today() ? typed : undefined);
            }}
          />
        </label>
        <label class="pal-switch">
          <input
            type="checkbox"
            checked={studioRules.value.pupils}
            onChange={(event) => void updateStudioRules({ pupils: event.currentTarget.checked })}
          />
          <span>{paletteTexts.pupils}</span>
        </label>
      </div>
      {studioRules.value.pupils && <p>{paletteTexts.pupilsOn}</p>}
      <LeftoverList />
      {isEmpty ? (
        <>
          <NewPassage />
          <OtherDays />
        </>
      ) : (
        <>
          <h2>{paletteTexts.passagesHeading}</h2>
          <Passages />
          <details>
            <summary>{paletteTexts.addPassage}</summary>
            <NewPassage />
          </details>
        </>
      )}
      <PlanFaults heading={paletteTexts.faultsHeading} />
      <p role="status" class="pal-planning">
        {isPlanning.value && paletteTexts.planning}
      </p>
      {planned && <DayPlanView {...planned} />}
      <StudioSettings />
    </section>
  );
}

/** The day's passages, each with a link. */
function Passages() {
  return (
    <ul class="pal-passages">
      {dayPalettes.value.flatMap(({ id: on, body }) =>
        body.passages.map((id) => {
          const one = passageById(id);
          if (!one) return null;
          return (
            <li key={`${on}${id}`}>
              <a href={hrefOf('palette', id)}>{one.body.name}</a>{' '}
              <span class="small">
                {dayPalettes.value.length > 1 && `${body.name}; `}
                {joinWords(one.body.piles.map(({ name }) => name)) || paletteTexts.noPiles}
              </span>
            </li>
          );
        }),
      )}
    </ul>
  );
}
