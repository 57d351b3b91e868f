import { useState } from 'preact/hooks';
import { cm3Up } from '../../palette/figure.ts';
import { type Kept, keepingWays } from '../../palette/leftover.ts';
import type { Day, PilePlan } from '../../palette/plan.ts';
import { KEPT_WORDS, sayPalette } from '../words/palette.ts';
import { date, passage } from './days.ts';
import { laid, noteLeftover } from './ending.ts';
import { NumberField, Select } from './Fields.tsx';

/** The end of the day: what was laid, and what is left of each pile. */
export function DayEnd({ day }: { day: Day }) {
  return (
    <details class="pal-end">
      <summary>{sayPalette.dayEnd}</summary>
      <p>{sayPalette.dayEndLead}</p>
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
  const [kept, setKept] = useState<Kept>(ways[0]!);
  const isLaid = passage(pile.passage.id)?.body.coats.some(
    (coat) =>
      coat.date === date.value &&
      coat.film === pile.pile.film &&
      coat.pigments.every((pigment) => pile.amount.pigments.some((one) => one.pigment === pigment)),
  );
  return (
    <fieldset class="pal-pile">
      <legend>{name}</legend>
      <div class="pal-fields">
        <NumberField label={sayPalette.left} value={cm3} onKeep={setCm3} />
        <Select
          label={sayPalette.keptHow}
          value={kept}
          options={ways.map((way) => [way, KEPT_WORDS[way]] as const)}
          onKeep={setKept}
        />
      </div>
      <p class="pal-actions">
        <button
          type="button"
          aria-label={sayPalette.note(name)}
          onClick={() => void noteLeftover(pile, { cm3, kept })}
        >
          {sayPalette.noteShort}
        </button>
        {isLaid ? (
          <span>{sayPalette.laidAlready}</span>
        ) : (
          <button type="button" onClick={() => void laid(pile)}>
            {sayPalette.wasLaid(name)}
          </button>
        )}
      </p>
    </fieldset>
  );
}
