import './book.css';
import { useEffect } from 'preact/hooks';
import { hrefOf, route } from '../route.ts';
import { sayBook } from '../words/book.ts';
import { Bin } from './Bin.tsx';
import { Copies } from './Copies.tsx';
import { Entries } from './Entries.tsx';
import { wantCards } from './state.ts';

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
  useEffect(wantCards, []);
  return (
    <section class="page book">
      <div class="book-head">
        <h1 tabIndex={-1}>{sayBook.heading}</h1>
        <nav aria-label={sayBook.parts}>
          <ul class="parts">
            <li>
              <a href={hrefOf('book')} aria-current={part === null ? 'page' : undefined}>
                {sayBook.entries}
              </a>
            </li>
            {PARTS.map((one) => (
              <li key={one}>
                <a href={hrefOf('book', one)} aria-current={part === one ? 'page' : undefined}>
                  {sayBook[one]}
                </a>
              </li>
            ))}
          </ul>
        </nav>
      </div>
      {part === null && <Entries />}
      {part === 'bin' && <Bin />}
      {part === 'copies' && <Copies />}
    </section>
  );
}
