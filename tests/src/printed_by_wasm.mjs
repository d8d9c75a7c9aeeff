// The typesetter as the browser gets it, run in Node: the job on standard input becomes the PDF on
// standard output. `node printed_by_wasm.mjs <glue>`. How much memory it took goes to standard error.

import { readFileSync, writeSync } from 'node:fs';
import { join, resolve } from 'node:path';

const [glue] = process.argv.slice(2);
const press = await import(resolve(glue, 'press.js'));
const { memory } = press.initSync({ module: readFileSync(join(glue, 'press_bg.wasm')) });
const began = performance.now();
const pdf = press.print(readFileSync(0, 'utf8'), [], () => undefined);
const took = Math.round(performance.now() - began);
for (let at = 0; at < pdf.length; ) at += writeSync(1, pdf, at);
console.error(JSON.stringify({ took, memory: memory.buffer.byteLength }));
