import { cm3Words } from '../../../messages/amounts.ts';
import { layerWarningWords } from '../../../messages/palette-messages.ts';
import type { Day } from '../../../palette/day-plan.ts';
import type { Studio } from '../../../palette/passage.ts';
import { standInWords } from '../../../palette/replacement.ts';
import { sheetPile } from '../../../sheet/sheet-pile.ts';
import { joinWords } from '../../../wording.ts';
import { formatNumber } from '../../state/locale-format.ts';
import { paletteTexts } from '../../texts/palette-texts.ts';

/** The selected mixed pile: its parts, its steps and its warnings. */
export function SelectedMixture({
  pile,
  day,
  at,
  studio,
}: {
  pile: string;
  day: Day;
  at: number;
  studio: Studio;
}) {
  const palette = day.palettes[at]!;
  const plan = palette.piles.find(({ key }) => key === pile);
  if (!plan) return null;
  const words = sheetPile(plan, day, palette, studio, formatNumber);
  return (
    <>
      <h3>{words.name}</h3>
      <p class="small">
        {plan.passage.name}: {words.laid}. {formatNumber(words.cm3, 0, 2)} cm³
      </p>
      <ul class="pal-parts">
        {words.parts.map(({ label, parts, letDown, cm3 }) => (
          <li key={label}>
            <b>{parts}</b> {label}
            {letDown && paletteTexts.letDown}
            {cm3 !== null && <span class="small"> {`${formatNumber(cm3, 0, 2)} cm³`}</span>}
          </li>
        ))}
      </ul>
      {[...words.steps, ...(words.instead === null ? [] : [words.instead])].map((step) => (
        <p key={step}>{step}</p>
      ))}
      {plan.layerWarnings.map((warning) => (
        <p key={warning.rule}>{layerWarningWords(warning, studio)}</p>
      ))}
      {plan.clashes.map(({ pigments, why }) => (
        <p key={pigments.join()}>{why.join(' ')}</p>
      ))}
    </>
  );
}

/** The selected pigment: its amount, and the piles that use it. */
export function SelectedPigment({ pigment, day, at }: { pigment: string; day: Day; at: number }) {
  const palette = day.palettes[at]!;
  const plan = palette.pigments.find(({ key }) => key === pigment);
  if (!plan) return null;
  const used = palette.mixed.filter(({ amount }) =>
    amount.pigments.some((one) => one.pigment === pigment),
  );
  const stands = standInWords(pigment);
  return (
    <>
      <h3>{plan.label}</h3>
      <p>
        {paletteTexts.inSeat(cm3Words(plan.inSeat, formatNumber))},{' '}
        {paletteTexts.inAll(cm3Words(plan.supply.cm3, formatNumber))}
      </p>
      {used.length > 0 && <p>{joinWords(used.map(({ pile }) => `“${pile.name}”`))}</p>}
      {plan.supply.dryRefused && stands.length > 0 && <p>{joinWords(stands)}</p>}
    </>
  );
}
