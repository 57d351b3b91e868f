import { escapeHtml } from './escape-html.ts';

/** A fragment of HTML. Only {@link markup} creates one, so user text cannot pass as markup. */
export interface Markup {
  readonly html: string;
}
type Piece = string | number | Markup | readonly Markup[];

const pieceHtml = (piece: Piece): string => {
  if (typeof piece === 'string') return escapeHtml(piece);
  if (typeof piece === 'number') return String(piece);
  return 'html' in piece ? piece.html : piece.map(({ html }) => html).join('');
};

/** Template tag that escapes every value unless it is markup. */
export const markup = (texts: TemplateStringsArray, ...pieces: readonly Piece[]): Markup => ({
  html: texts.reduce((all, text, i) => all + pieceHtml(pieces[i - 1]!) + text),
});
export const EMPTY_MARKUP: Markup = { html: '' };
