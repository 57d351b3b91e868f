import { useSignal } from '@preact/signals';
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import { bookFaultWords } from '../../book/faults.ts';
import { WORKED } from '../../drapery/worked.ts';
import { cards, wantCards } from '../book/state.ts';
import { shownOf } from '../drawn/screen.ts';
import { Choice } from '../shelf/Choice.tsx';
import { book, complain } from '../studio.ts';
import { say } from '../words/drapery.ts';
import { openHarmony, workedColours } from './colours.ts';
import { Dab } from './Dab.tsx';
import { keptHarmony, type Source } from './kept.ts';
import { type Picking, part, picking } from './picking.ts';
import {
  addGarment,
  chosen,
  clothOf,
  type Offered,
  partOf,
  scheme,
  setWorn,
  withPart,
} from './state.ts';

const WORKED_SOURCE: Source = { name: say.sourceWorked, harmony: null, colours: workedColours };

/** Choice of a colour for a cloth: from the open harmony, a saved one, or the example cloths. */
export function PickColour() {
  useEffect(wantCards, []);
  const source = useSignal<Source | null>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const what = picking.value;
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
  const harmonies = (cards.value ?? []).filter(
    ({ kind, id }) => kind === 'harmony' && id !== open?.harmony,
  );
  const options: [string, string][] = [
    ...(open ? [['open', say.sourceOpen(open.name)] as [string, string]] : []),
    ...harmonies.map(({ id, name }): [string, string] => [id, name]),
    ['worked', say.sourceWorked],
  ];
  const current =
    shown === WORKED_SOURCE ? 'worked' : shown.harmony !== open?.harmony ? shown.harmony : 'open';
  return (
    <section class="drapery-pick" aria-labelledby="pick-heading">
      <h2 id="pick-heading" tabIndex={-1} ref={heading}>
        {say.pick[what.what]}
      </h2>
      <Choice
        label={say.source}
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
              <Dab hexes={(colour.ladder ?? [colour.lab]).map(shownOf)} />
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
            picking.value = null;
          }}
        >
          {say.leave}
        </button>
      </p>
    </section>
  );
}

async function read(id: string): Promise<Source | null> {
  const found = await book.value?.get('harmony', id);
  if (!found) return null;
  if (found.ok) return keptHarmony(id, found.value.body);
  complain(bookFaultWords(found.fault));
  return null;
}

function take(colour: Offered, source: Source, { what, part: whose }: Picking): void {
  const worn = scheme.value.garments[chosen.value];
  picking.value = null;
  if (what === 'garment') {
    const worked = source === WORKED_SOURCE && WORKED.find(({ wish }) => wish.name === colour.name);
    const shares = scheme.value.garments.map(({ share }) => share);
    const share = Math.min(colour.share, ...shares) || colour.share;
    part.value = 'cloth';
    addGarment(
      { wish: worked ? worked.wish : clothOf(colour, 'linen'), share },
      scheme.value.harmony ?? source.harmony,
    );
    return;
  }
  if (!worn) return;
  if (what === 'shadows') {
    const cloth = partOf(worn.wish, whose);
    if (cloth) setWorn(chosen.value, withPart(worn, whose, { ...cloth, shadows: colour.lab }));
    return;
  }
  part.value = what;
  const before = partOf(worn.wish, what);
  const fresh = clothOf(colour, before?.stuff ?? (what === 'trim' ? 'satin' : 'linen'));
  // Keep the fold model if the new colour supports it.
  const way =
    before === undefined || (before.way === 'as nature had it' && !colour.ladder)
      ? fresh.way
      : before.way;
  const shadows = way === 'shot cloth' && before?.shadows ? { shadows: before.shadows } : {};
  setWorn(chosen.value, withPart(worn, what, { ...fresh, way, ...shadows }));
}
