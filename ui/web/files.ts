// The files the service keeps everything in: a folder in the browser's own storage.
//
// They are opened for this worker alone, so that another page cannot write in them; which bytes
// are in which is the business of the core (`src-tauri/web/src/pool`).

/** A file that is open, as far as it is used here; the core reads and writes it. */
interface OpenFile {
  close(): void;
}

interface FileHere extends FileSystemFileHandle {
  createSyncAccessHandle?(): Promise<OpenFile>;
}

interface Folder extends FileSystemDirectoryHandle {
  keys(): AsyncIterableIterator<string>;
}

const FOLDER = 'lapwork';
/** Files there are from the start. */
const FIRST = 16;
/** Between two attempts to open them, in milliseconds. */
const PAUSE = 40;

const nameOf = (slot: number) => String(slot).padStart(6, '0');

/** What became of the attempt to open them. */
export type Opened =
  | { is: 'open'; files: OpenFile[] }
  /** Another page has them. */
  | { is: 'held' }
  /** The browser has nothing of the kind. */
  | { is: 'none' }
  | { is: 'failed'; why: string };

export class Files {
  private folder: Folder | null = null;
  private count = 0;

  /** Open all of them, and try again for `patience` milliseconds while another page has them. */
  async open(patience: number): Promise<Opened> {
    if (!navigator.storage?.getDirectory) return { is: 'none' };
    const until = Date.now() + patience;
    for (;;) {
      const opened = await this.attempt();
      if (opened.is !== 'held' || Date.now() >= until) return opened;
      await new Promise((go) => setTimeout(go, PAUSE));
    }
  }

  private async attempt(): Promise<Opened> {
    const files: OpenFile[] = [];
    try {
      const root = await navigator.storage.getDirectory();
      this.folder = (await root.getDirectoryHandle(FOLDER, { create: true })) as Folder;
      // The first is the one that tells whether another page has them.
      const first = await this.one(0);
      if (!first) return { is: 'none' };
      files.push(first);
      const there = await this.there();
      const rest = [];
      for (let slot = 1; slot < Math.max(there, FIRST); slot++) rest.push(this.one(slot));
      for (const file of await Promise.all(rest)) if (file) files.push(file);
      this.count = files.length;
      return { is: 'open', files };
    } catch (thrown) {
      for (const file of files) file.close();
      if (!(thrown instanceof DOMException)) return { is: 'failed', why: String(thrown) };
      const held = ['NoModificationAllowedError', 'InvalidStateError'].includes(thrown.name);
      return held ? { is: 'held' } : { is: 'failed', why: thrown.message.replace(/\.$/, '') };
    }
  }

  /** One file more. */
  async more(): Promise<OpenFile | null> {
    const file = await this.one(this.count);
    if (file) this.count += 1;
    return file;
  }

  /** What lies in them while another page has them. */
  async read(): Promise<Uint8Array[]> {
    const all: Uint8Array[] = [];
    if (!this.folder) return all;
    const there = await this.there();
    for (let slot = 0; slot < there; slot++) {
      const handle = await this.folder.getFileHandle(nameOf(slot));
      const file = await handle.getFile();
      all.push(new Uint8Array(await file.arrayBuffer()));
    }
    return all;
  }

  /** How many there are, without gaps. */
  private async there(): Promise<number> {
    const names = new Set<string>();
    if (this.folder) for await (const name of this.folder.keys()) names.add(name);
    let count = 0;
    while (names.has(nameOf(count))) count += 1;
    return count;
  }

  private async one(slot: number): Promise<OpenFile | null> {
    const handle: FileHere | undefined = await this.folder?.getFileHandle(nameOf(slot), {
      create: true,
    });
    return (await handle?.createSyncAccessHandle?.()) ?? null;
  }
}
