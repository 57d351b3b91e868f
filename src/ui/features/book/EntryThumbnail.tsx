import { useEffect, useState } from 'preact/hooks';
import type { EntrySummary } from '../../../book/schema/entry-summary.ts';
import { book } from '../../state/studio.ts';
import { dabs } from './thumbnail-strokes.ts';

/**
 * Object URL of an entry's thumbnail; null while loading and when there is none. Revoked on
 * unmount.
 */
export function useThumbnail(card: EntrySummary): string | null {
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    let made: string | null = null;
    let gone = false;
    if (card.picture === undefined && card.specimen === undefined) return;
    void book.value?.thumbnail(card).then((stored) => {
      if (gone || !stored.ok || stored.value === null) return;
      made = URL.createObjectURL(new Blob([stored.value.bytes], { type: stored.value.type }));
      setUrl(made);
    });
    return () => {
      gone = true;
      setUrl(null);
      if (made) URL.revokeObjectURL(made);
    };
  }, [card.id, card.picture, card.specimen]);
  return url;
}

/** An entry's colours as a row of paint dabs. */
export function Dabs({
  card,
  width,
  height,
}: {
  card: EntrySummary;
  width: number;
  height: number;
}) {
  return (
    <svg class="dabs" viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      {dabs(card.colours, height).map(({ x, r, hex }) => (
        <ellipse key={x} cx={x} cy={height / 2} rx={r} ry={r * 0.86} fill={hex} />
      ))}
    </svg>
  );
}
