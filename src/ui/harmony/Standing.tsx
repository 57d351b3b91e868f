import { Relations } from '../drapery/RelationsWords.tsx';
import { say } from '../words/drapery.ts';
import { Disclosure } from './mix/Disclosure.tsx';
import { studied, targets } from './state.ts';

/** Relations between the colours of the harmony, on request. */
export function Standing() {
  const labs = targets.value;
  const colours = studied.value.map(({ gathered: { name, share, accent } }, i) => ({
    name,
    share,
    accent,
    lab: labs[i]!,
  }));
  if (colours.length < 2) return null;
  return (
    <Disclosure class="standing" heading={say.relations}>
      {() => <Relations colours={colours} />}
    </Disclosure>
  );
}
