import { cautionsOf, cautionWords } from '../../palette/caution.ts';
import type { Studio } from '../../palette/passage.ts';
import type { Day } from '../../palette/plan.ts';
import { boardsWords, lacksWords, leftOffWords, mindOf, todayOf } from '../../palette/said.ts';
import { said } from '../locale.ts';
import { hrefOf } from '../route.ts';
import { sayPalette } from '../words/palette.ts';
import { Acknowledge } from './Acknowledge.tsx';
import { Amounts } from './Amounts.tsx';
import { DayEnd } from './DayEnd.tsx';
import { palettes, sheet, sheetHref } from './days.ts';
import { Fewest } from './Fewest.tsx';
import { Laid } from './Laid.tsx';
import { Prepared } from './Prepared.tsx';
import { isCounted } from './planning.ts';

/** The planned day: palettes, amounts, warnings, safety, and the actions at its end. */
export function Planned({ day, studio }: { day: Day; studio: Studio }) {
  return (
    <>
      {boardsWords(day).map((words) => (
        <p key={words}>{said(words)}</p>
      ))}
      {day.palettes.map(({ asked, part, name }, at) => {
        const entry = palettes.value[asked];
        return (
          entry && (
            <section key={`${entry.id} ${part}`} class="pal-palette" aria-label={name}>
              <h2>{name}</h2>
              <Laid entry={entry} at={at} day={day} studio={studio} />
            </section>
          )
        );
      })}
      {day.leftOff.length > 0 && (
        <ul class="pal-lines">
          {day.leftOff.map((one) => (
            <li key={leftOffWords(one)}>{said(leftOffWords(one))}</li>
          ))}
        </ul>
      )}
      <p class="keep-bar">
        <a class="button main" href={sheetHref()}>
          {sayPalette.toSheet}
        </a>
      </p>
      <p class="pal-actions">
        <Prepared />
      </p>
      {sheet.value?.body.prepared && <p role="status">{sayPalette.isPrepared}</p>}
      <h2>{sayPalette.amounts}</h2>
      {!isCounted.value && (
        <p>
          {sayPalette.uncounted} <a href={hrefOf('book', 'shelf')}>{sayPalette.toShelf}</a>
        </p>
      )}
      {day.palettes.map(({ name }, at) => (
        <Amounts key={name} day={day} at={at} studio={studio} />
      ))}
      <Lines
        head={sayPalette.lacks}
        lines={[...new Set(day.palettes.flatMap((_, at) => lacksWords(day, at, studio)))]}
      />
      <Lines
        head={sayPalette.todayHeading}
        lines={day.palettes.flatMap((palette) => todayOf(day, palette))}
        none={sayPalette.nothingWaits}
      />
      <Lines
        head={sayPalette.mindHeading}
        lines={day.palettes.flatMap((palette) => mindOf(palette, studio))}
        none={sayPalette.nothingToMind}
      />
      <Lines
        head={sayPalette.safety}
        lines={[
          ...new Set(
            day.palettes.flatMap(({ pigments }) =>
              cautionsOf(pigments, studio.stock).map(cautionWords),
            ),
          ),
        ]}
      />
      <p class="small">{sayPalette.defer}</p>
      <Acknowledge day={day} studio={studio} />
      <Fewest studio={studio} />
      <DayEnd day={day} />
    </>
  );
}

function Lines({ head, lines, none }: { head: string; lines: readonly string[]; none?: string }) {
  if (lines.length === 0 && none === undefined) return null;
  return (
    <>
      <h2>{head}</h2>
      {lines.length === 0 ? (
        <p>{none}</p>
      ) : (
        <ul class="pal-lines">
          {lines.map((line) => (
            <li key={line}>{said(line)}</li>
          ))}
        </ul>
      )}
    </>
  );
}
