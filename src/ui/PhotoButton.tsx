import { useRef } from 'preact/hooks';
import { CameraIcon, PictureIcon } from './drawn/icons.tsx';

/** A real file input under a button's face: works by keyboard, and with a camera where there is one. */
export function PhotoButton({
  label,
  onOpen,
  onTake,
  main,
  capture = false,
}: {
  label: string;
  /** The browser opens its camera or its list of files: there is time until one is taken. */
  onOpen?: () => void;
  onTake: (file: File) => void;
  /** Whether it is what is to be done now. */
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
          // The same file must be able to be chosen again.
          if (input.current) input.current.value = '';
        }}
      />
    </label>
  );
}
