// Prints what the first screen costs to fetch, compressed as a good host would
// send it, and fails when that is more than the page promises.
import { readdirSync, readFileSync } from 'node:fs';
import { extname, join, relative } from 'node:path';
import { brotliCompressSync, constants } from 'node:zlib';

/** The first useful screen needs at most this much (2 MB, as networks count). */
const FIRST_SCREEN = 2_000_000;

/** Files that are compressed already: hosts send them as they are. */
const PACKED = new Set(['.woff2', '.png', '.jpg', '.webp', '.avif']);

/** Files the first screen does not ask for. */
const LATER = [/\.map$/, /static\/demo\/(harbour|buoy)\.svg$/, /latin-ext/, /\.csv$/, /\/screens?\//];

const root = process.argv[2] ?? 'dist';

function packed(path) {
  const bytes = readFileSync(path);
  if (PACKED.has(extname(path))) return bytes.length;
  const params = { [constants.BROTLI_PARAM_QUALITY]: path.endsWith('.wasm') ? 9 : 11, [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length };
  return brotliCompressSync(bytes, { params }).length;
}

const files = readdirSync(root, { recursive: true, withFileTypes: true })
  .filter((f) => f.isFile())
  .map((f) => join(f.parentPath ?? f.path, f.name))
  .sort();
let first = 0;
for (const path of files) {
  const later = LATER.some((r) => r.test(path));
  const size = packed(path);
  if (!later) first += size;
  console.log(`${(size / 1000).toFixed(1).padStart(9)} kB  ${relative(root, path)}${later ? '  (later)' : ''}`);
}
console.log(`${(first / 1000).toFixed(1).padStart(9)} kB  first screen, compressed; at most ${FIRST_SCREEN / 1000} kB`);
if (first > FIRST_SCREEN) {
  console.error('The first screen is too heavy.');
  process.exit(1);
}
