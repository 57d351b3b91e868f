/** Joins a list within a sentence: "a, b and c"; '' for none. */
export const joinWords = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

/** Names that keep their capital within a sentence: proper names of pigments, and abbreviations. */
const PROPER = /^(Prussian|Naples|Cassel|[A-Z]{2})/;

/** A name as it stands within a sentence: with a small first letter unless it is a proper name. */
export const midSentence = (name: string): string =>
  PROPER.test(name) ? name : name.charAt(0).toLowerCase() + name.slice(1);
