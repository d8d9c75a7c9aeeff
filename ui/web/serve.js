// A small server to try the built app by: `node ui/web/serve.js <folder> <port>`.
//
// It does what hosting.html asks of a host: the right kinds, compressed copies, the policy, and
// how long each file may be kept. Port 0 takes any that is free; the address is printed.

import { createReadStream, existsSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { join, normalize, resolve } from 'node:path';
import { POLICY } from './build.js';

const KINDS = {
  css: 'text/css; charset=utf-8',
  html: 'text/html; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  png: 'image/png',
  svg: 'image/svg+xml',
  wasm: 'application/wasm',
  webmanifest: 'application/manifest+json',
};
const PACKED = { br: 'br', gzip: 'gz' };

const [folder = 'target/web', port = '8321', base = '/'] = process.argv.slice(2);
const root = resolve(folder);

function find(url) {
  const { pathname } = new URL(url, 'http://localhost');
  if (!pathname.startsWith(base)) return null;
  const within = normalize(`/${decodeURIComponent(pathname.slice(base.length))}`);
  const path = join(root, within.endsWith('/') ? `${within}index.html` : within);
  return path.startsWith(root) && existsSync(path) && statSync(path).isFile() ? path : null;
}

createServer((request, answer) => {
  const path = ['GET', 'HEAD'].includes(request.method) ? find(request.url) : null;
  if (path === null) {
    answer.writeHead(404).end();
    return;
  }
  const ending = path.slice(path.lastIndexOf('.') + 1);
  const headers = {
    'Content-Type': KINDS[ending] ?? 'application/octet-stream',
    'Cache-Control': path.includes('/assets/') ? 'max-age=31536000, immutable' : 'no-cache',
    'Content-Security-Policy': `${POLICY}; frame-ancestors 'none'`,
    'Cross-Origin-Opener-Policy': 'same-origin',
    'Referrer-Policy': 'no-referrer',
    'X-Content-Type-Options': 'nosniff',
    Vary: 'Accept-Encoding',
  };
  const takes = String(request.headers['accept-encoding'] ?? '');
  const packed = Object.entries(PACKED).find(
    ([coding, end]) => takes.includes(coding) && existsSync(`${path}.${end}`),
  );
  if (packed) headers['Content-Encoding'] = packed[0];
  answer.writeHead(200, headers);
  if (request.method === 'HEAD') answer.end();
  else createReadStream(packed ? `${path}.${packed[1]}` : path).pipe(answer);
}).listen(Number(port), '127.0.0.1', function () {
  console.log(`http://localhost:${this.address().port}${base}`);
});
