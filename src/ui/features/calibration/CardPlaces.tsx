import { useSignal } from '@preact/signals';
import { nameOf } from '../../../colour/describe-colour.ts';
import type { Lab } from '../../../colour/lab.ts';
import { BrushedPaint } from '../../components/BrushedPaint.tsx';
import { cssColourOf } from '../../state/screen-colour.ts';
import { calibrationTexts } from '../../texts/calibration-texts.ts';
import { type Outline, PhotoOutlines } from './PhotoOutlines.tsx';

/** The reading of a card's photograph, as displayed. */
export interface Shown {
  readonly places: readonly {
    readonly number: number;
    readonly label: string;
    readonly lab: Lab;
  }[];
  readonly outlines: readonly Outline[];
  /** Illumination of the brightest place divided by that of the darkest. */
  readonly unevenness: number;
  readonly referenceResidual: number;
  readonly remarks: readonly string[];
}

/** A photograph of a card with the outlines and colours of its places. */
export function CardPlaces({
  url,
  name,
  shown,
}: {
  /** Object URL; null when the photograph was not saved. */
  url: string | null;
  name: string;
  /** Null when nothing has been read from it. */
  shown: Shown | null;
}) {
  const size = useSignal<readonly [number, number]>([1, 1]);
  const [width, height] = size.value;
  return (
    <div class="swatch-read swatch-screen">
      {url !== null && (
        <figure class="swatch-surface">
          <img
            src={url}
            alt={calibrationTexts.photoOf(name)}
            onLoad={({ currentTarget: { naturalWidth, naturalHeight } }) => {
              size.value = [naturalWidth, naturalHeight];
            }}
          />
          <PhotoOutlines outlines={shown?.outlines ?? []} width={width} height={height} />
        </figure>
      )}
      {shown && (
        <section>
          <h2>{calibrationTexts.placesHeading}</h2>
          <p role="status">
            {[
              calibrationTexts.placesRead(shown.places.length),
              calibrationTexts.even(shown.unevenness),
              calibrationTexts.residual(shown.referenceResidual),
            ].join(', ')}
            .
          </p>
          <ul class="swatch-lines">
            {shown.places.map(({ number, label, lab }) => (
              <li key={number}>
                <BrushedPaint
                  name={`${number}`}
                  width={96}
                  height={34}
                  strokes={[{ hex: cssColourOf(lab), words: nameOf(lab) }]}
                />
                <span>
                  <strong>
                    {number} {label}
                  </strong>
                  <br />
                  <span class="small">{nameOf(lab)}</span>
                </span>
              </li>
            ))}
          </ul>
          <ul class="remarks">
            {shown.remarks.map((remark) => (
              <li key={remark}>{remark}</li>
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}
