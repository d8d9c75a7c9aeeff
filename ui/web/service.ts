// The page's end of the service: what it asks the worker that holds it.
//
// Calls are executed by the worker in the order in which they were made; the large screens among them
// are made beside (`reader.ts`). Where the service breaks off, the call that did it is answered so,
// the worker is started anew, and the calls that were waiting are asked again: everything
// acknowledged is in the files. A command that only waits for its screen is done by then and is not
// asked again; it is answered as the call that broke off. The answers of a worker that is begun later
// count as newer than all before (`revision`).

import type { Problem } from '../src/lib/types';
import type { Answer, Asked, FromWorker } from './talk';

/** How long a page that is loaded again waits for the one before to let the files go. */
const PATIENCE = 600;
/** The same for a worker that is started anew. */
const LONG_PATIENCE = 5000;

interface Waiting {
  asked: Asked;
  /** It is done; only its screen is still being made. */
  isDone?: true;
  done: (answer: Answer) => void;
  failed: (why: unknown) => void;
}

/** Where not even words could be loaded. */
export function unloaded(why: string): Problem {
  return navigator.language.startsWith('de')
    ? {
        code: 'unloaded',
        said: 'Lapwork ließ sich nicht laden.',
        next: `Lade die Seite neu, mit Verbindung zum Netz, oder nimm einen neueren Browser. (${why})`,
      }
    : {
        code: 'unloaded',
        said: 'Lapwork could not be loaded.',
        next: `Load the page again, connected to the network, or use a newer browser. (${why})`,
      };
}

export class Service {
  private worker: Worker | null = null;
  private readonly waiting = new Map<number, Waiting>();
  private count = 0;
  /** What to say where the service breaks off. */
  private broke: Problem | null = null;
  /** Added to the revisions of the worker that is there. */
  private base = 0;
  private newest = 0;
  onoffer: () => void = () => undefined;

  constructor(private readonly startWorker: () => Worker) {}

  ask(asked: Asked): Promise<Answer> {
    const n = ++this.count;
    return new Promise((done, failed) => {
      this.waiting.set(n, { asked, done, failed });
      this.there().postMessage({ ...asked, n });
    });
  }

  async json<T>(asked: Asked): Promise<T> {
    return this.read<T>(await this.ask(asked));
  }

  read<T>(answer: Answer): T {
    if (!('json' in answer)) throw unloaded('refused' in answer ? answer.refused : '');
    const read = JSON.parse(answer.json) as { ok: T } | { problem: Problem };
    if ('problem' in read) throw read.problem;
    const { ok } = read;
    if (typeof ok === 'object' && ok !== null && 'revision' in ok) {
      const view = ok as { revision: number };
      view.revision += this.base;
      this.newest = Math.max(this.newest, view.revision);
    }
    return ok;
  }

  /** Let the files go. */
  end() {
    this.worker?.terminate();
    this.worker = null;
  }

  private there(): Worker {
    return (this.worker ??= this.start(PATIENCE));
  }

  private start(patience: number): Worker {
    const worker = this.startWorker();
    worker.onmessage = ({ data }: MessageEvent<FromWorker>) => this.heard(data);
    worker.onerror = (event) => this.unloaded(event.message);
    const languages = navigator.languages.join('\n');
    worker.postMessage({ do: 'open', languages, patience });
    return worker;
  }

  private heard(said: FromWorker) {
    if ('n' in said) {
      const waiting = this.waiting.get(said.n);
      this.waiting.delete(said.n);
      if ('broke' in said) {
        console.error(said.broke);
        const broke = this.broke ?? unloaded(said.broke);
        this.restart(broke);
        waiting?.failed(broke);
      } else waiting?.done(said);
    } else if ('done' in said) {
      const waiting = this.waiting.get(said.done);
      if (waiting) waiting.isDone = true;
    } else if ('offer' in said) this.onoffer();
    else if ('anew' in said) this.base = this.newest + 1;
    else if ('sayBroke' in said) {
      this.broke = (JSON.parse(said.sayBroke) as { problem: Problem }).problem;
    }
  }

  private restart(broke: Problem) {
    this.end();
    this.base = this.newest + 1;
    this.worker = this.start(LONG_PATIENCE);
    for (const [n, { asked, isDone, failed }] of this.waiting) {
      if (isDone) {
        this.waiting.delete(n);
        failed(broke);
      } else this.worker.postMessage({ ...asked, n });
    }
  }

  /** The worker's script itself could not be loaded or run. */
  private unloaded(why: string) {
    for (const { failed } of this.waiting.values()) failed(unloaded(why));
    this.waiting.clear();
    this.end();
  }
}
