/** Text without accents and capitals for searching, so that "apfel" finds "Äpfel". */
export const foldText = (text: string): string =>
  text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
