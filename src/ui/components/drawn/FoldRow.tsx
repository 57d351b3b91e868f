import type { DrawnLadder } from '../../../drawing/drawn-ladder.ts';
import { gamutWords } from './alternative-text.ts';
import { ClothFold } from './ClothFold.tsx';

interface RowFold {
  /** Unique within the row. */
  readonly id: string;
  /** Shown below the fold, for example "warmer, a little". */
  readonly name: string;
  readonly ladder: DrawnLadder;
  /** If false, the fold is hatched and marked; default: whether every step is reachable. */
  readonly reachable?: boolean | undefined;
  /** Mark below the fold, instead of "out of reach". */
  readonly mark?: string | undefined;
  /** The mark as a single sign, for narrow screens; the row's context explains it. */
  readonly sign?: string | undefined;
}

interface FoldRowProps {
  /** Name of the row, for screen readers. */
  readonly label: string;
  readonly folds: readonly RowFold[];
  /** One seed for all folds, so that only their colours differ. */
  readonly seed: number;
  /** Id of the selected fold. */
  readonly chosen?: string | undefined;
  /** If absent, the folds are not buttons. */
  readonly onChoose?: ((id: string) => void) | undefined;
  /** Words of the marks; the defaults are English. */
  readonly words?: { readonly chosen: string; readonly unreached: string } | undefined;
}

/**
 * A row of short folds. A frame and a word mark the selected fold, hatching and a word those out of
 * reach. It always stays one row: a narrow page may hide `fold-name` and `fold-mark` visually.
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
        // A fold marked as out of reach is hatched as a whole.
        const ladder =
          !reachable && fold.ladder.every((step) => step.reachable)
            ? fold.ladder.map((step) => ({ ...step, reachable: false }))
            : fold.ladder;
        const chosen = fold.id === props.chosen;
        const inner = (
          <>
            {/* The name and marks follow as text. */}
            <span aria-hidden="true">
              <ClothFold name={fold.name} ladder={ladder} seed={props.seed} />
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
                gamutWords(fold.ladder),
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
