import { useRef } from 'preact/hooks';
import { CameraIcon, PictureIcon } from './drawn/icons.tsx';

/** A button over a real file input, so that it works by keyboard and can open a camera. */
export function PhotoButton({
  label,
  onOpen,
  onTake,
  main,
  capture = false,
}: {
  label: string;
  /**
   * Called when the browser opens its camera or file dialog: a moment to prepare for the
   * photograph.
   */
  onOpen?: () => void;
  onTake: (file: File) => void;
  /** Whether it is the main action now. */
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
        onClick={onOpen}
        onChange={() => {
          const file = input.current?.files?.[0];
          if (file) onTake(file);
          // Reset the input, so that the same file can be chosen again.
          if (input.current) input.current.value = '';
        }}
      />
    </label>
  );
}
