import { useRef } from 'preact/hooks';
import { CameraIcon, PictureIcon } from '../drawn/icons.tsx';
import { saySwatches } from './words.ts';

/** Two ways to a photograph: the camera, or a picture that is there. */
export const PhotoButtons = ({ onTake }: { onTake: (file: File) => void }) => (
  <div class="swatch-actions">
    <PhotoButton label={saySwatches.take} onTake={onTake} capture />
    <PhotoButton label={saySwatches.choose} onTake={onTake} />
  </div>
);

function PhotoButton({
  label,
  onTake,
  capture = false,
}: {
  label: string;
  onTake: (file: File) => void;
  capture?: boolean;
}) {
  const input = useRef<HTMLInputElement>(null);
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
