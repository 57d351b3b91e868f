/** A random id for a new record or entry. */
export const newId = (): string => crypto.randomUUID();
