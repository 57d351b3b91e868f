import type { ComponentChildren } from 'preact';
import { studioCurveOf } from '../../../pigment/mixing-shelf.ts';
import { pasteCm3 } from '../../../pigment/paste-volume.ts';
import {
  type Figure,
  type Provenance,
  pigmentOf,
  standInsOf,
} from '../../../pigment/pigment-facts.ts';
import {
  DRYING_WORDS,
  HIDING_WORDS,
  lightfastnessClassWords,
  SHORT_PROVENANCE_WORDS,
  STRENGTH_WORDS,
  shelfTexts,
} from '../../texts/shelf-texts.ts';
import type { ShelfLine } from './shelf-search.ts';
import { isStocked, shownStock } from './stock-state.ts';

/** The data of a paint, each figure with its provenance. */
export function PaintFacts({ line }: { line: ShelfLine }) {
  const { entry, facts, own } = line;
  const cm3 = isStocked.value && entry.amount ? pasteCm3(shownStock.value, entry) : null;
  return (
    <>
      <section class="shelf-facts">
        <h3>{shelfTexts.figures}</h3>
        <dl>
          {facts?.opacity.word && (
            <Fact name={shelfTexts.hiding} known={facts.opacity.status}>
              {HIDING_WORDS[facts.opacity.word]}
            </Fact>
          )}
          {facts?.drying.word && (
            <Fact name={shelfTexts.drying} known={facts.drying.status}>
              {DRYING_WORDS[facts.drying.word]}
            </Fact>
          )}
          {facts && (
            <Fact name={shelfTexts.light} known={facts.lightfast.status}>
              {lightfastnessClassWords(facts.lightfast.class)}. {facts.lightfast.note}
            </Fact>
          )}
          {facts && (
            <Fact name={shelfTexts.strength} known={facts.strength.status}>
              {STRENGTH_WORDS[facts.strength.word]}
            </Fact>
          )}
          <Measured
            name={shelfTexts.density}
            mine={entry.density ?? own?.density ?? null}
            figure={facts?.density ?? null}
            words={shelfTexts.densityOf}
          />
          <Measured
            name={shelfTexts.oil}
            mine={entry.oil ?? own?.oil ?? null}
            figure={facts?.oil ?? null}
            words={shelfTexts.oilOf}
          />
          {cm3 !== null && entry.unit === 'g' && (
            <Fact name={shelfTexts.makes} known="calc">
              {shelfTexts.makesOf(cm3)}
            </Fact>
          )}
          {facts && (
            <Fact name={shelfTexts.mixing} known={facts.mixing.status}>
              {facts.mixing.note}
            </Fact>
          )}
          <Apart name={shelfTexts.apart} ids={facts?.avoid ?? []} />
          <Apart name={shelfTexts.withCare} ids={facts?.careWith ?? []} />
          {entry.note !== '' && <Fact name={shelfTexts.note}>{entry.note}</Fact>}
        </dl>
      </section>
      <Identity line={line} />
    </>
  );
}

function Identity({ line: { entry, facts, own } }: { line: ShelfLine }) {
  // The heading already gives the provenance of the paint's own curve.
  const isOwn = studioCurveOf(shownStock.value, entry) !== null;
  const handbook = isOwn ? '' : (facts?.curve ?? '');
  const also = facts?.synonyms ?? own?.synonyms ?? [];
  const standIns = standInsOf(entry.pigment).map(({ name }) => name);
  return (
    <details class="shelf-facts">
      <summary>{shelfTexts.identity}</summary>
      <dl>
        {also.length > 0 && <Fact name={shelfTexts.also}>{also.join(', ')}</Fact>}
        {facts && <Fact name={shelfTexts.chemistry}>{facts.chemistry}</Fact>}
        {facts?.colourIndex.name && (
          <Fact name={shelfTexts.colourIndex} known={facts.colourIndex.status}>
            {facts.colourIndex.name}, {facts.colourIndex.number}
          </Fact>
        )}
        {facts && <Fact name={shelfTexts.look}>{facts.hue}</Fact>}
        {facts && <Fact name={shelfTexts.use}>{facts.use}</Fact>}
        {facts && (
          <Fact name={shelfTexts.used}>{shelfTexts.usedFrom(facts.used.from, facts.used.to)}</Fact>
        )}
        {standIns.length > 0 && (
          <Fact name={shelfTexts.standIns} known={facts!.standIns.status}>
            {standIns.join(', ')}
          </Fact>
        )}
        {handbook && <Fact name={shelfTexts.curve}>{handbook}</Fact>}
      </dl>
    </details>
  );
}

/** The studio's own figure, otherwise the handbook's with range and source. */
function Measured({
  name,
  mine,
  figure,
  words,
}: {
  name: string;
  mine: number | null;
  figure: Figure | null;
  words: (value: number) => string;
}) {
  if (mine !== null)
    return (
      <Fact name={name} source={shelfTexts.ownFigure}>
        {words(mine)}
      </Fact>
    );
  if (figure === null) return <Fact name={name}>{shelfTexts.unknown}</Fact>;
  const { min, max, status, source } = figure;
  const range = min === max ? '' : `${shelfTexts.between(min, max)}; `;
  return (
    <Fact name={name} known={status} source={`${range}${source}`}>
      {words(figure.value)}
    </Fact>
  );
}

function Apart({ name, ids }: { name: string; ids: readonly string[] }) {
  if (ids.length === 0) return null;
  const here = new Set(shownStock.value.entries.map(({ pigment }) => pigment));
  const names = ids
    .toSorted((p, q) => Number(here.has(q)) - Number(here.has(p)))
    .map((id) => {
      const called = pigmentOf(id)?.name ?? id;
      return isStocked.value && here.has(id) ? shelfTexts.onShelf(called) : called;
    });
  return <Fact name={name}>{names.join(', ')}</Fact>;
}

function Fact({
  name,
  known,
  source,
  children,
}: {
  name: string;
  known?: Provenance;
  source?: string;
  children: ComponentChildren;
}) {
  const how = [known && SHORT_PROVENANCE_WORDS[known], source].filter(Boolean).join('; ');
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        {children}
        {how && <span class="shelf-known">{how}</span>}
      </dd>
    </div>
  );
}
