import './book.css';
import { useEffect } from 'preact/hooks';
import { hrefOf, route } from '../../state/route.ts';
import { bookTexts } from '../../texts/book-texts.ts';
import { Bin } from './Bin.tsx';
import { Copies } from './Copies.tsx';
import { EntryList } from './EntryList.tsx';
import { loadEntries } from './entry-list.ts';

const PARTS = ['bin', 'copies', 'shelf'] as const;
type Part = (typeof PARTS)[number];
/**
 * True when the route names a part of the book. Ids of entries are longer than these names, so they
 * never match.
 */
const isPart = (open: string | null): open is Part => (PARTS as readonly unknown[]).includes(open);

export function BookScreen() {
  const { open } = route.value;
  const part = isPart(open) ? open : null;
  useEffect(loadEntries, []);
  return (
    <section class="page book">
      <div class="book-head">
        <h1 tabIndex={-1}>{bookTexts.heading}</h1>
        <nav aria-label={bookTexts.parts}>
          <ul class="parts">
            <li>
              <a href={hrefOf('book')} aria-current={part === null ? 'page' : undefined}>
                {bookTexts.entries}
              </a>
            </li>
            {PARTS.map((one) => (
              <li key={one}>
                <a href={hrefOf('book', one)} aria-current={part === one ? 'page' : undefined}>
                  {bookTexts[one]}
                </a>
              </li>
            ))}
          </ul>
        </nav>
      </div>
      {part === null && <EntryList />}
      {part === 'bin' && <Bin />}
      {part === 'copies' && <Copies />}
    </section>
  );
}
