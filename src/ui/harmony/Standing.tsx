import { ColourRelations } from '../drapery/RelationsWords.tsx';
import { draperyTexts } from '../words/drapery.ts';
import { Disclosure } from './mix/Disclosure.tsx';
import { harmonyColours, targets } from './state.ts';

/** Relations between the colours of the harmony, on request. */
export function HarmonyRelations() {
  const labs = targets.value;
  const colours = harmonyColours.value.map(({ gathered: { name, share, accent } }, i) => ({
    name,
    share,
    accent,
    lab: labs[i]!,
  }));
  if (colours.length < 2) return null;
  return (
    <Disclosure class="standing" heading={draperyTexts.relations}>
      {() => <ColourRelations colours={colours} />}
    </Disclosure>
  );
}
