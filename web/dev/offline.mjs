// Writes the offline worker of a built page: offline.mjs DIST
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

const dist = process.argv[2] ?? 'dist';
const NOT = [/\.map$/, /^sw\.js$/];

const files = readdirSync(dist, { recursive: true, withFileTypes: true })
  .filter((f) => f.isFile())
  .map((f) => relative(dist, join(f.parentPath ?? f.path, f.name)).split(sep).join('/'))
  .filter((f) => !NOT.some((r) => r.test(f)))
  .sort();
const hash = createHash('sha256');
for (const f of files) hash.update(f).update('\0').update(readFileSync(join(dist, f))).update('\0');

// A static host may send index.html on to the folder; the folder is what is asked for.
const asked = files.map((f) => (f === 'index.html' ? './' : f));
const worker = readFileSync(fileURLToPath(new URL('sw.js', import.meta.url)), 'utf8')
  .replace('__VERSION__', hash.digest('hex').slice(0, 16))
  .replace('__FILES__', JSON.stringify(asked));
writeFileSync(join(dist, 'sw.js'), worker);
