import { Disclosure } from '../../components/Disclosure.tsx';
import { harmonyColours, targets } from '../../state/harmony/current-harmony.ts';
import { draperyTexts } from '../../texts/drapery-texts.ts';
import { ColourRelations } from '../drapery/ColourRelations.tsx';

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
