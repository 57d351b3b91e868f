import { useSignal } from '@preact/signals';
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import { SHIPPED_FORMULAS } from '../../../drapery/shipped-formulas.ts';
import { bookFaultWords } from '../../../messages/book-faults.ts';
import { SelectField } from '../../components/SelectField.tsx';
import { type ColourSource, sourceFromHarmony } from '../../state/drapery/colour-sources.ts';
import {
  addGarment,
  type ColourOption,
  clothFromColour,
  clothOfPart,
  replaceGarment,
  scheme,
  selectedGarment,
  withPart,
} from '../../state/drapery/drapery-scheme.ts';
import { exampleColours, openHarmony } from '../../state/drapery/open-harmony.ts';
import {
  type ColourTarget,
  colourTarget,
  selectedPart,
} from '../../state/drapery/part-selection.ts';
import { cssColourOf } from '../../state/screen-colour.ts';
import { book, showError } from '../../state/studio.ts';
import { draperyTexts } from '../../texts/drapery-texts.ts';
import { entrySummaries, loadEntries } from '../book/entry-list.ts';
import { ColourStrokes } from './ColourStrokes.tsx';

const WORKED_SOURCE: ColourSource = {
  name: draperyTexts.sourceWorked,
  harmony: null,
  colours: exampleColours,
};

/** Choice of a colour for a cloth: from the open harmony, a saved one, or the example cloths. */
export function ClothColourChoice() {
  useEffect(loadEntries, []);
  const source = useSignal<ColourSource | null>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const what = colourTarget.value;
  useLayoutEffect(() => {
    if (what) heading.current?.focus();
  }, [what]);
  // Start with the harmony that the scheme came from.
  const own = scheme.value.harmony;
  useEffect(() => {
    if (own !== null && openHarmony.peek()?.harmony !== own)
      void read(own).then((found) => {
        if (found) source.value = found;
      });
  }, [own]);
  if (!what) return null;
  const open = openHarmony.value;
  const shown = source.value ?? open ?? WORKED_SOURCE;
  const harmonies = (entrySummaries.value ?? []).filter(
    ({ kind, id }) => kind === 'harmony' && id !== open?.harmony,
  );
  const options: [string, string][] = [
    ...(open ? [['open', draperyTexts.sourceOpen(open.name)] as [string, string]] : []),
    ...harmonies.map(({ id, name }): [string, string] => [id, name]),
    ['worked', draperyTexts.sourceWorked],
  ];
  const current =
    shown === WORKED_SOURCE ? 'worked' : shown.harmony !== open?.harmony ? shown.harmony : 'open';
  return (
    <section class="drapery-pick" aria-labelledby="pick-heading">
      <h2 id="pick-heading" tabIndex={-1} ref={heading}>
        {draperyTexts.pick[what.what]}
      </h2>
      <SelectField
        label={draperyTexts.source}
        options={options}
        chosen={current ?? 'open'}
        onChoose={(id) => {
          if (id === 'open') source.value = open;
          else if (id === 'worked') source.value = WORKED_SOURCE;
          else
            void read(id).then((found) => {
              if (found) source.value = found;
            });
        }}
      />
      <ul class="drapery-list">
        {shown.colours.map((colour) => (
          <li key={colour.name}>
            <button type="button" class="drapery-take" onClick={() => take(colour, shown, what)}>
              <ColourStrokes hexes={(colour.ladder ?? [colour.lab]).map(cssColourOf)} />
              <span>{colour.name}</span>
            </button>
          </li>
        ))}
      </ul>
      <p>
        <button
          type="button"
          class="quiet"
          onClick={() => {
            colourTarget.value = null;
          }}
        >
          {draperyTexts.leave}
        </button>
      </p>
    </section>
  );
}

async function read(id: string): Promise<ColourSource | null> {
  const found = await book.value?.get('harmony', id);
  if (!found) return null;
  if (found.ok) return sourceFromHarmony(id, found.value.body);
  showError(bookFaultWords(found.fault));
  return null;
}

function take(
  colour: ColourOption,
  source: ColourSource,
  { what, part: whose }: ColourTarget,
): void {
  const worn = scheme.value.garments[selectedGarment.value];
  colourTarget.value = null;
  if (what === 'garment') {
    const worked =
      source === WORKED_SOURCE && SHIPPED_FORMULAS.find(({ wish }) => wish.name === colour.name);
    const shares = scheme.value.garments.map(({ share }) => share);
    const share = Math.min(colour.share, ...shares) || colour.share;
    selectedPart.value = 'cloth';
    addGarment(
      { wish: worked ? worked.wish : clothFromColour(colour, 'linen'), share },
      scheme.value.harmony ?? source.harmony,
    );
    return;
  }
  if (!worn) return;
  if (what === 'shadows') {
    const cloth = clothOfPart(worn.wish, whose);
    if (cloth)
      replaceGarment(
        selectedGarment.value,
        withPart(worn, whose, { ...cloth, shadows: colour.lab }),
      );
    return;
  }
  selectedPart.value = what;
  const before = clothOfPart(worn.wish, what);
  const fresh = clothFromColour(colour, before?.stuff ?? (what === 'trim' ? 'satin' : 'linen'));
  // Keep the fold model if the new colour supports it.
  const way =
    before === undefined || (before.way === 'as nature had it' && !colour.ladder)
      ? fresh.way
      : before.way;
  const shadows = way === 'shot cloth' && before?.shadows ? { shadows: before.shadows } : {};
  replaceGarment(selectedGarment.value, withPart(worn, what, { ...fresh, way, ...shadows }));
}
