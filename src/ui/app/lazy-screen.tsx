import type { ComponentChildren, ComponentType } from 'preact';
import { useEffect, useLayoutEffect, useState } from 'preact/hooks';
import { sharedTexts } from '../texts/shared-texts.ts';

/**
 * A screen whose code is loaded at its first use, so that the first screen loads nothing else.
 * After the first visit all code is available offline.
 * @param waiting shown until the code is there; null for a part of a screen, which takes no focus
 */
export function lazy(
  load: () => Promise<ComponentType>,
  waiting: ComponentChildren = <Coming />,
): ComponentType {
  let known: ComponentType | null = null;
  return function Lazy() {
    const [Screen, setScreen] = useState<ComponentType | null>(() => known);
    const [failed, setFailed] = useState(false);
    useEffect(() => {
      if (Screen || failed) return;
      load().then(
        (screen) => {
          known = screen;
          setScreen(() => screen);
        },
        () => setFailed(true),
      );
    }, [Screen, failed]);
    // The place was announced before this heading existed, so focus it now.
    useLayoutEffect(() => {
      if (Screen && waiting !== null && document.activeElement === document.body)
        document.querySelector<HTMLElement>('main h1')?.focus();
    }, [Screen]);
    if (Screen) return <Screen />;
    if (!failed) return <>{waiting}</>;
    return (
      <section class="page">
        <p>{sharedTexts.notComing}</p>
        <p>
          <button type="button" onClick={() => setFailed(false)}>
            {sharedTexts.tryAgain}
          </button>
        </p>
      </section>
    );
  };
}

const Coming = () => (
  <p class="page" role="status">
    {sharedTexts.coming}
  </p>
);
