import { useRef } from 'preact/hooks';
import { CameraIcon, PictureIcon } from '../drawn/icons.tsx';
import { saySwatches } from '../words/swatches.ts';

/** Two ways to a photograph: the camera, or a picture that is there. */
export const PhotoButtons = ({
  onTake,
  main = true,
}: {
  onTake: (file: File) => void;
  /** Whether they are what is to be done now. */
  main?: boolean;
}) => (
  <div class="swatch-actions">
    <PhotoButton label={saySwatches.take} onTake={onTake} main={main} capture />
    <PhotoButton label={saySwatches.choose} onTake={onTake} main={main} />
  </div>
);

function PhotoButton({
  label,
  onTake,
  main,
  capture = false,
}: {
  label: string;
  onTake: (file: File) => void;
  main: boolean;
  capture?: boolean;
}) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <label class={main ? 'button main' : 'button'}>
      {capture ? <CameraIcon /> : <PictureIcon />}
      {label}
      <input
        ref={input}
        class="unseen"
        type="file"
        accept="image/*"
        {...(capture ? { capture: 'environment' } : {})}
        onChange={() => {
          const file = input.current?.files?.[0];
          if (file) onTake(file);
          // The same file must be able to be chosen again.
          if (input.current) input.current.value = '';
        }}
      />
    </label>
  );
}
