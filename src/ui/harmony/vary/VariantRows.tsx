import './vary.css';
import { useSignal } from '@preact/signals';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import { AMOUNTS, type Amount, vary, type Way } from '../../../harmony/vary.ts';
import { FoldRow } from '../../drawn/FoldRow.tsx';
import { useNear } from '../../drawn/near.ts';
import { isWide } from '../../drawn/screen.ts';
import { Soon } from '../../Soon.tsx';
import { AMOUNT_WORDS, say, WAY_WORDS } from '../../words/frame.ts';
import { varySay } from '../../words/vary.ts';
import { drawn, moved } from '../drawn.ts';
import { chosen, ladders, type Studied, studied, targets } from '../state.ts';
import { hatched, marksOf, shifted } from './folds.ts';
import { Trial } from './Trial.tsx';
import {
  goOnVarying,
  idOf,
  isLookedAt,
  isStopped,
  stopVarying,
  varied,
  varying,
} from './varied.ts';
import { Whole } from './Whole.tsx';

/** One row per axis; the current colour is in the middle. */
const ROWS: readonly { readonly back: Way; readonly on: Way; readonly label: string }[] = [
  { back: 'cooler', on: 'warmer', label: varySay.rows.warmth },
  { back: 'deeper', on: 'lighter', label: varySay.rows.light },
  { back: 'duller', on: 'brighter', label: varySay.rows.chroma },
];

/** Variants of the selected colour along each axis, as folds in the colours of their mixtures. */
export function VariantRows() {
  const last = useSignal<{ readonly of: Studied; readonly id: string } | null>(null);
  const section = useRef<HTMLElement>(null);
  const isNear = useNear(section);
  useEffect(() => {
    isLookedAt.value = isNear;
    return () => {
      isLookedAt.value = false;
    };
  }, [isNear]);
  const colour = studied.value[chosen.value];
  if (!colour) return null;
  // A preview belongs to one colour in one state; after a change there is none.
  const tried = last.value?.of === colour ? last.value.id : null;
  const made = tried === null ? undefined : varied.value?.get(tried);
  return (
    <section ref={section} class="variants" aria-labelledby="variants-heading">
      <h2 id="variants-heading">{varySay.heading}</h2>
      <Work />
      <Soon>
        {ROWS.map((row) => (
          <Row
            key={row.label}
            {...row}
            chosen={tried}
            onChoose={(id) => {
              last.value = id === 'origin' ? null : { of: colour, id };
            }}
          />
        ))}
      </Soon>
      {/* Reserves its space until the signs are known. */}
      <p
        class="fold-signs small"
        aria-hidden="true"
        style={{ visibility: varied.value ? 'visible' : 'hidden' }}
      >
        {varySay.signsMean}
      </p>
      <div role="status">
        <Soon room={<div class="trial-room" />}>
          {made && <Trial made={made} name={colour.gathered.name} />}
        </Soon>
      </div>
      {tried !== null && !made && varying.progress.value !== null && <div class="trial-room" />}
      <Whole />
    </section>
  );
}

/** Progress of the variants' mixtures, with stop and resume. */
function Work() {
  const done = varying.progress.value;
  return (
    <div class="work-line roomy" role="status">
      {done !== null && (
        <>
          <p>{varySay.working}</p>
          <progress max={1} value={done} aria-label={varySay.working} />
          <button type="button" class="quiet" onClick={stopVarying}>
            {say.stop}
          </button>
        </>
      )}
      {done === null && isStopped.value && (
        <>
          <p>{varySay.stopped}</p>
          <button type="button" onClick={goOnVarying}>
            {varySay.goOn}
          </button>
        </>
      )}
    </div>
  );
}

function Row({
  back,
  on,
  label,
  chosen: tried,
  onChoose,
}: {
  back: Way;
  on: Way;
  label: string;
  chosen: string | null;
  onChoose: (id: string) => void;
}) {
  const row = useRef<HTMLDivElement>(null);
  const isNear = useNear(row);
  const known = varied.value;
  const ladder = ladders.value[chosen.value]!;
  const target = targets.value[chosen.value]!;
  const folds = useMemo(() => {
    const fold = (way: Way, amount: Amount) => {
      const id = idOf({ way, amount });
      const made = known?.get(id);
      // Expensive: computed only near the viewport.
      const wished = () => (isNear ? vary(target, way, amount).lab : target);
      const to = made ? shifted(target, made) : wished();
      return {
        id,
        name: varySay.variant(WAY_WORDS[way], AMOUNT_WORDS[amount]),
        ladder: hatched(drawn(moved(ladder, target, to)), made),
        reachable: made?.granted !== 'nothing',
        // Reserves the space of the sign, so that the row does not move.
        sign: '',
        ...marksOf(made),
      };
    };
    return [
      ...AMOUNTS.toReversed().map((amount) => fold(back, amount)),
      { id: 'origin', name: varySay.asItIs, ladder: drawn(ladder), reachable: true },
      ...AMOUNTS.map((amount) => fold(on, amount)),
    ];
  }, [isNear, known, ladder, target, back, on, isWide.value]);
  return (
    <div class="variant-row" ref={row}>
      <h3>{label}</h3>
      <FoldRow
        label={label}
        folds={folds}
        seed={3}
        chosen={tried !== null && folds.some(({ id }) => id === tried) ? tried : 'origin'}
        onChoose={onChoose}
      />
      <p class="row-ends small" aria-hidden="true">
        <span>{WAY_WORDS[back]}</span>
        <span>{varySay.asItIs}</span>
        <span>{WAY_WORDS[on]}</span>
      </p>
    </div>
  );
}
