import './mix.css';
import type { Lab } from '../../../colour/lab.ts';
import { benchOf } from '../../../mixture/bench.ts';
import type { Answer, Mixture } from '../../../mixture/mixture.ts';
import { shelf } from '../../studio.ts';
import { mixSay } from '../../words/mixing.ts';
import { Alternatives } from './Alternatives.tsx';
import { wish } from './decided.ts';
import { Limited } from './Limited.tsx';
import { Measures } from './Measures.tsx';
import { Mending } from './Mending.tsx';
import { Reach } from './Reach.tsx';
import { Wishes } from './Wishes.tsx';

/**
 * Amounts, alternatives, reach and correction of the selected colour's mixture.
 * @param inUse the mixture in use
 * @param shown the mixture on the screen, which may be the closest instead
 */
export function BenchMix({
  target,
  colour,
  answer,
  inUse,
  shown,
}: {
  target: Lab;
  colour: string;
  answer: Answer;
  inUse: Mixture;
  shown: Mixture;
}) {
  const bench = benchOf(shown, shelf.value);
  return (
    <div class="mix-more">
      <Measures bench={bench} />
      <Alternatives target={target} colour={colour} answer={answer} inUse={inUse} />
      {(!answer.reachable || wish.value.keep !== 'nearest') && <Reach target={target} />}
      <Mending target={target} bench={bench} />
    </div>
  );
}

/** Preferences and limited palette, which apply to all mixtures of the harmony. */
export function HarmonyMix() {
  return (
    <section class="bench mix-more" aria-labelledby="mix-heading">
      <h2 id="mix-heading">{mixSay.allHeading}</h2>
      <Wishes />
      <Limited />
    </section>
  );
}
