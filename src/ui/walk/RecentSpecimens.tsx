import { Cards } from '../book/Cards.tsx';
import { SampleOffer } from '../book/SampleBook.tsx';
import { bringPhotograph } from '../gathering.ts';
import { complain } from '../studio.ts';
import { say } from '../words/frame.ts';

/** Our own specimens, to try the app without a photograph. */
const SAMPLES = ['jay-feather', 'rowan-branch', 'lichened-wall'] as const;

/** The latest specimens of the book; while there are none, the samples. */
export function RecentSpecimens() {
  return <Cards kind="specimen" heading={say.specimensHeading} empty={<Samples />} />;
}

function Samples() {
  const bring = async (file: string, name: string) => {
    const answer = await fetch(`/samples/${file}.jpg`);
    if (answer.ok) await bringPhotograph(await answer.blob(), name);
    else complain(say.sampleMissing);
  };
  return (
    <>
      <SampleOffer quiet />
      <h2>{say.samplesHeading}</h2>
      <ul class="cards">
        {SAMPLES.map((file) => (
          <li key={file}>
            <button
              type="button"
              class="card"
              onClick={() => void bring(file, say.sampleNames[file])}
            >
              <img src={`/samples/${file}.jpg`} alt="" width="320" height="240" loading="lazy" />
              <span>{say.sampleNames[file]}</span>
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
