import type { EntrySummary } from '../../../book/schema/entry-summary.ts';
import { hrefOf } from '../../state/route.ts';
import { bookTexts } from '../../texts/book-texts.ts';
import { hrefTo } from '../calibration/calibration-routes.ts';
import { FormulaDraperyButton } from '../drapery/FormulaDraperyButton.tsx';
import { LayOutButton } from '../palette/LayOutButton.tsx';

/** Links to the places where an entry can be edited and used. */
export function EntryLinks({ card: { id, kind, name, date } }: { card: EntrySummary }) {
  switch (kind) {
    case 'specimen':
      return <Open href={hrefOf('harmony', id)} words={bookTexts.openInHarmony} />;
    case 'harmony':
      return (
        <>
          <Open href={hrefOf('harmony', id)} words={bookTexts.openInHarmony} />
          <LayOutButton id={id} />
        </>
      );
    case 'drapery':
      return (
        <>
          <Open href={hrefOf('drapery', id)} words={bookTexts.openInDrapery} />
          <LayOutButton id={id} />
        </>
      );
    case 'formula':
      return (
        <>
          <LayOutButton id={id} main />
          <FormulaDraperyButton id={id} name={name} />
        </>
      );
    case 'passage':
    case 'palette':
      return <Open href={hrefOf('palette', id)} words={bookTexts.openInPalette} />;
    case 'sheet':
      return (
        <Open href={hrefOf('palette', 'sheet', date.slice(0, 10))} words={bookTexts.openSheet} />
      );
    case 'card':
    case 'curves':
      return <Open href={hrefTo(kind, id)} words={bookTexts.openOnShelf} />;
    case 'pile':
      return <Open href={hrefTo()} words={bookTexts.openOnShelf} />;
    default:
      return null;
  }
}

const Open = ({ href, words }: { href: string; words: string }) => (
  <a class="button main" href={href}>
    {words}
  </a>
);
