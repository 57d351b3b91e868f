import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { CardReading } from '../../../book/schema/calibration.ts';
import type { Entry } from '../../../book/schema/record.ts';
import type { Point } from '../../../calibration/homography.ts';
import { book } from '../../state/studio.ts';
import { CardPlaces } from './CardPlaces.tsx';

/** The saved reading of a card, with its photograph. */
export function SavedReading({
  card: { body },
  reading,
}: {
  card: Entry<'card'>;
  reading: CardReading;
}) {
  const url = useSignal<string | null>(null);
  const file = reading.photo?.file;
  useEffect(() => {
    let made: string | null = null;
    let gone = false;
    if (file)
      void book
        .peek()
        ?.photograph(file)
        .then((found) => {
          if (!found.ok || gone) return;
          made = URL.createObjectURL(new Blob([found.value.bytes], { type: found.value.type }));
          url.value = made;
        });
    return () => {
      gone = true;
      if (made) URL.revokeObjectURL(made);
    };
  }, [file]);
  const labelOf = (number: number) =>
    body.plan.places.find((place) => place.number === number)?.label ?? '';
  return (
    <CardPlaces
      url={url.value}
      name={body.name}
      shown={{
        places: reading.places.map(({ number, lab }) => ({ number, lab, label: labelOf(number) })),
        outlines: reading.places.map(({ number, corners }) => ({
          words: `${number}`,
          corners: cornersOf(corners),
        })),
        unevenness: reading.unevenness,
        referenceResidual: reading.referenceResidual,
        remarks: reading.remarks,
      }}
    />
  );
}

const cornersOf = (flat: readonly number[]): Point[] =>
  [0, 2, 4, 6].map((at): Point => [flat[at]!, flat[at + 1]!]);
