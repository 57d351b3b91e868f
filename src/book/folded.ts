/** Text without accents and capitals for searching, so that "apfel" finds "Äpfel". */
export const folded = (text: string): string =>
  text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
