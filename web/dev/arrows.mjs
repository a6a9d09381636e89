// Fails when a Go package imports one on its own level or above it, when
// syscall/js is used outside the door, or when a room has no level yet.
import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const MODULE = 'badgewright';

/** The level of every room; a package may import lower levels only. */
const LEVELS = {
  'reduce/colour': 0,
  'reduce/mask': 0,
  'sizing/unit': 0,
  'sizing/ink': 0,
  'sizing/csvfile': 0,
  reduce: 1,
  'sizing/shop': 2,
  'reduce/colourlist': 2,
  sizing: 2,
  'sizing/wall': 3,
  'sizing/canvas': 3,
  'sizing/outline': 3,
  'sizing/sight': 3,
  'sizing/run': 3,
  'sizing/caution': 3,
  'sizing/trace': 3,
  'sizing/days': 3,
  'sizing/eye': 3,
  'sizing/demand': 3,
  'sizing/left': 3,
  'sizing/card': 3,
  'sizing/fastener': 4,
  'sizing/pricefile': 4,
  'sizing/deduce': 4,
  'sizing/mend': 4,
  'sizing/apart': 4,
  'sizing/proof': 5,
  'sizing/fit': 5,
  'sizing/parcel': 6,
  'sizing/sheet': 6,
  'sizing/save': 7,
  'wasm/wire': 8,
  'wasm/calls': 9,
  'wasm/wire/gen': 9,
  wasm: 10,
};

export function wrongArrows(packages) {
  const wrong = [];
  for (const p of packages) {
    const room = roomOf(p.ImportPath);
    if (!(room in LEVELS)) {
      wrong.push(`${room} has no level: add it to web/dev/arrows.mjs and to DEVELOPERS.md`);
      continue;
    }
    for (const path of p.Imports ?? []) {
      if (path === 'syscall/js' && room !== 'wasm') wrong.push(`${room} imports syscall/js; only wasm/*_js.go may`);
      const other = roomOf(path);
      if (other === undefined) continue;
      if (!(LEVELS[other] < LEVELS[room])) wrong.push(`${room} (level ${LEVELS[room]}) imports ${other} (level ${LEVELS[other] ?? 'none'})`);
      if (room.startsWith('reduce') && !other.startsWith('reduce')) wrong.push(`${room} imports ${other}; reduce knows pixels and colour only`);
    }
  }
  return wrong;
}

function roomOf(path) {
  return path.startsWith(`${MODULE}/`) ? path.slice(MODULE.length + 1) : undefined;
}

/** What `go list` says of every package, for one system. */
function list(env) {
  const out = execFileSync('go', ['list', '-json=ImportPath,Imports', './...'], { env: { ...process.env, ...env }, encoding: 'utf8', maxBuffer: 1 << 26 });
  return out.split(/^(?=\{)/m).filter((s) => s.trim() !== '').map((s) => JSON.parse(s));
}

/** Go files that use syscall/js and are not named for it. */
function misnamed() {
  return ['reduce', 'sizing', 'wasm']
    .flatMap((dir) => readdirSync(dir, { recursive: true }).map((f) => join(dir, f)))
    .filter((f) => f.endsWith('.go') && readFileSync(f, 'utf8').includes('"syscall/js"') && !/^wasm\/[a-z]+_js\.go$/.test(f))
    .map((f) => `${f} uses syscall/js; only wasm/*_js.go may`);
}

if (import.meta.url === `file://${process.argv[1]}`) {
  const wrong = [...wrongArrows(list({})), ...wrongArrows(list({ GOOS: 'js', GOARCH: 'wasm' })), ...misnamed()];
  for (const w of new Set(wrong)) console.error(`arrows: ${w}`);
  if (wrong.length > 0) process.exit(1);
  console.log('arrows: all point down');
}
