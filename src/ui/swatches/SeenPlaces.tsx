import { useSignal } from '@preact/signals';
import type { Lab } from '../../colour/lab.ts';
import { nameOf } from '../../colour/words.ts';
import { shownOf } from '../drawn/screen.ts';
import { said } from '../locale.ts';
import { Brushed } from '../shelf/Brushed.tsx';
import { saySwatches } from '../words/swatches.ts';
import { type Outline, Over } from './Over.tsx';

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
export function SeenPlaces({
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
            alt={saySwatches.photoOf(name)}
            onLoad={({ currentTarget: { naturalWidth, naturalHeight } }) => {
              size.value = [naturalWidth, naturalHeight];
            }}
          />
          <Over outlines={shown?.outlines ?? []} width={width} height={height} />
        </figure>
      )}
      {shown && (
        <section>
          <h2>{saySwatches.placesHeading}</h2>
          <p role="status">
            {[
              saySwatches.placesRead(shown.places.length),
              saySwatches.even(shown.unevenness),
              saySwatches.residual(shown.referenceResidual),
            ].join(', ')}
            .
          </p>
          <ul class="swatch-lines">
            {shown.places.map(({ number, label, lab }) => (
              <li key={number}>
                <Brushed
                  name={`${number}`}
                  width={96}
                  height={34}
                  strokes={[{ hex: shownOf(lab), words: nameOf(lab) }]}
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
              <li key={remark}>{said(remark)}</li>
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}
