import { useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import { AMOUNTS, type Amount, type Variant, type Way } from '../../harmony/vary.ts';
import { FoldRow } from '../drawn/FoldRow.tsx';
import { AMOUNT_WORDS, say, WAY_WORDS } from '../words.ts';
import { answerOf } from './answers.ts';
import { BenchPiles } from './BenchPiles.tsx';
import { drawn, moved } from './drawn.ts';
import { chosen, ladders, studied, takeVariant, targets, variants } from './state.ts';

/** Each row runs from one pole through the colour as it is to the other. */
const ROWS: readonly { readonly back: Way; readonly on: Way; readonly label: string }[] = [
  { back: 'cooler', on: 'warmer', label: say.rowWarmth },
  { back: 'deeper', on: 'lighter', label: say.rowLight },
  { back: 'duller', on: 'brighter', label: say.rowChroma },
];

const idOf = (way: Way, amount: Amount) => `${way}-${amount}`;

/** One colour altered along one axis at a time, drawn as short folds of cloth. */
export function VariantRows() {
  const tried = useSignal<string | null>(null);
  const colour = studied.value[chosen.value];
  useEffect(() => {
    tried.value = null;
  }, [colour]);
  if (!colour) return null;
  const variant = variants.value.find(({ way, amount }) => idOf(way, amount) === tried.value);
  return (
    <section class="variants" aria-labelledby="variants-heading">
      <h2 id="variants-heading">{say.variantsHeading}</h2>
      {ROWS.map((row) => (
        <Row
          key={row.label}
          {...row}
          chosen={tried.value}
          onChoose={(id) => {
            tried.value = id === 'origin' ? null : id;
          }}
        />
      ))}
      <div role="status">{variant && <Trial variant={variant} name={colour.gathered.name} />}</div>
    </section>
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
  const all = variants.value;
  const ladder = ladders.value[chosen.value]!;
  const target = targets.value[chosen.value]!;
  const found = all.map(({ lab }) => answerOf(lab));
  const reach = found.map((answer) => answer?.reachable ?? true).join();
  const folds = useMemo(() => {
    const fold = (way: Way, amount: Amount) => {
      const { lab } = all.find((one) => one.way === way && one.amount === amount)!;
      const reachable = answerOf(lab)?.reachable ?? true;
      return {
        id: idOf(way, amount),
        name: say.variant(WAY_WORDS[way], AMOUNT_WORDS[amount]),
        ladder: drawn(moved(ladder, target, lab)),
        reachable,
      };
    };
    return [
      ...AMOUNTS.toReversed().map((amount) => fold(back, amount)),
      { id: 'origin', name: say.asItIs, ladder: drawn(ladder), reachable: true },
      ...AMOUNTS.map((amount) => fold(on, amount)),
    ];
  }, [all, ladder, target, reach, back, on]);
  return (
    <div class="variant-row">
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
        <span>{say.asItIs}</span>
        <span>{WAY_WORDS[on]}</span>
      </p>
    </div>
  );
}

/** A variant beside its origin, with its own mixture. */
function Trial({ variant, name }: { variant: Variant; name: string }) {
  const { way, amount, lab, stopped } = variant;
  const answer = answerOf(lab);
  return (
    <div class="trial">
      <h3>
        {name}, {say.variant(WAY_WORDS[way], AMOUNT_WORDS[amount])}
      </h3>
      {stopped && <p>{say.stoppedAt[stopped]}</p>}
      {answer ? (
        <BenchPiles answer={answer} mixture={answer.simplest} heading={say.simplest} />
      ) : (
        <p>{say.mixing}</p>
      )}
      <button type="button" class="main" onClick={() => takeVariant(way, amount)}>
        {say.takeVariant}
      </button>
    </div>
  );
}
