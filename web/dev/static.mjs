// Gathers what the page serves as it is: its own static files, the demo
// drawings, and what the first screen shows while the engine loads.
import { cpSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const web = fileURLToPath(new URL('..', import.meta.url));
const drawings = join(web, '../testdata/drawings/demo');
const to = join(web, 'public/static');

rmSync(join(web, 'public'), { recursive: true, force: true });
mkdirSync(join(to, 'demo'), { recursive: true });
cpSync(join(web, 'static'), to, { recursive: true });
cpSync(join(web, '../.build/first'), join(to, 'first'), { recursive: true });
for (const name of ['lighthouse.svg', 'harbour.svg', 'buoy.svg']) {
  if (!readdirSync(drawings).includes(name)) throw new Error(`testdata/drawings/demo has no ${name}, which the first screen shows`);
  cpSync(join(drawings, name), join(to, 'demo', name));
}

// The fonts of the papers are served with their licence, as it asks.
mkdirSync(join(to, 'licences'));
for (const font of ['noto-sans', 'noto-sans-jp']) {
  cpSync(join(web, 'node_modules/@expo-google-fonts', font, 'LICENSE_FONT'), join(to, 'licences', `${font}.txt`));
}
