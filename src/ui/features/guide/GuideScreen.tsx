import './guide.css';
import { useLayoutEffect } from 'preact/hooks';
import { hrefOf, route } from '../../state/route.ts';
import { GUIDE, type GuidePart, guideTexts } from '../../texts/guide-texts.ts';
import { PLACE_NAMES } from '../../texts/shared-texts.ts';

/** The guide: how the parts work together, what the figures mean, and what to be careful of. */
export function GuideScreen() {
  const part = route.value.within[0];
  // Scroll to the part that the address names.
  useLayoutEffect(() => {
    const heading = part && document.getElementById(`guide-${part}`);
    if (!heading) return;
    heading.scrollIntoView();
    heading.focus({ preventScroll: true });
  }, [part]);
  return (
    <section class="page guide">
      <p>
        <a class="way" href={hrefOf('book')}>
          {PLACE_NAMES.book}
        </a>
      </p>
      <h1 tabIndex={-1}>{guideTexts.heading}</h1>
      <p class="lead">{guideTexts.lead}</p>
      <nav aria-label={guideTexts.contents}>
        <ul class="guide-contents">
          {GUIDE.map(({ id, heading }) => (
            <li key={id}>
              <a class="way" href={hrefOf('book', 'guide', id)}>
                {heading}
              </a>
            </li>
          ))}
        </ul>
      </nav>
      {GUIDE.map((one) => (
        <Part key={one.id} part={one} />
      ))}
      <p>
        <a class="way" href="./third-party.txt">
          {guideTexts.notices}
        </a>
      </p>
    </section>
  );
}

function Part({ part: { id, heading, items } }: { part: GuidePart }) {
  const List = id === 'steps' ? 'ol' : 'ul';
  return (
    <section aria-labelledby={`guide-${id}`}>
      <h2 id={`guide-${id}`} tabIndex={-1}>
        {heading}
      </h2>
      <List class="guide-items">
        {items.map(({ head, words, link }) => (
          <li key={head}>
            <h3>{head}</h3>
            <p>{words}</p>
            {link && (
              <p>
                <a class="way" href={hrefOf(...link.to)}>
                  {link.words}
                </a>
              </p>
            )}
          </li>
        ))}
      </List>
    </section>
  );
}
