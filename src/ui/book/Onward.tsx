import type { Card } from '../../book/card.ts';
import { FromFormula } from '../drapery/FromFormula.tsx';
import { LayOut } from '../palette/LayOut.tsx';
import { hrefOf } from '../route.ts';
import { hrefTo } from '../swatches/routes.ts';
import { sayBook } from '../words/book.ts';

/** Links to the places where an entry can be edited and used. */
export function Onward({ card: { id, kind, name, date } }: { card: Card }) {
  switch (kind) {
    case 'specimen':
      return <Open href={hrefOf('harmony', id)} words={sayBook.openInHarmony} />;
    case 'harmony':
      return (
        <>
          <Open href={hrefOf('harmony', id)} words={sayBook.openInHarmony} />
          <LayOut id={id} />
        </>
      );
    case 'drapery':
      return (
        <>
          <Open href={hrefOf('drapery', id)} words={sayBook.openInDrapery} />
          <LayOut id={id} />
        </>
      );
    case 'formula':
      return (
        <>
          <LayOut id={id} main />
          <FromFormula id={id} name={name} />
        </>
      );
    case 'passage':
    case 'palette':
      return <Open href={hrefOf('palette', id)} words={sayBook.openInPalette} />;
    case 'sheet':
      return (
        <Open href={hrefOf('palette', 'sheet', date.slice(0, 10))} words={sayBook.openSheet} />
      );
    case 'card':
    case 'curves':
      return <Open href={hrefTo(kind, id)} words={sayBook.openOnShelf} />;
    case 'pile':
      return <Open href={hrefTo()} words={sayBook.openOnShelf} />;
    default:
      return null;
  }
}

const Open = ({ href, words }: { href: string; words: string }) => (
  <a class="button main" href={href}>
    {words}
  </a>
);
