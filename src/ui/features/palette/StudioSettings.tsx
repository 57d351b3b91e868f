import type { Allowances } from '../../../palette/pile-quantity.ts';
import { studioRules, updateStudioRules } from '../../state/palette/studio-rules.ts';
import { hrefOf } from '../../state/route.ts';
import { paletteTexts } from '../../texts/palette-texts.ts';
import { NumberField, StoredSelect, TextField } from './StoredFields.tsx';

const entriesOf = <K extends string>(words: Readonly<Record<K, string>>) =>
  Object.entries(words) as [K, string][];

/** Studio settings: the palette's shape, allowances, oil, and the people who work here. */
export function StudioSettings() {
  const { shape, hand, allowances, edgeCm3, oil, people } = studioRules.value;
  const allow = (change: Partial<Allowances>) =>
    void updateStudioRules({ allowances: { ...allowances, ...change } });
  return (
    <details class="pal-settings">
      <summary>{paletteTexts.settings}</summary>
      <div class="pal-fields">
        <StoredSelect
          label={paletteTexts.shape}
          value={shape}
          options={entriesOf(paletteTexts.shapes)}
          onKeep={(value) => void updateStudioRules({ shape: value })}
        />
        <StoredSelect
          label={paletteTexts.hand}
          value={hand}
          options={entriesOf(paletteTexts.hands)}
          onKeep={(value) => void updateStudioRules({ hand: value })}
        />
        <TextField
          label={paletteTexts.people}
          help={paletteTexts.peopleHelp}
          value={people.join(', ')}
          onKeep={(text) =>
            void updateStudioRules({
              people: [
                ...new Set(
                  text
                    .split(',')
                    .map((name) => name.trim())
                    .filter(Boolean),
                ),
              ].slice(0, 12),
            })
          }
        />
        <NumberField
          label={paletteTexts.studioTooth}
          sort="0 or more"
          most={500}
          value={allowances.tooth * 100}
          onKeep={(value) => allow({ tooth: value / 100 })}
        />
        <NumberField
          label={paletteTexts.studioWaste}
          sort="0 or more"
          most={500}
          value={allowances.waste * 100}
          onKeep={(value) => allow({ waste: value / 100 })}
        />
        <NumberField
          label={paletteTexts.studioHeap}
          sort="0 or more"
          most={100}
          value={allowances.heapCm3}
          onKeep={(value) => allow({ heapCm3: value })}
        />
        <NumberField
          label={paletteTexts.studioEdge}
          sort="0 or more"
          most={100}
          value={edgeCm3}
          onKeep={(value) => void updateStudioRules({ edgeCm3: value })}
        />
        <StoredSelect
          label={paletteTexts.oil}
          value={oil}
          options={entriesOf(paletteTexts.oils)}
          onKeep={(value) => void updateStudioRules({ oil: value })}
        />
      </div>
      <p>
        <a class="button" href={hrefOf('palette', 'seats')}>
          {paletteTexts.toSeats}
        </a>
      </p>
    </details>
  );
}
