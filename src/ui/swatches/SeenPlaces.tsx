import { useSignal } from '@preact/signals';
import { hexOf } from '../../colour/hex.ts';
import { nameOf } from '../../colour/words.ts';
import { said } from '../locale.ts';
import { Brushed } from '../shelf/Brushed.tsx';
import { Over } from './Over.tsx';
import { seen } from './reading.ts';
import { saySwatches } from './words.ts';

/** The photograph with the places that were found, and what each showed. */
export function SeenPlaces({ url, name }: { url: string; name: string }) {
  const size = useSignal<readonly [number, number]>([1, 1]);
  const now = seen.value;
  const [width, height] = size.value;
  const outlines = now
    ? [...now.places, ...now.references].map(({ place, corners }) => ({
        words: `${place.number}`,
        corners,
      }))
    : [];
  return (
    <div class="swatch-read">
      <figure class="swatch-surface swatch-still">
        <img
          src={url}
          alt={saySwatches.photoOf(name)}
          onLoad={({ currentTarget: { naturalWidth, naturalHeight } }) => {
            size.value = [naturalWidth, naturalHeight];
          }}
        />
        <Over outlines={outlines} width={width} height={height} />
      </figure>
      {now && (
        <section>
          <h2>{saySwatches.placesHeading}</h2>
          <p role="status">
            {[
              saySwatches.placesRead(now.places.length),
              saySwatches.even(now.unevenness),
              saySwatches.residual(now.referenceResidual),
            ].join(', ')}
            .
          </p>
          <ul class="swatch-lines">
            {now.places.map(({ place, lab }) => (
              <li key={place.number}>
                <Brushed
                  name={`${place.number}`}
                  width={96}
                  height={34}
                  strokes={[{ hex: hexOf(lab), words: nameOf(lab) }]}
                />
                <span>
                  <strong>
                    {place.number} {place.label}
                  </strong>
                  <br />
                  <span class="small">{nameOf(lab)}</span>
                </span>
              </li>
            ))}
          </ul>
          <ul class="remarks">
            {[...now.remarks, ...now.seen].map((remark) => (
              <li key={remark}>{said(remark)}</li>
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}
