const PRIME = 0x1000000000000000000013bn;
const OFFSET = 0x6c62272e07bb014262b821756295c58dn;
const MASK = (1n << 128n) - 1n;

/**
 * FNV-1a, 128 bits, of the UTF-8 bytes of a text, as 32 hexadecimal digits. It is synchronous
 * because an asynchronous digest would end the running transaction. It protects against accidental
 * collisions only, not against attacks: files of a copy are checked with SHA-256.
 * @see G. Fowler, L. C. Noll, K.-P. Vo, D. Eastlake, "The FNV Non-Cryptographic Hash Algorithm"
 */
export function digest(text: string): string {
  let hash = OFFSET;
  for (const byte of new TextEncoder().encode(text)) hash = ((hash ^ BigInt(byte)) * PRIME) & MASK;
  return hash.toString(16).padStart(32, '0');
}

/** Canonical JSON: equal values give equal texts, whatever the order of their keys. */
export function canonical(value: unknown): string {
  if (value === null || typeof value !== 'object') return JSON.stringify(value) ?? 'null';
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  const entries = Object.entries(value).filter(([, held]) => held !== undefined);
  entries.sort(([x], [y]) => (x < y ? -1 : 1));
  return `{${entries.map(([key, held]) => `${JSON.stringify(key)}:${canonical(held)}`).join(',')}}`;
}

/**
 * SHA-256 as 64 hexadecimal digits. The platform's digest is an argument, so that this module stays
 * pure.
 */
export async function sha256(subtle: Subtle, bytes: ArrayBuffer): Promise<string> {
  const hash = new Uint8Array(await subtle.digest('SHA-256', bytes));
  return Array.from(hash, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** The part of `crypto.subtle` that the book uses. */
export interface Subtle {
  digest(algorithm: 'SHA-256', bytes: ArrayBuffer): Promise<ArrayBuffer>;
}
