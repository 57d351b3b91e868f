/** How a file left, or that it did not. */
export type Handed = 'done' | 'left' | 'failed';

interface Writable {
  write(data: Blob): Promise<void>;
  close(): Promise<void>;
}
/** Chromium's own way to save a file; the other engines have none. */
type Picker = (options: {
  suggestedName: string;
}) => Promise<{ createWritable(): Promise<Writable> }>;

/** Whether the system's share sheet takes this very file: most take pictures, few take a zip. */
export const canShare = (file: File): boolean => navigator.canShare?.({ files: [file] }) === true;

/** Hands a file to the share sheet. The file must be there before the painter's tap. */
export async function shareFile(file: File): Promise<Handed> {
  try {
    await navigator.share({ files: [file] });
    return 'done';
  } catch (error) {
    return hasLeft(error) ? 'left' : 'failed';
  }
}

/** Saves a file where the painter says; where the browser asks nobody, among the downloads. */
export async function saveFile(file: File): Promise<Handed> {
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
    // Some systems have the picker but do not let it be used.
    return error instanceof DOMException && error.name === 'SecurityError'
      ? download(file)
      : 'failed';
  }
}

/** The painter closed the sheet. */
const hasLeft = (error: unknown): boolean =>
  error instanceof DOMException && error.name === 'AbortError';

function download(file: File): Handed {
  const url = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = url;
  link.download = file.name;
  link.click();
  // The browser reads it after this turn.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
  return 'done';
}
