import { AddIcon } from '../drawn/icons.tsx';
import { hrefOf } from '../route.ts';
import { shelf } from '../studio.ts';
import { hrefTo } from '../swatches/routes.ts';
import { FAMILY_WORDS, sayShelf } from '../words/shelf.ts';
import { saySwatches } from '../words/swatches.ts';
import type { Line, Order } from './order.ts';
import { PaintLine } from './PaintLine.tsx';
import { SeenAs } from './SeenAs.tsx';
import { isStocked, lines, order, query, takeStarter } from './state.ts';
import { isStarter } from './stocked.ts';

/** The list of paints on the shelf, with a summary of what is mixed from it above. */
export function Board() {
  return (
    <div class="shelf-board">
      <Standing />
      <div class="shelf-tools">
        <label class="search">
          {sayShelf.search}
          <input
            type="search"
            value={query}
            onInput={(event) => {
              query.value = event.currentTarget.value;
            }}
          />
        </label>
        <Orders />
      </div>
      <List />
      <SeenAs />
      <p class="small">{sayShelf.listDefers}</p>
    </div>
  );
}

function Standing() {
  const { paints, remarks } = shelf.value;
  const starter = isStarter(shelf.value);
  return (
    <div class="shelf-standing">
      {!isStocked.value ? (
        <p class="lead">{sayShelf.usesStarter}</p>
      ) : (
        <p class="lead">{starter ? sayShelf.usesStarterFor : sayShelf.uses(paints.length)}</p>
      )}
      {isStocked.value && remarks.length > 0 && (
        <ul class="remarks">
          {remarks.map((remark) => (
            <li key={remark}>{remark}</li>
          ))}
        </ul>
      )}
      <p class="main-actions">
        <a class="button main" href={hrefOf('book', 'shelf', 'new')} data-entry="new">
          <AddIcon size={20} />
          {sayShelf.add}
        </a>
        {!isStocked.value && (
          <button type="button" onClick={() => void takeStarter()}>
            {sayShelf.beginWithStarter}
          </button>
        )}
      </p>
      {!isStocked.value && <p class="small">{sayShelf.beginAbout}</p>}
      <p>
        <a class="button shelf-quiet" href={hrefTo()}>
          {saySwatches.link}
        </a>
      </p>
    </div>
  );
}

const ORDERS: readonly (readonly [Order, string])[] = [
  ['light', sayShelf.byLight],
  ['family', sayShelf.byFamily],
  ['name', sayShelf.byName],
];

function Orders() {
  return (
    <fieldset>
      <legend class="unseen">{sayShelf.order}</legend>
      <div class="choice shelf-orders">
        {ORDERS.map(([name, words]) => (
          <label key={name}>
            <input
              type="radio"
              name="order"
              checked={order.value === name}
              onChange={() => {
                order.value = name;
              }}
            />
            <span>{words}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

function List() {
  const all = lines.value;
  if (all.length === 0)
    return (
      <p role="status" class="shelf-none">
        {sayShelf.nothingFound}
      </p>
    );
  const heading = isStocked.value ? sayShelf.list : sayShelf.starterList;
  if (order.value !== 'family')
    return (
      <>
        <h2 class={isStocked.value ? 'unseen' : undefined}>{heading}</h2>
        <Lines lines={all} />
      </>
    );
  const families = [...new Set(all.map(({ family }) => family))];
  return (
    <>
      <h2 class={isStocked.value ? 'unseen' : undefined}>{heading}</h2>
      {families.map((family) => (
        <section key={family} class="shelf-family">
          <h3>{FAMILY_WORDS[family]}</h3>
          <Lines lines={all.filter((line) => line.family === family)} />
        </section>
      ))}
    </>
  );
}

function Lines({ lines: some }: { lines: readonly Line[] }) {
  return (
    <ul class="shelf-lines">
      {some.map((line) => (
        <li key={line.entry.id}>
          <PaintLine line={line} />
        </li>
      ))}
    </ul>
  );
}
