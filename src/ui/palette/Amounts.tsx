import type { Studio } from '../../palette/passage.ts';
import type { Day } from '../../palette/plan.ts';
import { preparing } from '../../palette/prepare.ts';
import { said } from '../locale.ts';
import { sayPalette } from '../words/palette.ts';

/** Amounts to prepare for one palette, in the order of work. */
export function Amounts({ day, at, studio }: { day: Day; at: number; studio: Studio }) {
  const palette = day.palettes[at]!;
  const { prepare: groups, prepareNotes } = preparing(day, palette, studio);
  const [pigment, from, weigh, paste] = sayPalette.prepareHead;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: with large letters it scrolls sideways, by keyboard too
    <section class="pal-amounts" tabIndex={0} aria-label={`${sayPalette.amounts}: ${palette.name}`}>
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
    </section>
  );
}
