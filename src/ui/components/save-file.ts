/** Outcome of saving or sharing a file; 'left' when the user cancelled. */
export type FileOutcome = 'done' | 'left' | 'failed';

interface Writable {
  write(data: Blob): Promise<void>;
  close(): Promise<void>;
}
/** The File System Access API's save dialog, which only Chromium has. */
type Picker = (options: {
  suggestedName: string;
}) => Promise<{ createWritable(): Promise<Writable> }>;

/** Whether the share sheet accepts this file. Most accept pictures, few accept a zip. */
export const canShare = (file: File): boolean => navigator.canShare?.({ files: [file] }) === true;

/**
 * Opens the share sheet. The file must exist before the tap, because the browser requires a direct
 * user action.
 */
export async function shareFile(file: File): Promise<FileOutcome> {
  try {
    await navigator.share({ files: [file] });
    return 'done';
  } catch (error) {
    return hasLeft(error) ? 'left' : 'failed';
  }
}

/** Saves a file at a place chosen by the user; without a save dialog, as a download. */
export async function saveFile(file: File): Promise<FileOutcome> {
  const picker = (window as { showSaveFilePicker?: Picker }).showSaveFilePicker;
  if (!picker) return download(file);
  try {
    const handle = await picker({ suggestedName: file.name });
    const writable = await handle.createWritable();
    await writable.write(file);
    await writable.close();
    return 'done';
  } catch (error) {
    if (hasLeft(error)) return 'left';
    // Some systems have the save dialog but forbid its use.
    return error instanceof DOMException && error.name === 'SecurityError'
      ? download(file)
      : 'failed';
  }
}

/** The user cancelled the dialog. */
const hasLeft = (error: unknown): boolean =>
  error instanceof DOMException && error.name === 'AbortError';

function download(file: File): FileOutcome {
  const url = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = url;
  link.download = file.name;
  link.click();
  // The browser reads the URL after this turn of the event loop.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
  return 'done';
}
