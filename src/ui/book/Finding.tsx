import { type Signal, useSignal } from '@preact/signals';
import type { Kind } from '../../book/record.ts';
import { SORTS, type Sort } from '../../book/search.ts';
import { nameOf } from '../../colour/words.ts';
import { KIND_WORDS, SORT_WORDS, sayBook } from '../words/book.ts';
import { ColourChoice } from './ColourChoice.tsx';
import { pigmentWords } from './names.ts';
import {
  clearSearch,
  colour,
  from,
  isNarrowed,
  kind,
  kindsThere,
  onlyVersions,
  pigments,
  pigmentsThere,
  sort,
  to,
  versions,
  words,
} from './state.ts';

/** The search form: words, and further criteria on demand. */
export function Finding() {
  const isOpen = useSignal(false);
  return (
    <search class="finding">
      <label class="search">
        {sayBook.search}
        <input
          type="search"
          placeholder={sayBook.searchHint}
          value={words}
          onInput={(event) => {
            words.value = event.currentTarget.value;
          }}
        />
      </label>
      <details
        class="narrow"
        onToggle={({ currentTarget }) => {
          isOpen.value = currentTarget.open;
        }}
      >
        <summary>{sayBook.narrow}</summary>
        {isOpen.value && <Fields />}
      </details>
      {isNarrowed.value && <Conditions />}
    </search>
  );
}

/** Mounted only when opened, because its options are computed from the whole book. */
function Fields() {
  const order = sort.value ?? (colour.value ? 'nearest' : 'newest');
  return (
    <div class="narrow-fields">
      <ColourChoice />
      <label>
        {sayBook.pigment}
        <select
          value=""
          onChange={({ currentTarget }) => {
            if (currentTarget.value) pigments.value = [...pigments.value, currentTarget.value];
            currentTarget.value = '';
          }}
        >
          <option value="">{sayBook.anyPigment}</option>
          {pigmentsThere.value
            .filter((pigment) => !pigments.value.includes(pigment))
            .map((pigment) => (
              <option key={pigment} value={pigment}>
                {pigmentWords(pigment)}
              </option>
            ))}
        </select>
      </label>
      <label>
        {sayBook.kind}
        <select
          value={kind.value ?? ''}
          onChange={({ currentTarget }) => {
            kind.value = currentTarget.value === '' ? null : (currentTarget.value as Kind);
          }}
        >
          <option value="">{sayBook.everyKind}</option>
          {kindsThere.value.map((one) => (
            <option key={one} value={one}>
              {KIND_WORDS[one]}
            </option>
          ))}
        </select>
      </label>
      <DayField label={sayBook.from} day={from} />
      <DayField label={sayBook.to} day={to} />
      <label>
        {sayBook.sort}
        <select
          value={order}
          onChange={({ currentTarget }) => {
            sort.value = currentTarget.value as Sort;
          }}
        >
          {SORTS.filter((one) => one !== 'nearest' || colour.value).map((one) => (
            <option key={one} value={one}>
              {SORT_WORDS[one]}
            </option>
          ))}
        </select>
      </label>
    </div>
  );
}

function DayField({ label, day }: { label: string; day: Signal<string> }) {
  return (
    <label>
      {label}
      <input
        type="date"
        value={day}
        onInput={(event) => {
          day.value = event.currentTarget.value;
        }}
      />
    </label>
  );
}

/** The active criteria, each with a button that removes it. */
function Conditions() {
  const all: (readonly [text: string, drop: () => void])[] = [];
  if (colour.value)
    all.push([
      sayBook.chosenColour(nameOf(colour.value)),
      () => {
        colour.value = null;
      },
    ]);
  for (const pigment of pigments.value)
    all.push([
      pigmentWords(pigment),
      () => {
        pigments.value = pigments.value.filter((one) => one !== pigment);
      },
    ]);
  if (kind.value)
    all.push([
      KIND_WORDS[kind.value],
      () => {
        kind.value = null;
      },
    ]);
  for (const [label, day] of [
    [sayBook.from, from],
    [sayBook.to, to],
  ] as const)
    if (day.value)
      all.push([
        `${label} ${day.value}`,
        () => {
          day.value = '';
        },
      ]);
  if (onlyVersions.value && versions.value.size > 0)
    all.push([
      sayBook.conflictHeading,
      () => {
        onlyVersions.value = false;
      },
    ]);
  return (
    <ul class="conditions">
      {all.map(([text, drop]) => (
        <li key={text}>
          <button type="button" class="condition" onClick={drop} aria-label={sayBook.without(text)}>
            {text} <span aria-hidden="true">×</span>
          </button>
        </li>
      ))}
      <li>
        <button type="button" class="quiet" onClick={clearSearch}>
          {sayBook.clear}
        </button>
      </li>
    </ul>
  );
}
