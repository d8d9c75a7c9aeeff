// What the browser's shell shows of throw files, worked in Node: the wasm as the browser gets it,
// over files in memory. `node through_wasm.mjs <glue> <folder of kept files>`.

import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';

const [glue, folder] = process.argv.slice(2);
const NOW = 1_800_000_000_000;
const LOOKS = [
  { see: 'work', station: null, batch: null },
  { see: 'history', most: 100 },
  { see: 'plan' },
  { see: 'hand-on' },
];

Date.now = () => NOW;

/** A file as a browser's worker has it open. */
class File {
  bytes = new Uint8Array(0);

  getSize = () => this.bytes.length;

  read(into, { at }) {
    const part = this.bytes.subarray(at, at + into.length);
    into.set(part);
    return part.length;
  }

  write(from, { at }) {
    if (this.bytes.length < at + from.length) this.truncate(at + from.length);
    this.bytes.set(from, at);
    return from.length;
  }

  truncate(length) {
    const next = new Uint8Array(length);
    next.set(this.bytes.subarray(0, length));
    this.bytes = next;
  }

  flush() {}
}

const core = await import(resolve(glue, 'core.js'));
core.initSync({ module: readFileSync(join(glue, 'core_bg.wasm')) });
const ask = (command, given) => JSON.parse(core.ask(command, JSON.stringify(given)));
for (let n = 0; n < 200; n++) core.addFile(new File());
core.open('en');

const seen = {};
for (const name of readdirSync(folder).filter((name) => name.endsWith('.jsonl'))) {
  const brought = JSON.parse(core.importFile('kept.jsonl', readFileSync(join(folder, name))));
  if (brought.problem) {
    seen[name] = { problem: brought.problem, bytes: '' };
    continue;
  }
  const choice = { choice: 'add' };
  const { ok } = ask('decide_import', { choice, file: brought.ok.file });
  const views = (seen[name] = {});
  for (const query of LOOKS) {
    const answer = ask('view', { id: ok.id, query });
    views[query.see] = answer.ok?.view ?? answer;
  }
  const [, bytes] = core.exportFiles(ok.id, JSON.stringify({ export: 'throw' }));
  views.bytes = Buffer.from(bytes).toString();
  // The next is looked at alone: copies of one throw would be told from one another.
  ask('shelf_command', { command: { command: 'delete', id: ok.id } });
  ask('shelf_command', { command: { command: 'erase', id: ok.id } });
}
process.stdout.write(JSON.stringify(seen));
