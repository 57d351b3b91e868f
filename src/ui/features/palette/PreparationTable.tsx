import type { Day } from '../../../palette/day-plan.ts';
import type { Studio } from '../../../palette/passage.ts';
import { preparing } from '../../../sheet/preparations.ts';
import { formatNumber } from '../../state/locale-format.ts';
import { paletteTexts } from '../../texts/palette-texts.ts';

/** Amounts to prepare for one palette, in the order of work. */
export function PreparationTable({ day, at, studio }: { day: Day; at: number; studio: Studio }) {
  const palette = day.palettes[at]!;
  const { prepare: groups, prepareNotes } = preparing(day, palette, studio, formatNumber);
  const [pigment, from, weigh, paste] = paletteTexts.prepareHead;
  return (
    <section
      class="pal-amounts"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: with large letters it scrolls sideways, by keyboard too
      tabIndex={0}
      aria-label={`${paletteTexts.amounts}: ${palette.name}`}
    >
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
                <td>{paletteTexts.withOil(row.weigh, row.oil)}</td>
                <td>{row.cm3 === null ? '' : `${formatNumber(row.cm3, 0, 2)} cm³`}</td>
              </tr>
            ))}
          </tbody>
        ))}
      </table>
      {prepareNotes.map((note) => (
        <p class="small" key={note}>
          {note}
        </p>
      ))}
    </section>
  );
}
