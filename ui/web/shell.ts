// A browser as the shell: the service runs in a worker, files come and go by the browser.

import type { Shell } from '../src/lib/shell';
import type { Export, Exported, Layouts, PrintOrder, Printing, Problem } from '../src/lib/types';
import { Keeper } from './care.svelte';
import { chosen, shared } from './exchange';
import { Pictures } from './pictures';
import { small } from './photos';
import { Service, unloaded } from './service';
import type { ExportedFile, FromPress, FromWorker, ToPress } from './talk';

const startWorker = () => new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });

/** One search for layouts at a time, in a worker of its own. */
class Search {
  private worker: Worker | null = null;
  private last: Layouts | null = null;
  private end: ((found: Layouts) => void) | null = null;

  start(order: string, report: (found: Layouts) => void): Promise<Layouts> {
    this.stop();
    const worker = startWorker();
    this.worker = worker;
    this.last = null;
    return new Promise((done, failed) => {
      this.end = done;
      worker.onmessage = ({ data }: MessageEvent<FromWorker>) => {
        if (!('found' in data) || this.worker !== worker) return;
        const answer = JSON.parse(data.found) as { ok: Layouts } | { problem: Problem };
        if ('problem' in answer) failed(answer.problem);
        else {
          this.last = answer.ok;
          if (data.ended) done(answer.ok);
          else report(answer.ok);
        }
        if (data.ended) this.close();
      };
      worker.onerror = (event) => failed(unloaded(event.message));
      worker.postMessage({ do: 'search', order });
    });
  }

  /** Stop it; what was found stays. */
  stop(): Layouts | null {
    if (this.last) this.last = { ...this.last, running: false };
    if (this.worker && this.last) this.end?.(this.last);
    this.close();
    return this.last;
  }

  private close() {
    this.worker?.terminate();
    this.worker = null;
    this.end = null;
  }
}

/** One print at a time, in a worker of its own. */
class Press {
  private worker: Worker | null = null;
  private end: ((pdf: null) => void) | null = null;
  private turn = 0;

  /** Begin a print: from now on it can be stopped, also while its job is still being made. */
  begin(): number {
    this.stop();
    return this.turn;
  }

  /** The PDF; null where the print was stopped. */
  print(
    turn: number,
    given: ToPress,
    report: (now: Printing) => void,
  ): Promise<ExportedFile['bytes'] | null> {
    if (turn !== this.turn) return Promise.resolve(null);
    const worker = new Worker(new URL('./press.ts', import.meta.url), { type: 'module' });
    this.worker = worker;
    return new Promise<ExportedFile['bytes'] | null>((done, failed) => {
      this.end = done;
      worker.onmessage = ({ data }: MessageEvent<FromPress>) => {
        if ('now' in data) report(data.now);
        else if ('pdf' in data) done(data.pdf);
        else failed(new Error(data.failed));
      };
      worker.onerror = (event) => failed(new Error(event.message));
      worker.postMessage(given);
    }).finally(() => {
      worker.terminate();
      if (this.worker === worker) this.worker = null;
    });
  }

  stop() {
    this.turn += 1;
    this.end?.(null);
    this.end = null;
    this.worker?.terminate();
    this.worker = null;
  }
}

const service = new Service(startWorker);
const press = new Press();
const search = new Search();
const pictures = new Pictures(async (id, photo) => {
  const answer = await service.ask({ do: 'photo', id, photo });
  return 'bytes' in answer ? answer.bytes : null;
});

/** The photo last dropped on the page, until it is asked for. */
let fallen: File | null = null;

const ask = <T>(command: string, given: Record<string, unknown>) =>
  service.json<T>({ do: 'ask', command, given: JSON.stringify(given) });

async function importFile(): Promise<unknown> {
  const file = await chosen('throw');
  if (!file) return null;
  return service.json({ do: 'import', name: file.name, bytes: await file.arrayBuffer() });
}

async function save(id: string, wanted: Export): Promise<Exported> {
  const answer = await service.ask({ do: 'export', id, wanted: JSON.stringify(wanted) });
  const files: ExportedFile[] = 'files' in answer ? answer.files : service.read(answer);
  const names = await shared(files);
  if (!names) return { said: null };
  // A copy of the throw itself is remembered, so that the maker is not asked to save one.
  const copied = wanted.export === 'throw' ? { throw: id } : {};
  return ask<Exported>('exported', { files: names, ...copied });
}

/** What the core gives to print from. */
interface Print {
  file: string;
  photos: string[];
  job: unknown;
}

async function print(id: string, order: PrintOrder, report: (now: Printing) => void) {
  const turn = press.begin();
  const { file, photos, job } = await ask<Print>('print', { id, order });
  const all: ToPress['photos'] = [];
  for (const name of photos) {
    const answer = await service.ask({ do: 'photo', id, photo: name });
    if ('bytes' in answer && answer.bytes) all.push([name, answer.bytes]);
  }
  const given = { job: JSON.stringify(job), photos: all };
  const made = press.print(turn, given, report).catch((why) => {
    console.error(why);
    return ask<never>('print_failed', { why: why instanceof Error ? why.message : String(why) });
  });
  const bytes = await made;
  if (!bytes) return { said: null };
  const names = await shared([{ name: file, bytes }]);
  return names ? ask<Exported>('exported', { files: names }) : { said: null };
}

async function photo(id: string, dropped: boolean): Promise<string | null> {
  const file = dropped ? fallen : await chosen('photo');
  fallen = null;
  if (!file) return null;
  const bytes = await small(file);
  return service.json<string>({ do: 'keep', id, name: file.name, small: bytes });
}

async function arrange(given: Record<string, unknown>, report: (found: Layouts) => void) {
  const order = await ask<unknown>('order', given);
  return search.start(JSON.stringify(order), report);
}

function asked(
  command: string,
  given: Record<string, unknown>,
  report?: (news: never) => void,
): Promise<unknown> {
  switch (command) {
    case 'import':
      return importFile();
    case 'export':
      return save(given.id as string, given.export as Export);
    case 'photo':
      return photo(given.id as string, given.dropped as boolean);
    case 'arrange':
      return arrange(given, report as unknown as (found: Layouts) => void);
    case 'stop_arranging':
      return Promise.resolve(search.stop());
    case 'print':
      return print(
        given.id as string,
        given.order as PrintOrder,
        report as unknown as (now: Printing) => void,
      );
    case 'stop_printing':
      press.stop();
      return Promise.resolve(null);
    default:
      if (isKept(command)) care.begun();
      return ask(command, given);
  }
}

/** A throw file that was dropped on the page or handed to the app. */
async function dropIn(file: File) {
  await service.ask({ do: 'drop', name: file.name, bytes: await file.arrayBuffer() });
}

const care = new Keeper();

/** What is asked has made something that is to be kept. */
const isKept = (command: string) => ['act', 'shelf_command', 'decide_import'].includes(command);

export const shell: Shell = {
  care,
  ask: <T>(command: string, given = {}, report?: (news: never) => void) =>
    asked(command, given, report) as Promise<T>,
  photoSource: (id, photo) => pictures.source(id, photo),
  onDropped(file, photo) {
    service.onoffer = file;
    window.addEventListener('dragover', (event) => event.preventDefault());
    window.addEventListener('drop', (event) => {
      event.preventDefault();
      const [dropped, ...more] = event.dataTransfer?.files ?? [];
      if (!dropped || more.length) return;
      if (dropped.type.startsWith('image/')) {
        fallen = dropped;
        photo();
      } else void dropIn(dropped);
    });
    void care.begin((file) => void dropIn(file));
  },
};

// A page that is put aside lets its files go; brought back, it begins anew.
window.addEventListener('pagehide', () => service.end());
window.addEventListener('pageshow', (event) => {
  if (event.persisted) location.reload();
});
