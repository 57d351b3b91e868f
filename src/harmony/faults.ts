import type { GatherFault } from './gather.ts';

/** What happened, then what to do. */
export const gatherFaultWords = {
  transparent:
    'The photograph is fully transparent, so there is nothing to gather. Choose one with something in it.',
  'all-rubbed-out':
    'Everything has been rubbed out, so there is nothing to gather. Undo, or keep a part of the photograph.',
  stopped: 'Gathering was stopped. Nothing has changed; start it again when you like.',
} satisfies Record<GatherFault['code'], string>;
