import { useState } from 'preact/hooks';
import type { Day, PilePlan } from '../../../palette/day-plan.ts';
import { keepingWays, type StorageWay } from '../../../palette/leftovers.ts';
import { cm3Up } from '../../../palette/rounded-amounts.ts';
import { passageById, plannedDate } from '../../state/palette/day-entries.ts';
import { LEFTOVER_STORAGE_WORDS, paletteTexts } from '../../texts/palette-texts.ts';
import { recordCoat, saveLeftover } from './record-day-end.ts';
import { NumberField, StoredSelect } from './StoredFields.tsx';

/** The end of the day: what was laid, and what is left of each pile. */
export function DayEnd({ day }: { day: Day }) {
  return (
    <details class="pal-end">
      <summary>{paletteTexts.dayEnd}</summary>
      <p>{paletteTexts.dayEndLead}</p>
      {day.palettes.flatMap(({ piles }) =>
        piles.map((pile) => <PileEnd key={pile.key} pile={pile} />),
      )}
    </details>
  );
}

function PileEnd({ pile }: { pile: PilePlan }) {
  const ways = keepingWays(pile.pile.parts.flatMap((one) => [one]));
  const { name } = pile.pile;
  const [cm3, setCm3] = useState(cm3Up(pile.amount.prepare / 4));
  const [kept, setKept] = useState<StorageWay>(ways[0]!);
  const isLaid = passageById(pile.passage.id)?.body.coats.some(
    (coat) =>
      coat.date === plannedDate.value &&
      coat.film === pile.pile.film &&
      coat.pigments.every((pigment) => pile.amount.pigments.some((one) => one.pigment === pigment)),
  );
  return (
    <fieldset class="pal-pile">
      <legend>{name}</legend>
      <div class="pal-fields">
        <NumberField label={paletteTexts.left} value={cm3} onKeep={setCm3} />
        <StoredSelect
          label={paletteTexts.keptHow}
          value={kept}
          options={ways.map((way) => [way, LEFTOVER_STORAGE_WORDS[way]] as const)}
          onKeep={setKept}
        />
      </div>
      <p class="pal-actions">
        <button
          type="button"
          aria-label={paletteTexts.note(name)}
          onClick={() => void saveLeftover(pile, { cm3, kept })}
        >
          {paletteTexts.noteShort}
        </button>
        {isLaid ? (
          <span>{paletteTexts.laidAlready}</span>
        ) : (
          <button type="button" onClick={() => void recordCoat(pile)}>
            {paletteTexts.wasLaid(name)}
          </button>
        )}
      </p>
    </fieldset>
  );
}
