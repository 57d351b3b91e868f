import type { GatherFault } from '../harmony/gather.ts';
import type { EditFault } from '../harmony/manual-edits.ts';

/** The sentence for each fault: what happened, then what to do. */
export const gatherFaultWords = {
  transparent:
    'The photograph is fully transparent, so there is nothing to gather. Choose one with something in it.',
  'all-rubbed-out':
    'Everything has been rubbed out, so there is nothing to gather. Undo, or keep a part of the photograph.',
  stopped: 'Gathering was stopped. Nothing has changed; start it again when you like.',
} satisfies Record<GatherFault['code'], string>;

export const editFaultWords = {
  ...gatherFaultWords,
  'no-such-colour': 'That colour is no longer in the harmony. Choose another.',
  'last-colour': 'A harmony keeps at least one colour. Add another before you drop this one.',
  'too-many': 'A harmony holds twelve colours at most. Drop or join some first.',
  'no-name': 'A name needs at least one letter. Type one, or keep the old name.',
  'name-taken': 'Another colour of this harmony has that name. Choose a different one.',
  'same-colour': 'That is the same colour twice. Choose two colours to join.',
  'cannot-split': 'This colour is even throughout and cannot be parted.',
} satisfies Record<EditFault['code'], string>;
