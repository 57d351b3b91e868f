import { AddIcon } from '../../components/drawn/icons.tsx';
import { hrefOf } from '../../state/route.ts';
import { shelfRemark } from '../../state/shelf-labels.ts';
import { shelf } from '../../state/studio.ts';
import { isStarter } from '../../state/studio-shelf.ts';
import { calibrationTexts } from '../../texts/calibration-texts.ts';
import { FAMILY_WORDS, shelfTexts } from '../../texts/shelf-texts.ts';
import { hrefTo } from '../calibration/calibration-routes.ts';
import { GlareSetting } from './GlareSetting.tsx';
import { PaintLine } from './PaintLine.tsx';
import type { Order, ShelfLine } from './shelf-search.ts';
import { isStocked, lines, order, shelfQuery, takeStarter } from './stock-state.ts';

/** The list of paints on the shelf, with a summary of what is mixed from it above. */
export function StockList() {
  return (
    <div class="shelf-board">
      <Standing />
      <div class="shelf-tools">
        <label class="search">
          {shelfTexts.search}
          <input
            type="search"
            value={shelfQuery}
            onInput={(event) => {
              shelfQuery.value = event.currentTarget.value;
            }}
          />
        </label>
        <Orders />
      </div>
      <List />
      <GlareSetting />
      <p class="small">{shelfTexts.listDefers}</p>
    </div>
  );
}

function Standing() {
  const { paints, remarks } = shelf.value;
  const starter = isStarter(shelf.value);
  return (
    <div class="shelf-standing">
      {!isStocked.value ? (
        <p class="lead">{shelfTexts.usesStarter}</p>
      ) : (
        <p class="lead">{starter ? shelfTexts.usesStarterFor : shelfTexts.uses(paints.length)}</p>
      )}
      {isStocked.value && remarks.length > 0 && (
        <ul class="remarks">
          {remarks.map(shelfRemark).map((remark) => (
            <li key={remark}>{remark}</li>
          ))}
        </ul>
      )}
      <p class="main-actions">
        <a class="button main" href={hrefOf('book', 'shelf', 'new')} data-entry="new">
          <AddIcon size={20} />
          {shelfTexts.add}
        </a>
        {!isStocked.value && (
          <button type="button" onClick={() => void takeStarter()}>
            {shelfTexts.beginWithStarter}
          </button>
        )}
      </p>
      {!isStocked.value && <p class="small">{shelfTexts.beginAbout}</p>}
      <p>
        <a class="button shelf-quiet" href={hrefTo()}>
          {calibrationTexts.link}
        </a>
      </p>
    </div>
  );
}

const ORDERS: readonly (readonly [Order, string])[] = [
  ['light', shelfTexts.byLight],
  ['family', shelfTexts.byFamily],
  ['name', shelfTexts.byName],
];

function Orders() {
  return (
    <fieldset>
      <legend class="unseen">{shelfTexts.order}</legend>
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
        {shelfTexts.nothingFound}
      </p>
    );
  const heading = isStocked.value ? shelfTexts.list : shelfTexts.starterList;
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

function Lines({ lines: some }: { lines: readonly ShelfLine[] }) {
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
