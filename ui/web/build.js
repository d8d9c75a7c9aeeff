// What the window needs beside its scripts when it is put on the web: a content policy, the
// manifest, and the service worker that keeps all of it.
//
// The service worker is made last. It has the hash of every other file in it, so that what it
// keeps is one build and no other.

import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import process from 'node:process';
import { fileURLToPath, URL } from 'node:url';
import { brotliCompressSync, constants, gunzipSync, gzipSync } from 'node:zlib';

/** Nothing from anywhere else, and of code that is made only what is compiled wasm. */
export const POLICY = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

const HEAD = [
  { tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content: POLICY } },
  { tag: 'meta', attrs: { name: 'referrer', content: 'no-referrer' } },
  { tag: 'link', attrs: { rel: 'manifest', href: './manifest.webmanifest' } },
  { tag: 'link', attrs: { rel: 'icon', href: './icon.svg', type: 'image/svg+xml' } },
  { tag: 'link', attrs: { rel: 'apple-touch-icon', href: './icon-180.png' } },
  ...['light', 'dark'].map((scheme) => ({
    tag: 'meta',
    attrs: {
      name: 'theme-color',
      media: `(prefers-color-scheme: ${scheme})`,
      content: scheme === 'light' ? '#f4eddf' : '#121829',
    },
  })),
  { tag: 'meta', attrs: { name: 'apple-mobile-web-app-capable', content: 'yes' } },
  { tag: 'meta', attrs: { name: 'mobile-web-app-capable', content: 'yes' } },
];

/** Files that are for the host or the maker of the host, and not part of the app. */
const APART = /(^|\/)(sw\.js|hosting\.(html|css))$|\.(br|gz)$/;
const PACKED = /\.(js|css|html|svg|wasm|webmanifest)$/;

function files(folder, within = folder) {
  return readdirSync(within, { withFileTypes: true })
    .flatMap((found) => {
      const path = join(within, found.name);
      return found.isDirectory() ? files(folder, path) : [relative(folder, path)];
    })
    .map((path) => path.replaceAll('\\', '/'))
    .sort();
}

const hash = (bytes) => createHash('sha256').update(bytes).digest('base64');

/**
 * Make the service worker and the compressed copies of a folder's files, anew where there are any;
 * also `node ui/web/build.js <folder>`.
 */
function seal(folder) {
  const app = files(folder).filter((path) => !APART.test(path));
  const kept = Object.fromEntries(
    app.map((path) => [path, hash(readFileSync(join(folder, path)))]),
  );
  const source = readFileSync(fileURLToPath(new URL('./sw.js', import.meta.url)), 'utf8');
  const build = hash(JSON.stringify(kept)).replaceAll(/\W/g, '').slice(0, 12);
  const worker = source
    .replace("'BUILD'", JSON.stringify(build))
    .replace('/* FILES */ {}', JSON.stringify(kept));
  if (worker === source) throw new Error('sw.js takes nothing in');
  writeFileSync(join(folder, 'sw.js'), worker);
  for (const path of files(folder).filter((path) => PACKED.test(path))) {
    const bytes = readFileSync(join(folder, path));
    const packed = `${path}.gz`;
    const last = existsSync(join(folder, packed)) && gunzipSync(readFileSync(join(folder, packed)));
    // To compress the core well takes half a minute.
    if (last && last.equals(bytes)) continue;
    const params = { [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length };
    // The typesetter would take minutes to compress as far as that goes.
    if (bytes.length > 1 << 23) params[constants.BROTLI_PARAM_QUALITY] = 9;
    writeFileSync(join(folder, `${path}.br`), brotliCompressSync(bytes, { params }));
    writeFileSync(join(folder, packed), gzipSync(bytes, { level: 9 }));
  }
}

export function wholeApp() {
  let folder = '';
  return {
    name: 'lapwork-whole-app',
    configResolved(config) {
      folder = join(config.root, config.build.outDir);
    },
    transformIndexHtml: {
      order: 'post',
      handler: (html) => ({
        // The policy stands before anything it is to be held against.
        html: html.replaceAll(' crossorigin', ''),
        tags: HEAD.map((tag) => ({ ...tag, injectTo: 'head-prepend' })),
      }),
    },
    closeBundle: () => seal(folder),
  };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) seal(process.argv[2]);
