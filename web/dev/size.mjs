// Prints what the first screen costs to fetch, compressed as a good host would
// send it, and fails when that is more than the page promises.
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, extname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { brotliCompressSync, constants } from 'node:zlib';

/** The first useful screen needs at most this much (2 MB, as networks count). */
const FIRST_SCREEN = 2_000_000;

/** All of it together, which the offline worker fetches, at most this much. */
const ALL = 12_000_000;

/** Files that are compressed already: hosts send them as they are. */
const PACKED = new Set(['.woff2', '.png', '.jpg', '.webp', '.avif']);

/** Files the first screen does not ask for. */
const LATER = [/\.map$/, /static\/demo\/(harbour|buoy)\.svg$/, /latin-ext/, /\/order-[^/]*\.wasm$/, /\/later\//, /\/(?!index-)[^/]*\.css$/, /\.csv$/, /\.ttf$/, /\/licences\//, /\/pdf\.worker[^/]*$/, /\/screens?\//, /\/icons\//, /\/sw\.js$/, /\.webmanifest$/];

const root = process.argv[2] ?? 'dist';

/** Chunks that the first one cannot run without, wherever they lie. */
const needed = new Set();
function need(path) {
  if (needed.has(path)) return;
  needed.add(path);
  for (const [, from] of readFileSync(path, 'utf8').matchAll(/(?:from|import)\s*"(\.[^"]+\.js)"/g)) need(join(dirname(path), from));
}
for (const name of readdirSync(join(root, 'assets'))) if (/^index-.*\.js$/.test(name)) need(join(root, 'assets', name));

/** What was packed before, by its content: packing the engine takes a while. */
const KEPT = fileURLToPath(new URL('../../.build/packed.json', import.meta.url));
const kept = existsSync(KEPT) ? JSON.parse(readFileSync(KEPT, 'utf8')) : {};

function packed(path) {
  const bytes = readFileSync(path);
  if (PACKED.has(extname(path))) return bytes.length;
  const params = { [constants.BROTLI_PARAM_QUALITY]: constants.BROTLI_MAX_QUALITY, [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length };
  return (kept[createHash('sha256').update(bytes).digest('hex')] ??= brotliCompressSync(bytes, { params }).length);
}

const files = readdirSync(root, { recursive: true, withFileTypes: true })
  .filter((f) => f.isFile())
  .map((f) => join(f.parentPath ?? f.path, f.name))
  .sort();
let first = 0;
let all = 0;
for (const path of files) {
  const later = !needed.has(path) && LATER.some((r) => r.test(path));
  const size = packed(path);
  if (!later) first += size;
  if (extname(path) !== '.map') all += size;
  console.log(`${(size / 1000).toFixed(1).padStart(9)} kB  ${relative(root, path)}${later ? '  (later)' : ''}`);
}
writeFileSync(KEPT, JSON.stringify(kept));
console.log(`${(first / 1000).toFixed(1).padStart(9)} kB  first screen, compressed; at most ${FIRST_SCREEN / 1000} kB`);
if (first > FIRST_SCREEN) {
  console.error('The first screen is too heavy.');
  process.exit(1);
}
console.log(`${(all / 1000).toFixed(1).padStart(9)} kB  all of it, compressed; at most ${ALL / 1000} kB`);
if (all > ALL) {
  console.error('The page is too heavy to be kept offline.');
  process.exit(1);
}
