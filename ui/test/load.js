// Lets Node's own test runner load the window's TypeScript: `node --import ./test/load.js`.
//
// Types are stripped by the compiler that checks them too. Modules with runes are compiled as for
// a server, where state is plain fields: what is tested is what the modules do, not how Svelte
// follows them. Tests run without a browser; what they need of one they hand in themselves.

import { register } from 'node:module';

register('./hooks.js', import.meta.url);
