import { useEffect } from 'preact/hooks';
import { bringPhotograph, gathering } from '../gathering.ts';
import { InstallHint } from '../install/InstallHint.tsx';
import { expectPhoto, rehearsePhoto } from '../jobs.ts';
import { lazy } from '../lazy.tsx';
import { PhotoButton } from '../PhotoButton.tsx';
import { hrefOf } from '../route.ts';
import { say } from '../words/frame.ts';
import { calledBy } from './called.ts';

// A photograph can be taken before the list of earlier ones has loaded.
const RecentSpecimens = lazy(
  async () => (await import('./RecentSpecimens.tsx')).RecentSpecimens,
  null,
);

/** Walk: takes or chooses a photograph, and lists the recent specimens. */
export function WalkScreen() {
  useEffect(expectPhoto, []);
  return (
    <section class="page has-bar">
      <h1 tabIndex={-1}>{say.walkHeading}</h1>
      <p class="lead">{say.walkEmpty}</p>
      <p>
        <a class="way" href={hrefOf('book', 'guide')}>
          {say.guide}
        </a>
      </p>
      <div class="main-actions keep-bar walk-bar">
        <PhotoButton label={say.take} onOpen={rehearse} onTake={bring} main capture />
        <PhotoButton label={say.choose} onOpen={rehearse} onTake={bring} main />
      </div>
      <GatheringLine roomy />
      {/* The late offer ("asks") is below the cards, so that it moves nothing. */}
      <InstallHint way="by hand" />
      <RecentSpecimens />
      <InstallHint way="asks" />
    </section>
  );
}

const rehearse = (): void => void rehearsePhoto();
const bring = (file: File): void => void bringPhotograph(file, calledBy(file.name));

const STAGES = { keeping: say.keeping, gathering: say.gathering, looking: say.looking } as const;

/** Progress of the current photograph; `roomy` reserves the space while there is none. */
export function GatheringLine({ roomy = false }: { roomy?: boolean }) {
  const now = gathering.value;
  return (
    <div class={roomy ? 'work-line roomy' : 'work-line'} role="status">
      {now && (
        <>
          <p>{STAGES[now.stage]}</p>
          {now.stage === 'looking' ? (
            <progress aria-label={STAGES.looking} />
          ) : (
            <progress max={1} value={now.done} aria-label={say.gathering} />
          )}
          <button type="button" class="quiet" onClick={now.stop}>
            {say.stop}
          </button>
        </>
      )}
    </div>
  );
}
