import { useEffect, useRef } from 'preact/hooks';
import { Cards } from '../book/Cards.tsx';
import { CameraIcon, PictureIcon } from '../drawn/icons.tsx';
import { bringPhotograph, gathering } from '../gathering.ts';
import { expectPhoto } from '../jobs.ts';
import { complain } from '../studio.ts';
import { say } from '../words.ts';

/** Our own specimens, for a first try with no photograph at hand. */
const SAMPLES = [
  { file: 'jay-feather', name: 'A jay’s feather' },
  { file: 'rowan-branch', name: 'A rowan branch' },
  { file: 'lichened-wall', name: 'A lichened wall' },
] as const;

export function WalkScreen() {
  useEffect(expectPhoto, []);
  return (
    <section class="page">
      <h1 tabIndex={-1}>{say.walkHeading}</h1>
      <p class="lead">{say.walkEmpty}</p>
      <div class="main-actions">
        <PhotoButton label={say.take} capture />
        <PhotoButton label={say.choose} />
      </div>
      <GatheringLine />
      <h2>{say.specimensHeading}</h2>
      <Cards kind="specimen" empty={<Samples />} />
    </section>
  );
}

/** A real file input under a button's face: works by keyboard, and with a camera where there is one. */
function PhotoButton({ label, capture = false }: { label: string; capture?: boolean }) {
  const input = useRef<HTMLInputElement>(null);
  const onChange = () => {
    const file = input.current?.files?.[0];
    // The same file must be able to be chosen again.
    if (file) void bringPhotograph(file, nameOf(file)).finally(clear);
  };
  const clear = () => {
    if (input.current) input.current.value = '';
  };
  return (
    <label class="button main">
      {capture ? <CameraIcon /> : <PictureIcon />}
      {label}
      <input
        ref={input}
        class="unseen"
        type="file"
        accept="image/*"
        {...(capture ? { capture: 'environment' } : {})}
        onChange={onChange}
      />
    </label>
  );
}

/** A camera's file names say nothing; a name that a person gave is kept. */
const nameOf = (file: File): string => {
  const stem = file.name.replace(/\.[^.]*$/, '');
  return /^(img|dsc|dscn|pxl|image|photo|mvimg|p)?[-_ ]?\d[\d_ -]*/i.test(stem) ? '' : spaced(stem);
};
const spaced = (stem: string): string => stem.replaceAll(/[-_]+/g, ' ').slice(0, 200);

const STAGES = { keeping: say.keeping, gathering: say.gathering, looking: say.looking } as const;

export function GatheringLine() {
  const now = gathering.value;
  return (
    <div class="work-line" role="status">
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

function Samples() {
  const bring = async (file: string, name: string) => {
    const answer = await fetch(`/samples/${file}.jpg`);
    if (answer.ok) await bringPhotograph(await answer.blob(), name);
    else complain(say.sampleMissing);
  };
  return (
    <>
      <p>{say.samplesHeading}</p>
      <ul class="cards">
        {SAMPLES.map(({ file, name }) => (
          <li key={file}>
            <button type="button" class="card" onClick={() => void bring(file, name)}>
              <img src={`/samples/${file}.jpg`} alt="" width="320" height="240" loading="lazy" />
              <span>{name}</span>
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
