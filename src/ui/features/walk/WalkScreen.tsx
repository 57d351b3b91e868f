import { useEffect } from 'preact/hooks';
import { InstallHint } from '../../app/InstallHint.tsx';
import { lazy } from '../../app/lazy-screen.tsx';
import { PhotoButton } from '../../components/PhotoButton.tsx';
import { gathering, importPhotograph } from '../../state/photograph-import.ts';
import { hrefOf } from '../../state/route.ts';
import { startPhotoWorker, warmUpPhotoWorker } from '../../state/worker-jobs.ts';
import { sharedTexts } from '../../texts/shared-texts.ts';
import { nameFromFile } from './name-from-file.ts';

// A photograph can be taken before the list of earlier ones has loaded.
const RecentSpecimens = lazy(
  async () => (await import('./RecentSpecimens.tsx')).RecentSpecimens,
  null,
);

/** Walk: takes or chooses a photograph, and lists the recent specimens. */
export function WalkScreen() {
  useEffect(startPhotoWorker, []);
  return (
    <section class="page has-bar">
      <h1 tabIndex={-1}>{sharedTexts.walkHeading}</h1>
      <p class="lead">{sharedTexts.walkEmpty}</p>
      <p>
        <a class="way" href={hrefOf('book', 'guide')}>
          {sharedTexts.guide}
        </a>
      </p>
      <div class="main-actions keep-bar walk-bar">
        <PhotoButton label={sharedTexts.take} onOpen={rehearse} onTake={bring} main capture />
        <PhotoButton label={sharedTexts.choose} onOpen={rehearse} onTake={bring} main />
      </div>
      <GatheringLine roomy />
      {/* The late offer ("asks") is below the cards, so that it moves nothing. */}
      <InstallHint way="by hand" />
      <RecentSpecimens />
      <InstallHint way="asks" />
    </section>
  );
}

const rehearse = (): void => void warmUpPhotoWorker();
const bring = (file: File): void => void importPhotograph(file, nameFromFile(file.name));

const STAGES = {
  keeping: sharedTexts.keeping,
  gathering: sharedTexts.gathering,
  looking: sharedTexts.looking,
} as const;

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
            <progress max={1} value={now.done} aria-label={sharedTexts.gathering} />
          )}
          <button type="button" class="quiet" onClick={now.stop}>
            {sharedTexts.stop}
          </button>
        </>
      )}
    </div>
  );
}
