import { shelfRemarkWords } from '../../src/messages/shelf-file-faults.ts';
import { plainNumber } from '../../src/number-format.ts';

/** The sentences of remarks. */
export const remarkWords = (remarks: readonly Parameters<typeof shelfRemarkWords>[0][]) =>
  remarks.map((remark) => shelfRemarkWords(remark, plainNumber));
