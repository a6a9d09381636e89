// Finds, with the engine run natively, what the first screen shows: the demo's
// answers and its picture, so that a page need not wait for its engine to load.
import { execFileSync } from 'node:child_process';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';

const [to] = process.argv.slice(2);
if (!to) throw new Error('usage: first.mjs FOLDER');
const root = fileURLToPath(new URL('../..', import.meta.url));
rmSync(to, { recursive: true, force: true });
mkdirSync(to, { recursive: true });
const drawn = resolve(to, 'pin.png');

/** Long side of the picture, device px: that of the pin on most sheets at one device pixel each, and light to fetch. */
const PICTURE = 512;

const svg = 'testdata/drawings/demo/lighthouse.svg';
const lines = [
  { call: 'hello' },
  { call: 'header', file: svg, ask: { fileName: 'lighthouse.svg' } },
  { call: 'open', file: 'testdata/drawings/lighthouse.png', ask: { id: 'first', fileName: 'lighthouse.svg' } },
  { call: 'check' },
  { call: 'buys' },
  { call: 'picture', ask: { view: 'struck', longSide: PICTURE }, png: drawn },
];
const out = execFileSync('go', ['run', './wasm'], { cwd: root, input: lines.map((l) => JSON.stringify(l)).join('\n') + '\n', maxBuffer: 1 << 26, encoding: 'utf8' });
const [hello, header, opened, check, buys, picture] = out.trim().split('\n').map((line) => {
  const { call, answer, error } = JSON.parse(line);
  if (error) throw new Error(`${call}: ${error.what}`);
  return answer;
});
// The engine will open the same drawing at the size these answers speak of.
const first = { hello, header: { ...header, workW: opened.w, workH: opened.h }, opened, check, buys, picture };
writeFileSync(join(to, 'sheet.json'), JSON.stringify(first));
// A quarter of the PNG, and no eye sees the difference in the second it is shown.
await sharp(drawn).webp({ quality: 82, alphaQuality: 100, effort: 6 }).toFile(join(to, 'pin.webp'));
rmSync(drawn);
