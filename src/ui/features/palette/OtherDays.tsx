import { STUDIO_PALETTE } from '../../../book/schema/palette.ts';
import { joinWords } from '../../../wording.ts';
import { dateWords } from '../../state/locale-format.ts';
import { dayEntries, plannedDate } from '../../state/palette/day-entries.ts';
import { hrefOf } from '../../state/route.ts';
import { paletteTexts } from '../../texts/palette-texts.ts';

const MOST_DAYS = 12;

/** Other days with palettes, latest first. */
export function OtherDays() {
  const named = new Map<string, string[]>();
  for (const { id, body } of dayEntries.value?.palettes ?? [])
    if (id !== STUDIO_PALETTE) named.set(body.date, [...(named.get(body.date) ?? []), body.name]);
  const days = [...named]
    .filter(([day]) => day !== plannedDate.value)
    .sort(([a], [b]) => (a < b ? 1 : -1));
  if (days.length === 0) return null;
  return (
    <>
      <h2>{paletteTexts.otherDays}</h2>
      <ul class="pal-passages">
        {days.slice(0, MOST_DAYS).map(([day, names]) => (
          <li key={day}>
            <a href={hrefOf('palette', day)}>{dateWords(day)}</a>{' '}
            <span class="small">{joinWords(names)}</span>
          </li>
        ))}
      </ul>
    </>
  );
}
