// Photographs and soft-brushed paintings, from Debian packages that are
// unpacked into the store and never installed.
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import sharp from 'sharp';
import { LOT } from './choose.mjs';
import { digest, room, stampOf } from './house.mjs';
import { hardened, read, writePNG } from './raster.mjs';

/** Packages of openly licensed pictures; what is a painting and what a photograph in them. */
const SOURCES = [
  { package: 'lomiri-wallpapers-16.04', kind: 'photograph', licence: 'CC BY 4.0, CC BY-SA 4.0, CC0', files: /\/backgrounds\/.*\.jpg$/ },
  { package: 'wesnoth-1.16-httt', kind: 'painting', licence: 'GPL 2 or later', files: /\/images\/(portraits|story)\/.*\.(png|jpg)$/ },
  { package: 'wesnoth-1.16-did', kind: 'painting', licence: 'GPL 2 or later', files: /\/images\/(portraits|story)\/.*\.(png|jpg)$/ },
];

/** Pictures of each kind. */
const EACH = 14;
const LONG_SIDE = 900;

const STAMP = stampOf('paintings.mjs');

/** [{name, kind, file, clear}], or undefined, said in a sentence, when they cannot be had. */
export async function paintings(say) {
  const found = [];
  for (const source of SOURCES) {
    const dir = unpacked(source.package, say);
    if (!dir) return undefined;
    for (const file of filesIn(dir)) if (source.files.test(file)) found.push({ ...source, file });
  }
  const out = [];
  for (const kind of ['photograph', 'painting']) out.push(...byLot(found.filter((f) => f.kind === kind)));
  return Promise.all(out.map(prepared));
}

const filesIn = (dir) => readdirSync(dir, { recursive: true, withFileTypes: true }).filter((f) => f.isFile()).map((f) => join(f.parentPath, f.name)).sort();

function unpacked(name, say) {
  const dir = room('debian', name);
  const done = join(dir, 'unpacked');
  if (existsSync(done)) return dir;
  const debs = room('debian', 'files');
  const quiet = { cwd: debs, stdio: 'ignore' };
  try {
    say(`fetching ${name}`);
    execFileSync('apt-get', ['download', name], quiet);
    const deb = readdirSync(debs).find((f) => f.startsWith(`${name}_`));
    execFileSync('dpkg-deb', ['-x', deb, dir], quiet);
    rmSync(join(debs, deb));
    writeFileSync(done, '');
    return dir;
  } catch {
    say(`The Debian package ${name} cannot be fetched: pictures without a flat truth are left out. Run "apt-get update" as root and try again.`);
    return undefined;
  }
}

/** The first of the lot, one of each subject: names begin with it. */
function byLot(files) {
  const lot = (f) => digest(`${LOT}/${basename(f.file)}`);
  const had = new Set();
  return files.sort((a, b) => (lot(a) < lot(b) ? -1 : 1)).filter((f) => {
    const subject = basename(f.file).split(/[-_.]/).slice(0, f.file.includes('portraits') ? 1 : 9).join();
    return had.has(subject) ? false : had.add(subject);
  }).slice(0, EACH);
}

async function prepared({ file, kind }) {
  const name = basename(file).replace(/\..*/, '');
  const path = join(room('paintings', STAMP), `${name}.png`);
  if (!existsSync(path)) {
    const bytes = await sharp(file).resize({ width: LONG_SIDE, height: LONG_SIDE, fit: 'inside', withoutEnlargement: true }).png().toBuffer();
    await writePNG(path, hardened(await read(bytes)));
  }
  const { isOpaque } = await sharp(path).stats();
  return { name, kind, file: path, clear: !isOpaque };
}
