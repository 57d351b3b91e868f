import { useState } from 'preact/hooks';
import type { Entry } from '../../book/record.ts';
import { pilesOf } from '../../palette/drawing.ts';
import { cm3Words, listed } from '../../palette/figure.ts';
import { sheetPile } from '../../palette/heap.ts';
import type { Studio } from '../../palette/passage.ts';
import { whiteOf } from '../../palette/pile.ts';
import type { Day } from '../../palette/plan.ts';
import { placedAt, proposeSeats } from '../../palette/seat.ts';
import { standInWords } from '../../palette/swap.ts';
import { PaletteBoard } from '../drawn/PaletteBoard.tsx';
import { tell } from '../studio.ts';
import { say } from '../words.ts';
import { rules, save, settle } from './state.ts';
import { sayPalette } from './words.ts';

interface Chosen {
  readonly kind: 'pigment' | 'mixed';
  readonly key: string;
}

/** One palette as it is laid: touched, moved, restored. */
export function Laid({
  entry,
  at,
  day,
  studio,
}: {
  entry: Entry<'palette'>;
  at: number;
  day: Day;
  studio: Studio;
}) {
  const palette = day.palettes[at]!;
  const [chosen, setChosen] = useState<Chosen | null>(null);
  const piles = pilesOf(palette);
  const rowOf = (kind: Chosen['kind']) => (kind === 'pigment' ? piles.pigments : piles.mixed);
  const index = chosen ? rowOf(chosen.kind).findIndex(({ key }) => key === chosen.key) : -1;
  const white = whiteOf(studio, day.rules);

  const put = async (kind: Chosen['kind'], key: string, to: number) => {
    const row = rowOf(kind);
    const neighbour = row[to];
    if (!neighbour || neighbour.key === key || key === white || neighbour.key === white) return;
    if (kind === 'mixed') {
      const order = placedAt(
        row.map((one) => one.key),
        key,
        to,
      );
      await save(
        { kind: 'palette', id: entry.id, over: entry, body: { ...entry.body, order } },
        null,
      );
      return;
    }
    // The whole studio's order: who is absent today keeps the seat.
    const known = rules.value.seats.length > 0 ? rules.value.seats : proposeSeats(studio.shelf);
    const order = [...known, ...row.map((one) => one.key).filter((one) => !known.includes(one))];
    await settle({ seats: placedAt(order, key, order.indexOf(neighbour.key)) });
  };
  const move = (by: number) => {
    if (chosen && index >= 0) void put(chosen.kind, chosen.key, index + by);
  };
  const restore = async () => {
    const { order: _, ...body } = entry.body;
    const put = await save({ kind: 'palette', id: entry.id, over: entry, body }, null);
    if (rules.value.seats.length > 0) await settle({ seats: [] });
    if (put) tell(sayPalette.restored);
  };
  const drop = (event: PointerEvent) => {
    const from = (event.target as Element).closest('[data-seat]')?.getAttribute('data-seat');
    const under = document.elementFromPoint(event.clientX, event.clientY);
    const to = under?.closest('[data-seat]')?.getAttribute('data-seat');
    if (!from || !to || from === to || !under || !(event.currentTarget as Element).contains(under))
      return;
    const [kind, number] = from.split(' ');
    const [other, place] = to.split(' ');
    const key = rowOf(kind as Chosen['kind'])[Number(number)]?.key;
    if (kind === other && key !== undefined) void put(kind as Chosen['kind'], key, Number(place));
  };
  const key = (event: KeyboardEvent) => {
    const by = { ArrowLeft: -1, ArrowUp: -1, ArrowRight: 1, ArrowDown: 1 }[event.key];
    const seat = (event.target as Element).closest('[data-seat][aria-pressed="true"]');
    if (by === undefined || !seat || !chosen) return;
    event.preventDefault();
    const to = index + by;
    const board = event.currentTarget as HTMLElement;
    void put(chosen.kind, chosen.key, to).then(() =>
      setTimeout(() => board.querySelector<HTMLElement>('[aria-pressed="true"]')?.focus(), 300),
    );
  };
  const own = palette.mixed.map(({ key }) => key).join() !== '' && entry.body.order !== undefined;
  return (
    <div class="pal-laid">
      <div class="pal-board-column">
        {/* biome-ignore lint/a11y/noStaticElementInteractions: the piles inside are buttons; it only hears what they do */}
        <div class="pal-board" onPointerUp={drop} onKeyDown={key}>
          <PaletteBoard
            label={palette.name}
            pigments={piles.pigments}
            mixed={piles.mixed}
            order="as given"
            shape={day.rules.shape}
            hand={day.rules.hand}
            chosen={chosen && index >= 0 ? { kind: chosen.kind, index } : undefined}
            onChoose={(kind, to) => {
              const key = rowOf(kind)[to]?.key;
              setChosen(key === undefined || key === chosen?.key ? null : { kind, key });
            }}
          />
        </div>
        <p class="small">{sayPalette.touchPile}</p>
        {(own || rules.value.seats.length > 0) && (
          <p>
            <button type="button" class="quiet" onClick={() => void restore()}>
              {sayPalette.restore}
            </button>
          </p>
        )}
      </div>
      <div class="pal-chosen" role="status">
        {chosen && index >= 0 && (
          <>
            {chosen.kind === 'mixed' ? (
              <Mixed pile={chosen.key} day={day} at={at} studio={studio} />
            ) : (
              <Pigment pigment={chosen.key} day={day} at={at} />
            )}
            {chosen.key === white ? (
              <p class="small">{sayPalette.whiteFirst}</p>
            ) : (
              <p class="pal-actions">
                <button type="button" onClick={() => move(-1)}>
                  {sayPalette.earlier}
                </button>
                <button type="button" onClick={() => move(1)}>
                  {sayPalette.later}
                </button>
              </p>
            )}
            <p>
              <button type="button" class="quiet" onClick={() => setChosen(null)}>
                {say.close}
              </button>
            </p>
          </>
        )}
      </div>
    </div>
  );
}

function Mixed({ pile, day, at, studio }: { pile: string; day: Day; at: number; studio: Studio }) {
  const palette = day.palettes[at]!;
  const plan = palette.piles.find(({ key }) => key === pile);
  if (!plan) return null;
  const words = sheetPile(plan, day, palette, studio);
  return (
    <>
      <h3>{words.name}</h3>
      <p class="small">
        {plan.passage.name}: {words.laid}. {words.cm3} cm³
      </p>
      <ul class="pal-parts">
        {words.parts.map(({ label, parts, letDown, cm3 }) => (
          <li key={label}>
            <b>{parts}</b> {label}
            {letDown && ', let down'}
            {cm3 !== null && <span class="small"> {cm3} cm³</span>}
          </li>
        ))}
      </ul>
      {[...words.steps, ...(words.instead === null ? [] : [words.instead])].map((step) => (
        <p key={step}>{step}</p>
      ))}
      {plan.layerWarnings.map((warning) => (
        <p key={warning.rule}>{warning.words}</p>
      ))}
      {plan.clashes.map(({ pigments, why }) => (
        <p key={pigments.join()}>{why.join(' ')}</p>
      ))}
    </>
  );
}

function Pigment({ pigment, day, at }: { pigment: string; day: Day; at: number }) {
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
        {sayPalette.inSeat(cm3Words(plan.inSeat))}, {sayPalette.inAll(cm3Words(plan.supply.cm3))}
      </p>
      {used.length > 0 && <p>{listed(used.map(({ pile }) => `“${pile.name}”`))}</p>}
      {plan.supply.dryRefused && stands.length > 0 && <p>{listed(stands)}</p>}
    </>
  );
}
