import { expect, test } from 'vitest';
import { bookFaultWords } from '../../src/messages/book-faults.ts';

test('every fault says what happened and what to do, in plain sentences', () => {
  const codes = [
    ...[
      'disk-full',
      'newer-book',
      'newer-window',
      'older-window',
      'book-removed',
      'book-lost',
      'no-storage',
    ],
    ...['lost-connection', 'not-found', 'damaged', 'stopped', 'not-a-photograph', 'newer-record'],
  ] as const;
  for (const code of codes) {
    const words = bookFaultWords({ code } as Parameters<typeof bookFaultWords>[0]);
    expect(words).toMatch(/^[A-Z].*\.$/);
    expect(words.match(/[.;](?: |$)/g)?.length).toBeGreaterThan(1);
    expect(words).not.toMatch(/IndexedDB|transaction|error|exception|quota/i);
  }
});
