import { importPhotograph } from '../../state/photograph-import.ts';
import { showError } from '../../state/studio.ts';
import { sharedTexts } from '../../texts/shared-texts.ts';
import { RecentEntries } from '../book/RecentEntries.tsx';
import { SampleOffer } from '../book/SampleBook.tsx';

/** Our own specimens, to try the app without a photograph. */
const SAMPLES = ['jay-feather', 'rowan-branch', 'lichened-wall'] as const;

/** The latest specimens of the book; while there are none, the samples. */
export function RecentSpecimens() {
  return (
    <RecentEntries kind="specimen" heading={sharedTexts.specimensHeading} empty={<Samples />} />
  );
}

function Samples() {
  const bring = async (file: string, name: string) => {
    const answer = await fetch(`/samples/${file}.jpg`);
    if (answer.ok) await importPhotograph(await answer.blob(), name);
    else showError(sharedTexts.sampleMissing);
  };
  return (
    <>
      <SampleOffer quiet />
      <h2>{sharedTexts.samplesHeading}</h2>
      <ul class="cards">
        {SAMPLES.map((file) => (
          <li key={file}>
            <button
              type="button"
              class="card"
              onClick={() => void bring(file, sharedTexts.sampleNames[file])}
            >
              <img src={`/samples/${file}.jpg`} alt="" width="320" height="240" loading="lazy" />
              <span>{sharedTexts.sampleNames[file]}</span>
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
