/** Without accents and capitals, so that "Äpfel" is found by "apfel". */
export const folded = (text: string): string =>
  text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
