import { STUDIO_PALETTE } from '../../book/palette.ts';
import { isDay } from '../../palette/calendar.ts';
import { cautionsOf, cautionWords } from '../../palette/caution.ts';
import { paletteFaultWords } from '../../palette/faults.ts';
import { listed, within } from '../../palette/figure.ts';
import { labelIn, type Studio } from '../../palette/passage.ts';
import type { Day } from '../../palette/plan.ts';
import { preparing } from '../../palette/prepare.ts';
import { lackWords, leftOffWords, mindOf, todayOf } from '../../palette/said.ts';
import { dateWords, figure, said } from '../locale.ts';
import { go, hrefOf } from '../route.ts';
import { say } from '../words.ts';
import { Acknowledge } from './Acknowledge.tsx';
import { newPassage, prepare, putOn, unprepare } from './acts.ts';
import { DayEnd } from './DayEnd.tsx';
import { Laid } from './Laid.tsx';
import { Leftovers } from './Leftovers.tsx';
import { Settings } from './Settings.tsx';
import { Sources } from './Sources.tsx';
import {
  date,
  faults,
  fewest,
  isCounted,
  isPlanning,
  kept,
  palettes,
  passage,
  plan,
  rules,
  seekFewest,
  seeking,
  settle,
  sheet,
  sheetHref,
  stopSeeking,
  today,
} from './state.ts';
import { sayPalette } from './words.ts';

/** The day: its palettes, amounts, warnings, and what is done with them. */
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
        <label class="pal-field">
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
      {faults.value.length > 0 && (
        <div class="pal-faults" role="alert">
          <h2>{sayPalette.faultsHeading}</h2>
          <ul>
            {faults.value.map((fault) => (
              <li key={paletteFaultWords(fault)}>{said(paletteFaultWords(fault))}</li>
            ))}
          </ul>
        </div>
      )}
      <p role="status" class="pal-planning">
        {isPlanning.value && sayPalette.planning}
      </p>
      {planned && planned.day.palettes.length === palettes.value.length && <Planned {...planned} />}
      <Settings />
    </section>
  );
}

function Begin() {
  const there = new Set(palettes.value.flatMap(({ body }) => body.passages));
  const older = (kept.value?.passages ?? []).filter(({ id }) => !there.has(id));
  return (
    <div class="pal-begin">
      <h2>{sayPalette.fromBook}</h2>
      <Sources onTake={(source) => void newPassage(source)} />
      {older.length > 0 && (
        <>
          <h2>{sayPalette.goOn}</h2>
          <ul class="pal-sources">
            {older.slice(0, 12).map(({ id, body }) => (
              <li key={id}>
                <button type="button" onClick={() => void putOn(id, palettes.value[0] ?? null)}>
                  {body.name}
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
      <p>
        <button type="button" onClick={() => void newPassage(null)}>
          {sayPalette.byHand}
        </button>
      </p>
    </div>
  );
}

/** Days for which something was laid out, the latest first. */
function Days() {
  const named = new Map<string, string[]>();
  for (const { id, body } of kept.value?.palettes ?? [])
    if (id !== STUDIO_PALETTE) named.set(body.date, [...(named.get(body.date) ?? []), body.name]);
  const days = [...named]
    .filter(([day]) => day !== date.value)
    .sort(([a], [b]) => (a < b ? 1 : -1));
  if (days.length === 0) return null;
  return (
    <>
      <h2>{sayPalette.otherDays}</h2>
      <ul class="pal-passages">
        {days.slice(0, MOST_DAYS).map(([day, names]) => (
          <li key={day}>
            <a href={hrefOf('palette', day)}>{dateWords(day)}</a>{' '}
            <span class="small">{listed(names)}</span>
          </li>
        ))}
      </ul>
    </>
  );
}
const MOST_DAYS = 12;

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
                {listed(one.body.piles.map(({ name }) => name)) || sayPalette.noPiles}
              </span>
            </li>
          );
        }),
      )}
    </ul>
  );
}

function Planned({ day, studio }: { day: Day; studio: Studio }) {
  return (
    <>
      {palettes.value.map((entry, at) => (
        <section key={entry.id} class="pal-palette" aria-label={entry.body.name}>
          <h2>{entry.body.name}</h2>
          <Laid entry={entry} at={at} day={day} studio={studio} />
        </section>
      ))}
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
        {sheet.value?.body.prepared ? (
          <button type="button" onClick={() => void unprepare()}>
            {sayPalette.undoPrepared}
          </button>
        ) : (
          <button type="button" disabled={isPlanning.value} onClick={() => void prepare()}>
            {sayPalette.prepare}
          </button>
        )}
      </p>
      {sheet.value?.body.prepared && <p role="status">{sayPalette.isPrepared}</p>}
      <h2>{sayPalette.amounts}</h2>
      {!isCounted.value && (
        <p>
          {sayPalette.uncounted} <a href={hrefOf('book', 'shelf')}>{sayPalette.toShelf}</a>
        </p>
      )}
      {day.palettes.map((_, at) => (
        <Amounts key={palettes.value[at]!.id} day={day} at={at} studio={studio} />
      ))}
      <Lines
        head={sayPalette.lacks}
        lines={day.palettes.flatMap((_, at) =>
          day.lacks
            .filter(({ piles }) => piles.some((one) => one.palette === at))
            .map((lack) => lackWords(lack, at, studio)),
        )}
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

function Amounts({ day, at, studio }: { day: Day; at: number; studio: Studio }) {
  const palette = day.palettes[at]!;
  const { prepare: groups, prepareNotes } = preparing(day, palette, studio);
  const [pigment, from, weigh, paste] = sayPalette.prepareHead;
  return (
    <div class="pal-amounts">
      <table>
        <caption>{palette.name}</caption>
        <thead>
          <tr>
            <th scope="col">{pigment}</th>
            <th scope="col">{from}</th>
            <th scope="col">{weigh}</th>
            <th scope="col">{paste}</th>
          </tr>
        </thead>
        {groups.map(({ tools, rows }) => (
          <tbody key={tools}>
            <tr>
              <th colSpan={4} scope="rowgroup">
                {tools}
              </th>
            </tr>
            {rows.map((row) => (
              <tr key={`${row.number}${row.lot}`}>
                <td>{row.label}</td>
                <td>{[row.act, row.lot].filter(Boolean).join(', ')}</td>
                <td>{said(sayPalette.withOil(row.weigh, row.oil))}</td>
                <td>{row.cm3 === null ? '' : said(`${row.cm3} cm³`)}</td>
              </tr>
            ))}
          </tbody>
        ))}
      </table>
      {prepareNotes.map((note) => (
        <p class="small" key={note}>
          {said(note)}
        </p>
      ))}
    </div>
  );
}

function Fewest({ studio }: { studio: Studio }) {
  const found = fewest.value;
  return (
    <>
      <h2>{sayPalette.fewestHeading}</h2>
      <p>{sayPalette.fewestLead}</p>
      {seeking.value !== null ? (
        <p class="pal-actions" role="status">
          <progress max={1} value={seeking.value} aria-label={sayPalette.fewestHeading} />
          <button type="button" class="quiet" onClick={stopSeeking}>
            {sayPalette.stop}
          </button>
        </p>
      ) : (
        found === null && (
          <p>
            <button type="button" onClick={() => void seekFewest()}>
              {sayPalette.seekFewest}
            </button>
          </p>
        )
      )}
      {found && (
        <>
          <ol class="pal-fewest">
            {found.curve.map(({ count, pigments, deltaE00, worst }) => (
              <li key={count}>
                <b>{sayPalette.withSo(count)}</b>:{' '}
                {listed(pigments.map((pigment) => within(labelIn(studio, pigment))))};{' '}
                {sayPalette.worst(
                  figure(worst, 1),
                  found.piles[deltaE00.indexOf(worst)]?.name ?? '',
                )}
                <details>
                  <summary>{sayPalette.piles}</summary>
                  <ul>
                    {deltaE00.map((difference, i) => (
                      <li key={found.piles[i]?.name}>
                        {found.piles[i]?.name}: {figure(difference, 1)}
                      </li>
                    ))}
                  </ul>
                </details>
              </li>
            ))}
          </ol>
          <p class="small">{sayPalette.differenceOf}</p>
        </>
      )}
    </>
  );
}
