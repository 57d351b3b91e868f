import { PhotoButton } from '../PhotoButton.tsx';
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
