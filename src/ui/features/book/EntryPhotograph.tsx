import { useEffect, useState } from 'preact/hooks';
import type { EntrySummary } from '../../../book/schema/entry-summary.ts';
import { book } from '../../state/studio.ts';
import { sharedTexts } from '../../texts/shared-texts.ts';
import { nameOfCard } from './entry-names.ts';

/** The photograph of an entry, read from the book only while the entry is open. */
export function EntryPhotograph({ card }: { card: EntrySummary }) {
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    let made: string | null = null;
    let gone = false;
    void (async () => {
      const file = card.picture ?? (await pictureOf(card.specimen));
      const stored = file === undefined ? null : await book.value?.photograph(file);
      if (gone || !stored?.ok) return;
      made = URL.createObjectURL(new Blob([stored.value.bytes], { type: stored.value.type }));
      setUrl(made);
    })();
    return () => {
      gone = true;
      setUrl(null);
      if (made) URL.revokeObjectURL(made);
    };
  }, [card.picture, card.specimen]);
  if (card.picture === undefined && card.specimen === undefined) return null;
  return (
    <div class="entry-photograph">
      {url && <img src={url} alt={sharedTexts.photoOf(nameOfCard(card))} />}
    </div>
  );
}

async function pictureOf(specimen: string | undefined): Promise<string | undefined> {
  if (specimen === undefined) return;
  const found = await book.value?.get('specimen', specimen);
  return found?.ok ? found.value.body.photo.file : undefined;
}
