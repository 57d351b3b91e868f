import type { DrawnLadder } from './drawn.ts';
import { Fold } from './Fold.tsx';
import { nearestWords } from './say.ts';

export interface RowFold {
  /** Different for each fold of the row. */
  readonly id: string;
  /** What this one is: "warmer, a little". Shown below it. */
  readonly name: string;
  readonly ladder: DrawnLadder;
  /** False: hatched and named so. Left out, it is true when every step is reachable. */
  readonly reachable?: boolean | undefined;
  /** A word of its own under it, where "out of reach" would say too much. */
  readonly mark?: string | undefined;
  /** The same as a single sign, for where there is no room for the word; what it means stands by the row. */
  readonly sign?: string | undefined;
}

export interface FoldRowProps {
  /** What the row is for, read before its folds. */
  readonly label: string;
  readonly folds: readonly RowFold[];
  /** One fall for all, so that only their colours differ. */
  readonly seed: number;
  /** Id of the chosen fold. */
  readonly chosen?: string | undefined;
  /** Without it the row is only looked at. */
  readonly onChoose?: ((id: string) => void) | undefined;
  /** Words for the marks; ours unless told. */
  readonly words?: { readonly chosen: string; readonly unreached: string } | undefined;
}

/**
 * A row of short folds: the chosen one is marked by a frame and a word, those out of reach by hatching and a
 * word. Always one row: where it is narrow the page may leave the words (`fold-name`, `fold-mark`) to the ear.
 */
export function FoldRow(props: FoldRowProps) {
  const words = props.words ?? { chosen: 'chosen', unreached: 'out of reach' };
  return (
    <ul
      aria-label={props.label}
      class="fold-row"
      style={{
        display: 'grid',
        gridTemplateColumns: `repeat(${props.folds.length}, minmax(44px, 1fr))`,
      }}
    >
      {props.folds.map((fold) => {
        const reachable = fold.reachable ?? fold.ladder.every((step) => step.reachable);
        // Said to be out of reach as a whole, it is hatched as a whole.
        const ladder =
          !reachable && fold.ladder.every((step) => step.reachable)
            ? fold.ladder.map((step) => ({ ...step, reachable: false }))
            : fold.ladder;
        const chosen = fold.id === props.chosen;
        const inner = (
          <>
            {/* The name and the marks stand below in words: read once is enough. */}
            <span aria-hidden="true">
              <Fold name={fold.name} ladder={ladder} seed={props.seed} />
            </span>
            <span class="fold-name" style={{ display: 'block', overflowWrap: 'anywhere' }}>
              {chosen ? <b>{fold.name}</b> : fold.name}
            </span>
            {fold.sign !== undefined && (
              <span class="fold-sign" aria-hidden="true">
                {fold.sign}
              </span>
            )}
            <small class="fold-mark" style={{ display: 'block', minHeight: '1.4em' }}>
              {[
                chosen ? `✓ ${words.chosen}` : '',
                fold.mark ?? (reachable ? '' : words.unreached),
                nearestWords(fold.ladder),
              ]
                .filter(Boolean)
                .join(', ')}
            </small>
          </>
        );
        const box = {
          display: 'block',
          boxSizing: 'border-box',
          width: '100%',
          minHeight: '44px',
          padding: '2px',
          font: 'inherit',
          textAlign: 'center',
          color: 'var(--ink, #1c1c1c)',
          background: 'none',
          borderRadius: '4px',
          border: chosen ? '3px solid var(--ink, #1c1c1c)' : '3px solid transparent',
        } as const;
        return (
          <li key={fold.id}>
            {props.onChoose ? (
              <button
                type="button"
                aria-pressed={chosen}
                onClick={() => props.onChoose?.(fold.id)}
                style={{ ...box, cursor: 'pointer' }}
              >
                {inner}
              </button>
            ) : (
              <div style={box}>{inner}</div>
            )}
          </li>
        );
      })}
    </ul>
  );
}
