// The worker that makes the screens of large throws, kept by the worker that holds the service.
//
// It has a copy of a throw's record, which the core completes with each screen that it leaves to it
// (`src-tauri/web/src/reader.rs`). Where it breaks off, the call that did it is answered so, and it
// is started anew when the next screen is left to it; where it cannot be started, the core makes all
// screens itself. A question that was waiting is then asked again. A command is done by then and is
// not: its answer says that its screen could not be made.

import type { Answer, Call, FromReader } from './talk';

interface Waiting {
  call: Call;
  /** The answer where the reader breaks off. */
  otherwise: string;
}

export class Reader {
  private worker: Worker | null = null;
  private readonly waiting = new Map<number, Waiting>();

  /** `tell` says whether screens may be left to a reader, which has no copy yet. */
  constructor(
    private readonly start: () => Worker,
    private readonly tell: (canRead: boolean) => void,
    private readonly answer: (answer: Answer) => void,
    private readonly askAgain: (call: Call) => void,
  ) {}

  /** Have a screen made that the core has left to it. */
  read(call: Call, reading: string, otherwise: string) {
    this.waiting.set(call.n, { call, otherwise });
    this.worker ??= this.begun();
    this.worker.postMessage({ do: 'read', n: call.n, reading });
  }

  /** Let it go, with its copy. */
  end(canRead = true) {
    this.worker?.terminate();
    this.worker = null;
    this.tell(canRead);
    const left = [...this.waiting.values()];
    this.waiting.clear();
    for (const { call, otherwise } of left) {
      if (call.do === 'ask' && call.command === 'view') this.askAgain(call);
      else this.answer({ n: call.n, json: otherwise });
    }
  }

  private begun(): Worker {
    const worker = this.start();
    worker.onmessage = ({ data }: MessageEvent<FromReader>) => {
      if (worker === this.worker) this.heard(data);
    };
    worker.onerror = () => this.end(false);
    return worker;
  }

  private heard(said: FromReader) {
    if ('unloaded' in said) return this.end(false);
    const waiting = this.waiting.get(said.n);
    this.waiting.delete(said.n);
    if ('json' in said) return this.answer(said);
    if (waiting) this.answer({ n: said.n, json: waiting.otherwise });
    this.end();
  }
}
