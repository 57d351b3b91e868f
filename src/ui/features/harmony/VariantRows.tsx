import './variants.css';
import { useSignal } from '@preact/signals';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import {
  AMOUNTS,
  type VariantAmount,
  type VariantWay,
  variantTarget,
} from '../../../harmony/variant-target.ts';
import { DeferredContent } from '../../components/DeferredContent.tsx';
import { FoldRow } from '../../components/drawn/FoldRow.tsx';
import { useNear } from '../../components/near-viewport.ts';
import { displayLadder, shiftLadder } from '../../state/display-ladder.ts';
import {
  type HarmonyColourState,
  harmonyColours,
  ladders,
  selectedIndex,
  targets,
} from '../../state/harmony/current-harmony.ts';
import {
  isInView,
  isVariantJobStopped,
  mixedVariants,
  resumeVariantJob,
  stopVariantJob,
  variantId,
  variantJob,
} from '../../state/harmony/variant-jobs.ts';
import { isWideGamut } from '../../state/screen-colour.ts';
import { sharedTexts, VARIANT_AMOUNT_WORDS, VARIANT_WAY_WORDS } from '../../texts/shared-texts.ts';
import { variantTexts } from '../../texts/variant-texts.ts';
import { HarmonyVariantPreview } from './HarmonyVariantPreview.tsx';
import { VariantPreview } from './VariantPreview.tsx';
import { foldMarks, hatchPartial, shiftWithMixture } from './variant-folds.ts';

/** One row per axis; the current colour is in the middle. */
const ROWS: readonly {
  readonly back: VariantWay;
  readonly on: VariantWay;
  readonly label: string;
}[] = [
  { back: 'cooler', on: 'warmer', label: variantTexts.rows.warmth },
  { back: 'deeper', on: 'lighter', label: variantTexts.rows.light },
  { back: 'duller', on: 'brighter', label: variantTexts.rows.chroma },
];

/** Variants of the selected colour along each axis, as folds in the colours of their mixtures. */
export function VariantRows() {
  const last = useSignal<{ readonly of: HarmonyColourState; readonly id: string } | null>(null);
  const section = useRef<HTMLElement>(null);
  const isNear = useNear(section);
  useEffect(() => {
    isInView.value = isNear;
    return () => {
      isInView.value = false;
    };
  }, [isNear]);
  const colour = harmonyColours.value[selectedIndex.value];
  if (!colour) return null;
  // A preview belongs to one colour in one state; after a change there is none.
  const tried = last.value?.of === colour ? last.value.id : null;
  const made = tried === null ? undefined : mixedVariants.value?.get(tried);
  return (
    <section ref={section} class="variants" aria-labelledby="variants-heading">
      <h2 id="variants-heading">{variantTexts.heading}</h2>
      <Work />
      <DeferredContent>
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
      </DeferredContent>
      {/* Reserves its space until the signs are known. */}
      <p
        class="fold-signs small"
        aria-hidden="true"
        style={{ visibility: mixedVariants.value ? 'visible' : 'hidden' }}
      >
        {variantTexts.signsMean}
      </p>
      <div role="status">
        <DeferredContent room={<div class="variant-room" />}>
          {made && <VariantPreview made={made} name={colour.gathered.name} />}
        </DeferredContent>
      </div>
      {tried !== null && !made && variantJob.progress.value !== null && (
        <div class="variant-room" />
      )}
      <HarmonyVariantPreview />
    </section>
  );
}

/** Progress of the variants' mixtures, with stop and resume. */
function Work() {
  const done = variantJob.progress.value;
  return (
    <div class="work-line roomy" role="status">
      {done !== null && (
        <>
          <p>{variantTexts.working}</p>
          <progress max={1} value={done} aria-label={variantTexts.working} />
          <button type="button" class="quiet" onClick={stopVariantJob}>
            {sharedTexts.stop}
          </button>
        </>
      )}
      {done === null && isVariantJobStopped.value && (
        <>
          <p>{variantTexts.stopped}</p>
          <button type="button" onClick={resumeVariantJob}>
            {variantTexts.goOn}
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
  back: VariantWay;
  on: VariantWay;
  label: string;
  chosen: string | null;
  onChoose: (id: string) => void;
}) {
  const row = useRef<HTMLDivElement>(null);
  const isNear = useNear(row);
  const known = mixedVariants.value;
  const ladder = ladders.value[selectedIndex.value]!;
  const target = targets.value[selectedIndex.value]!;
  const folds = useMemo(() => {
    const fold = (way: VariantWay, amount: VariantAmount) => {
      const id = variantId({ way, amount });
      const made = known?.get(id);
      // Expensive: computed only near the viewport.
      const wished = () => (isNear ? variantTarget(target, way, amount).lab : target);
      const to = made ? shiftWithMixture(target, made) : wished();
      return {
        id,
        name: variantTexts.variant(VARIANT_WAY_WORDS[way], VARIANT_AMOUNT_WORDS[amount]),
        ladder: hatchPartial(displayLadder(shiftLadder(ladder, target, to)), made),
        reachable: made?.granted !== 'nothing',
        // Reserves the space of the sign, so that the row does not move.
        sign: '',
        ...foldMarks(made),
      };
    };
    return [
      ...AMOUNTS.toReversed().map((amount) => fold(back, amount)),
      { id: 'origin', name: variantTexts.asItIs, ladder: displayLadder(ladder), reachable: true },
      ...AMOUNTS.map((amount) => fold(on, amount)),
    ];
  }, [isNear, known, ladder, target, back, on, isWideGamut.value]);
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
        <span>{VARIANT_WAY_WORDS[back]}</span>
        <span>{variantTexts.asItIs}</span>
        <span>{VARIANT_WAY_WORDS[on]}</span>
      </p>
    </div>
  );
}
