import { useSignal } from '@preact/signals';
import { limitWords } from '../../../harmony/limit.ts';
import type { Mixed } from '../../../harmony/variant.ts';
import { benchOf } from '../../../mixture/bench.ts';
import { afterPaint } from '../../after.ts';
import { BesideWanted } from '../../drawn/BesideWanted.tsx';
import { shownOf } from '../../drawn/screen.ts';
import { shelf } from '../../studio.ts';
import { AMOUNT_WORDS, WAY_WORDS } from '../../words/frame.ts';
import { varySay } from '../../words/vary.ts';
import { LaidPiles } from '../LaidPiles.tsx';
import { chosen, studied, takeVariants } from '../state.ts';
import { tryWhole } from './varied.ts';

/**
 * Preview of a variant beside its origin, each with its piles, and the change in words.
 * @param name of the colour
 */
export function Trial({ made, name }: { made: Mixed; name: string }) {
  const { way, amount, origin, mixture, granted } = made;
  const on = shelf.value;
  const isTaken = useSignal(false);
  const words = varySay.variant(WAY_WORDS[way], AMOUNT_WORDS[amount]);
  const [before, after] = [benchOf(origin.mixture, on), benchOf(mixture, on)];
  return (
    <div class="trial">
      <h3>
        {name}, {words}
      </h3>
      <div class="vary-pair">
        <LaidPiles bench={before} mixed={varySay.asItIs} />
        {granted !== 'nothing' && <LaidPiles bench={after} mixed={WAY_WORDS[way]} />}
      </div>
      {granted !== 'nothing' && (
        <BesideWanted
          wanted={{ name: varySay.asItIs, hex: shownOf(before.lab) }}
          mixed={{ name: WAY_WORDS[way], hex: shownOf(after.lab) }}
          class="vary-patch"
        />
      )}
      <ChangeWords made={made} />
      <p class="mix-buttons">
        {granted !== 'nothing' && (
          <button
            type="button"
            class="main"
            disabled={isTaken.value}
            onClick={() => {
              isTaken.value = true;
              const at = chosen.value;
              afterPaint(() => takeVariants([{ at, made }]));
            }}
          >
            {varySay.take}
          </button>
        )}
        {studied.value.length > 1 && (
          <button type="button" onClick={() => void tryWhole({ way, amount })}>
            {varySay.askWhole}
          </button>
        )}
      </p>
    </div>
  );
}

/** Change of a variant in words: visible difference, mixture, and limits of the shelf. */
export function ChangeWords({ made }: { made: Mixed }) {
  const { granted, samePigments, pile, seen } = made;
  const limit = limitWords(made);
  if (granted === 'nothing' || seen === '') return <p>{limit || varySay.unchanged}</p>;
  return (
    <p>
      {varySay.eye(seen)} {varySay.inPile(pile)} {samePigments && varySay.same} {limit}
    </p>
  );
}
