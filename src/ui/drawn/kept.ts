/** What was worked out lately, by name. */
export interface Kept<T> {
  /** The answer kept under a name, or a new one, which is kept. */
  of(name: string, make: () => T): T;
  has(name: string): boolean;
}

/** Keeps what was last worked out, up to `most` answers; the oldest goes first. */
export function keeping<T>(most: number): Kept<T> {
  const kept = new Map<string, T>();
  return {
    of(name, make) {
      const known = kept.get(name);
      if (known !== undefined) return known;
      const made = make();
      if (kept.size >= most) kept.delete(kept.keys().next().value ?? '');
      kept.set(name, made);
      return made;
    },
    has: (name) => kept.has(name),
  };
}
