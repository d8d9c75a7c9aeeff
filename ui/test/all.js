// Every test of the window that needs no browser: `npm test`.
//
// They stand beside what they test and run in one process, since reading the compilers takes
// longer than all of the tests.

import { readdirSync } from 'node:fs';

for (const folder of ['../src/lib/', '../web/'].map((name) => new URL(name, import.meta.url))) {
  const files = readdirSync(folder).filter((file) => file.endsWith('.test.js'));
  if (files.length === 0) throw new Error(`no tests in ${folder}`);
  for (const file of files) await import(new URL(file, folder).href);
}
