// The worker: it holds the service and answers the page's calls, one after another.
//
// The core answers at once and never waits; what can only be done while it does not run (opening
// files) is done between two calls. A second page gets what the first has kept to look at, and
// the files themselves once the first is gone. The same script also searches for layouts, and makes
// the screens of large throws, in workers of their own.

import init, * as core from '#core';
import { Files } from './files';
import { Reader } from './reader';
import type { Answer, Call, FromReader, FromWorker, ToReader, ToWorker } from './talk';

/** At least so many files are kept free. */
const LEAST_FREE = 12;

const files = new Files();
let languages = '';
let isOwn = false;
/** The files are open, and there can be more of them. */
let canGrow = false;
/** Why nothing could be begun. */
let dead: string | null = null;
/** The core holds something, if only to look at. */
let isServing = false;

const post = (said: FromWorker | FromReader) => self.postMessage(said);

const reader = new Reader(
  () => new Worker(self.location.href, { type: 'module' }),
  (canRead) => core.setReader(canRead),
  post,
  (call) => take(call),
);

/** Open the files, or see what another page keeps in them. */
async function serve(patience: number) {
  const opened = await files.open(patience);
  if (opened.is === 'open') {
    for (const file of opened.files) core.addFile(file);
    if (isServing) post({ anew: true });
    core.open(languages);
    isOwn = true;
    canGrow = true;
    // A page that can only look makes its screens from copies that are read anew each time.
    reader.end();
    return;
  }
  if (opened.is === 'held') core.readOnly(languages, await files.read());
  else {
    core.strand(languages, opened.is === 'failed' ? opened.why : undefined);
    // Nothing will come of another attempt.
    isOwn = true;
  }
}

async function begin(patience: number) {
  await init();
  await serve(patience);
  isServing = true;
  sendBroke();
}

/** The page is to know beforehand what to say where all of this breaks off. */
function sendBroke() {
  post({ sayBroke: core.ask('broke', '{}') });
}

function answer(asked: Call): Answer {
  const { n } = asked;
  switch (asked.do) {
    case 'ask':
      return { n, json: core.ask(asked.command, asked.given) };
    case 'import':
      return { n, json: core.importFile(asked.name, new Uint8Array(asked.bytes)) };
    case 'drop':
      core.dropIn(asked.name, new Uint8Array(asked.bytes));
      return { n, json: '{"ok":null}' };
    case 'keep': {
      const small = asked.small ? new Uint8Array(asked.small) : undefined;
      return { n, json: core.keepPhoto(asked.id, asked.name, small) };
    }
    case 'photo': {
      const bytes = core.photo(asked.id, asked.photo);
      return { n, bytes: (bytes as Uint8Array<ArrayBuffer> | undefined) ?? null };
    }
    case 'export': {
      const made = core.exportFiles(asked.id, asked.wanted);
      if (typeof made === 'string') return { n, json: made };
      const all = [];
      for (let at = 0; at + 1 < made.length; at += 2) {
        all.push({ name: made[at] as string, bytes: made[at + 1] as Uint8Array<ArrayBuffer> });
      }
      return { n, files: all };
    }
  }
}

async function serveCall(asked: Call) {
  const { n } = asked;
  if (dead !== null) return post({ n, refused: dead });
  if (!isOwn) await serve(0);
  try {
    const made = answer(asked);
    const reading = core.reading();
    if (reading !== undefined && 'json' in made) {
      if (asked.do === 'ask' && asked.command === 'act') post({ done: n });
      reader.read(asked, reading, made.json);
    } else post(made);
  } catch (thrown) {
    const why = String(thrown);
    // The core says so itself where a call is none; anything else is its end.
    const isEnd = thrown instanceof WebAssembly.RuntimeError;
    post(isEnd ? { n, broke: why } : { n, refused: why });
    if (isEnd) return;
  }
  if (core.offers()) post({ offer: true });
  if (asked.do === 'ask' && asked.command === 'set_prefs') sendBroke();
  while (canGrow && core.freeFiles() < LEAST_FREE) {
    const file = await files.more();
    if (!file) return;
    core.addFile(file);
  }
}

async function search(order: string) {
  await init();
  const report = (found: string) => post({ found, ended: false });
  post({ found: core.search(order, report), ended: true });
}

let loaded: Promise<unknown> | null = null;

/** As the reader, make a screen that was left to it. */
async function read({ n, reading }: ToReader) {
  try {
    await (loaded ??= init());
  } catch (why) {
    return post({ unloaded: String(why) });
  }
  try {
    post({ n, json: core.read(reading) });
  } catch (why) {
    post({ n, broke: String(why) });
  }
}

let turn: Promise<void> = Promise.resolve();

/** Answer a call in its turn. */
function take(call: Call) {
  turn = turn.then(() => serveCall(call)).catch((why) => console.error(why));
}

self.onmessage = ({ data }: MessageEvent<ToWorker>) => {
  if (data.do === 'search') return void search(data.order);
  if (data.do === 'open') {
    languages = data.languages;
    turn = begin(data.patience).catch((why) => void (dead = String(why)));
    return;
  }
  if (data.do === 'read') return void read(data);
  take(data);
};
