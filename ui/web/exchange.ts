// Files in and out by the browser: chosen, shared, downloaded. The page sees no paths.

import type { ExportedFile } from './talk';

const KINDS: Record<string, string> = {
  jsonl: 'text/plain',
  svg: 'image/svg+xml',
  csv: 'text/csv',
  html: 'text/html',
  pdf: 'application/pdf',
};

const kindOf = (name: string) => KINDS[name.slice(name.lastIndexOf('.') + 1)] ?? '';

/** Have the maker choose a file; null where she thinks better of it. */
export function chosen(what: 'throw' | 'photo'): Promise<File | null> {
  const field = document.createElement('input');
  field.type = 'file';
  // Which throw files there are to choose no browser knows; of pictures it offers the camera too.
  if (what === 'photo') field.accept = 'image/*';
  field.hidden = true;
  field.dataset.testid = `choose-${what}`;
  return new Promise((choose) => {
    const end = () => {
      field.remove();
      choose(field.files?.[0] ?? null);
    };
    field.addEventListener('change', end);
    field.addEventListener('cancel', end);
    document.body.append(field);
    field.click();
  });
}

/**
 * Share the files where the device is held in the hand and can, else download them. Gives their
 * names; null where the maker thought better of it.
 */
export async function shared(files: ExportedFile[]): Promise<string[] | null> {
  const shared = files.map(({ name, bytes }) => {
    // Only files of well-known kinds can be shared.
    const known = name.endsWith('.jsonl') ? `${name}.txt` : name;
    return new File([bytes], known, { type: kindOf(name) });
  });
  const isHeld = matchMedia('(pointer: coarse)').matches;
  if (isHeld && navigator.canShare?.({ files: shared })) {
    try {
      await navigator.share({ files: shared });
      return shared.map(({ name }) => name);
    } catch (thrown) {
      if (thrown instanceof DOMException && thrown.name === 'AbortError') return null;
      // It cannot after all.
    }
  }
  for (const { name, bytes } of files) download(name, bytes);
  return files.map(({ name }) => name);
}

function download(name: string, bytes: Uint8Array<ArrayBuffer>) {
  const source = URL.createObjectURL(new Blob([bytes], { type: 'application/octet-stream' }));
  const link = document.createElement('a');
  link.href = source;
  link.download = name;
  link.hidden = true;
  document.body.append(link);
  link.click();
  link.remove();
  // The browser has taken it up by then.
  setTimeout(() => URL.revokeObjectURL(source), 60_000);
}
