import type { Allowances } from '../../palette/quantity.ts';
import { hrefOf } from '../route.ts';
import { sayPalette } from '../words/palette.ts';
import { NumberField, Select, TextField } from './Fields.tsx';
import { rules, settle } from './rules.ts';

const entriesOf = <K extends string>(words: Readonly<Record<K, string>>) =>
  Object.entries(words) as [K, string][];

/** Studio settings: the palette's shape, allowances, oil, and the people who work here. */
export function Settings() {
  const { shape, hand, allowances, edgeCm3, oil, people } = rules.value;
  const allow = (change: Partial<Allowances>) =>
    void settle({ allowances: { ...allowances, ...change } });
  return (
    <details class="pal-settings">
      <summary>{sayPalette.settings}</summary>
      <div class="pal-fields">
        <Select
          label={sayPalette.shape}
          value={shape}
          options={entriesOf(sayPalette.shapes)}
          onKeep={(value) => void settle({ shape: value })}
        />
        <Select
          label={sayPalette.hand}
          value={hand}
          options={entriesOf(sayPalette.hands)}
          onKeep={(value) => void settle({ hand: value })}
        />
        <TextField
          label={sayPalette.people}
          help={sayPalette.peopleHelp}
          value={people.join(', ')}
          onKeep={(text) =>
            void settle({
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
          label={sayPalette.studioTooth}
          sort="0 or more"
          most={500}
          value={allowances.tooth * 100}
          onKeep={(value) => allow({ tooth: value / 100 })}
        />
        <NumberField
          label={sayPalette.studioWaste}
          sort="0 or more"
          most={500}
          value={allowances.waste * 100}
          onKeep={(value) => allow({ waste: value / 100 })}
        />
        <NumberField
          label={sayPalette.studioHeap}
          sort="0 or more"
          most={100}
          value={allowances.heapCm3}
          onKeep={(value) => allow({ heapCm3: value })}
        />
        <NumberField
          label={sayPalette.studioEdge}
          sort="0 or more"
          most={100}
          value={edgeCm3}
          onKeep={(value) => void settle({ edgeCm3: value })}
        />
        <Select
          label={sayPalette.oil}
          value={oil}
          options={entriesOf(sayPalette.oils)}
          onKeep={(value) => void settle({ oil: value })}
        />
      </div>
      <p>
        <a class="button" href={hrefOf('palette', 'seats')}>
          {sayPalette.toSeats}
        </a>
      </p>
    </details>
  );
}
