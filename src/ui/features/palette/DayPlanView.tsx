import {
  boardsWords,
  lacksWords,
  leftOffWords,
  passageStateWords,
  warningWords,
} from '../../../messages/palette-messages.ts';
import type { Day } from '../../../palette/day-plan.ts';
import type { Studio } from '../../../palette/passage.ts';
import { cautionsOf, cautionWords } from '../../../sheet/cautions.ts';
import { formatNumber } from '../../state/locale-format.ts';
import { dayPalettes, daySheet, sheetHref } from '../../state/palette/day-entries.ts';
import { isStockCounted } from '../../state/palette/plan-job.ts';
import { hrefOf } from '../../state/route.ts';
import { paletteTexts } from '../../texts/palette-texts.ts';
import { DataSheetReadings } from './DataSheetReadings.tsx';
import { DayEnd } from './DayEnd.tsx';
import { FewestPigments } from './FewestPigments.tsx';
import { PaletteEditor } from './PaletteEditor.tsx';
import { PreparationTable } from './PreparationTable.tsx';
import { PreparedButton } from './PreparedButton.tsx';

/** The planned day: palettes, amounts, warnings, safety, and the actions at its end. */
export function DayPlanView({ day, studio }: { day: Day; studio: Studio }) {
  return (
    <>
      {boardsWords(day).map((words) => (
        <p key={words}>{words}</p>
      ))}
      {day.palettes.map(({ asked, part, name }, at) => {
        const entry = dayPalettes.value[asked];
        return (
          entry && (
            <section key={`${entry.id} ${part}`} class="pal-palette" aria-label={name}>
              <h2>{name}</h2>
              <PaletteEditor entry={entry} at={at} day={day} studio={studio} />
            </section>
          )
        );
      })}
      {day.leftOff.length > 0 && (
        <ul class="pal-lines">
          {day.leftOff.map((one) => (
            <li key={leftOffWords(one)}>{leftOffWords(one)}</li>
          ))}
        </ul>
      )}
      <p class="keep-bar">
        <a class="button main" href={sheetHref()}>
          {paletteTexts.toSheet}
        </a>
      </p>
      <p class="pal-actions">
        <PreparedButton />
      </p>
      {daySheet.value?.body.prepared && <p role="status">{paletteTexts.isPrepared}</p>}
      <h2>{paletteTexts.amounts}</h2>
      {!isStockCounted.value && (
        <p>
          {paletteTexts.uncounted} <a href={hrefOf('book', 'shelf')}>{paletteTexts.toShelf}</a>
        </p>
      )}
      {day.palettes.map(({ name }, at) => (
        <PreparationTable key={name} day={day} at={at} studio={studio} />
      ))}
      <Lines
        head={paletteTexts.lacks}
        lines={[
          ...new Set(day.palettes.flatMap((_, at) => lacksWords(day, at, studio, formatNumber))),
        ]}
      />
      <Lines
        head={paletteTexts.todayHeading}
        lines={day.palettes.flatMap((palette) => passageStateWords(day, palette))}
        none={paletteTexts.nothingWaits}
      />
      <Lines
        head={paletteTexts.mindHeading}
        lines={day.palettes.flatMap((palette) => warningWords(palette, studio, formatNumber))}
        none={paletteTexts.nothingToMind}
      />
      <Lines
        head={paletteTexts.safety}
        lines={[
          ...new Set(
            day.palettes.flatMap(({ pigments }) =>
              cautionsOf(pigments, studio.stock).map(cautionWords),
            ),
          ),
        ]}
      />
      <p class="small">{paletteTexts.defer}</p>
      <DataSheetReadings day={day} studio={studio} />
      <FewestPigments studio={studio} />
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
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
    </>
  );
}
