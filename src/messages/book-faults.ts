import type { BookFault } from '../book/schema/book-fault.ts';

/** The sentence for a fault: what happened, then what to do. */
export const bookFaultWords = (fault: BookFault): string => WORDS[fault.code];

const WORDS = {
  'disk-full':
    'There is no room left on this device, so this was not saved; what was saved before is untouched. Free some space, or make a copy of the book, then try again.',
  'newer-book':
    'This book was last written by a newer Kingcup, so it can be read here but not changed. Reload to bring Kingcup up to date.',
  'newer-window':
    'A newer Kingcup has opened this book in another window, so this window no longer writes. Reload this window.',
  'older-window':
    'An older Kingcup still has this book open in another window. Close the other window, and this one goes on by itself.',
  'book-removed':
    'The book was removed from this browser while this window was open. Reload to begin an empty book, then bring in your last copy.',
  'book-lost':
    'The book that was in this browser is gone: the browser no longer has it, and an empty one was begun. Bring in your last copy.',
  'no-storage':
    'This browser lets Kingcup keep nothing, as some private windows do. Open Kingcup in an ordinary window to save.',
  'lost-connection':
    'The browser let go of the book and did not give it back; nothing in the book was changed. Try again, and reload if that fails.',
  'not-written':
    'The browser refused to write, so this was not saved; what was saved before is untouched. Try again, and make a copy of the book if it goes on.',
  'not-opened':
    'The book could not be opened; nothing in it was changed. Reload, and restart the browser if it happens again.',
  'not-read':
    'The browser could not read this from the book; nothing in it was changed. Try again, and reload if it goes on.',
  'not-found': 'This entry is no longer in the book. Look in the bin, or in your last copy.',
  damaged:
    'This entry cannot be read any more; the others are not touched. Bring in your last copy to get it back.',
  stopped: 'This was stopped, and the book is as it was before. Start it again when you like.',
  'not-a-photograph':
    'This is no whole JPEG photograph, so it was not kept. Take or choose the photograph again.',
  'not-a-copy':
    'This file is no copy of a Kingcup book, so nothing was brought in. Choose the file that Kingcup made, with the ending .zip.',
  'copy-damaged':
    'This copy is not as it was made, perhaps because it was cut short on the way, so nothing was brought in. Fetch it again, or make a new copy.',
  'copy-newer':
    'This copy was made by a newer Kingcup, so nothing was brought in. Reload to bring Kingcup up to date, then choose it again.',
  'copy-too-large':
    'This copy is larger than this device can open at once, so nothing was brought in. Make smaller copies of parts of the book, and bring in one after the other.',
  'book-too-large':
    'The book is larger than one copy can be, so no copy was made. Make it in several copies; brought in one after the other, they are the whole book.',
  'copy-unsound':
    'This copy holds entries that do not fit together, so nothing was brought in. Make a new copy on the device that it came from.',
  'bad-record':
    'This entry is not in a form that the book can keep, so it was not saved. Undo the last change and try again.',
  'newer-record':
    'This entry was written by a newer Kingcup, so it cannot be changed here. Reload to bring Kingcup up to date.',
} satisfies Record<BookFault['code'], string>;
