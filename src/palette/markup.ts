import { escaped } from '../escaped.ts';

/** A piece of page; only {@link markup} makes one, so text that was typed cannot pass for it. */
export interface Markup {
  readonly html: string;
}
type Piece = string | number | Markup | readonly Markup[];

const pieceHtml = (piece: Piece): string => {
  if (typeof piece === 'string') return escaped(piece);
  if (typeof piece === 'number') return String(piece);
  return 'html' in piece ? piece.html : piece.map(({ html }) => html).join('');
};

/** Template tag: every value is escaped, unless it is markup itself. */
export const markup = (texts: TemplateStringsArray, ...pieces: readonly Piece[]): Markup => ({
  html: texts.reduce((all, text, i) => all + pieceHtml(pieces[i - 1]!) + text),
});
export const NOTHING: Markup = { html: '' };
