// Serves the built page on a loopback address: static files and nothing else.
// `make run` and the page tests use it; any static host does the same.
import { createReadStream, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, normalize, resolve, sep } from 'node:path';

const TYPES = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.webp': 'image/webp',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
};

/** The first port tried; a busy one leads to the next. */
const PORT = 4180;
const PORTS = 50;

/** Serves a folder at a path and returns {address, close}. */
export async function serve(folder, { port = PORT, path = '/' } = {}) {
  const root = resolve(folder);
  const server = createServer((req, res) => answer(root, path, req, res));
  const got = await listen(server, port);
  return {
    address: `http://127.0.0.1:${got}${path}`,
    close: () => new Promise((done) => {
      server.closeAllConnections();
      server.close(done);
    }),
  };
}

function answer(root, path, req, res) {
  const file = fileFor(root, path, req.url ?? '/');
  const type = file && TYPES[extname(file)];
  if (!file || (req.method !== 'GET' && req.method !== 'HEAD')) {
    res.writeHead(404, { 'content-type': 'text/plain' });
    res.end('Nothing is here.\n');
    return;
  }
  // As a good host does: what is named by its content is fetched once.
  const cache = file.includes(`${sep}assets${sep}`) ? 'public, max-age=31536000, immutable' : 'no-cache';
  res.writeHead(200, { 'content-type': type ?? 'application/octet-stream', 'content-length': statSync(file).size, 'cache-control': cache });
  if (req.method === 'HEAD') res.end();
  else createReadStream(file).pipe(res);
}

/** The file an address means, or undefined; never one outside the folder. */
function fileFor(root, path, url) {
  let name;
  try {
    name = decodeURIComponent(new URL(url, 'http://x').pathname);
  } catch {
    return undefined;
  }
  if (!name.startsWith(path)) return undefined;
  let file = normalize(join(root, name.slice(path.length)));
  if (file !== root && !file.startsWith(root + sep)) return undefined;
  try {
    if (statSync(file).isDirectory()) file = join(file, 'index.html');
    return statSync(file).isFile() ? file : undefined;
  } catch {
    return undefined;
  }
}

async function listen(server, first) {
  for (let port = first; port < first + PORTS; port++) {
    const ok = await new Promise((done, fail) => {
      server.once('error', (e) => (e.code === 'EADDRINUSE' ? done(false) : fail(e)));
      server.listen({ port, host: '127.0.0.1' }, () => done(true));
    });
    server.removeAllListeners('error');
    if (ok) return server.address().port;
  }
  throw new Error(`No port between ${first} and ${first + PORTS - 1} is free.`);
}

if (import.meta.url === `file://${process.argv[1]}`) {
  const { address } = await serve(process.argv[2] ?? 'dist');
  console.log(`\n  badgewright is at ${address}\n  Stop it with Ctrl+C.\n`);
}
