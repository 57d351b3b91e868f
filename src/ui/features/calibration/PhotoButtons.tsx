import { PhotoButton } from '../../components/PhotoButton.tsx';
import { calibrationTexts } from '../../texts/calibration-texts.ts';

/** Two buttons for a photograph: the camera, or an existing picture. */
export const PhotoButtons = ({
  onTake,
  main = true,
}: {
  onTake: (file: File) => void;
  /** Whether they are the main action now. */
  main?: boolean;
}) => (
  <div class="swatch-actions">
    <PhotoButton label={calibrationTexts.take} onTake={onTake} main={main} capture />
    <PhotoButton label={calibrationTexts.choose} onTake={onTake} main={main} />
  </div>
);
