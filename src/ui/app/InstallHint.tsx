import { signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { isSample } from '../../book/schema/sample-ids.ts';
import { entrySummaries } from '../features/book/entry-list.ts';
import { bookReady } from '../state/studio.ts';
import { sharedTexts } from '../texts/shared-texts.ts';
import { install, installWay } from './install-prompt.ts';

const LATER = 'install later';
/** Whether the painter postponed the offer; null until that is read. */
const isPutOff = signal<boolean | null>(null);

async function recall(): Promise<void> {
  const said = await (await bookReady)?.recall(LATER);
  isPutOff.value = said?.ok === true && said.value !== null;
}

/**
 * Offers to install Kingcup before the painter has saved anything. On some systems the installed
 * app has a separate book, and what was saved in the tab does not move to it.
 * @param way render only when this is the current way to install
 */
export function InstallHint({ way }: { way: NonNullable<typeof installWay.value> }) {
  useEffect(() => {
    if (isPutOff.value === null) void recall();
  }, []);
  const hasOwn =
    entrySummaries.value === null || entrySummaries.value.some(({ id }) => !isSample(id));
  if (way !== installWay.value || hasOwn || isPutOff.value !== false) return null;
  return (
    <aside class="install" aria-label={sharedTexts.installLabel}>
      <p>{way === 'asks' ? sharedTexts.installAsks : sharedTexts.installByHand}</p>
      <p class="main-actions">
        {way === 'asks' && (
          <button type="button" onClick={() => void install()}>
            {sharedTexts.install}
          </button>
        )}
        <button
          type="button"
          class="quiet"
          onClick={() => {
            isPutOff.value = true;
            void bookReady.then((book) => book?.remember(LATER, 'yes'));
          }}
        >
          {sharedTexts.later}
        </button>
      </p>
    </aside>
  );
}

/** The same offer beside the storage promise, for as long as installing is possible. */
export function InstallOffer() {
  const way = installWay.value;
  if (way === null) return null;
  return (
    <>
      <p>{way === 'asks' ? sharedTexts.installAsks : sharedTexts.installByHandLater}</p>
      {way === 'asks' && (
        <p class="main-actions">
          <button type="button" onClick={() => void install()}>
            {sharedTexts.install}
          </button>
        </p>
      )}
    </>
  );
}
