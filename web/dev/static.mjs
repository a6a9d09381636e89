// Gathers what the page serves as it is: its own static files, the demo
// drawings, what the first screen shows while the engine loads, and what a device
// needs to keep the page as an app.
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';

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

/** The ground of the icons and of the page while it opens: the worktop's. */
const GROUND = '#dedbd4';

/** The house mark on its ground. A device may cut an icon to a circle of four fifths of
 * its side ("maskable", Web App Manifest, appendix of icon masks): the mark stays within. */
async function icon(name, side, share) {
  const mark = Math.round(side * share);
  const drawn = await sharp(readFileSync(join(web, 'static/mark.svg')), { density: (72 * mark) / 32 }).resize(mark, mark).png().toBuffer();
  const background = share < 1 ? GROUND : { r: 0, g: 0, b: 0, alpha: 0 };
  await sharp({ create: { width: side, height: side, channels: 4, background } }).composite([{ input: drawn, gravity: 'centre' }]).png({ compressionLevel: 9 }).toFile(join(to, 'icons', name));
}

mkdirSync(join(to, 'icons'));
await icon('mark-192.png', 192, 1);
await icon('mark-512.png', 512, 1);
await icon('mark-cut-512.png', 512, 0.72);
await icon('mark-touch-180.png', 180, 0.8);
writeFileSync(join(web, 'public/manifest.webmanifest'), JSON.stringify({
  name: 'badgewright — from drawing to enamel pin',
  short_name: 'badgewright',
  description: 'See a drawing as an enamel pin: colours, size, posts and price. It stays on this device.',
  id: './',
  start_url: './',
  scope: './',
  display: 'standalone',
  background_color: GROUND,
  theme_color: GROUND,
  icons: [
    { src: './static/icons/mark-192.png', sizes: '192x192', type: 'image/png' },
    { src: './static/icons/mark-512.png', sizes: '512x512', type: 'image/png' },
    { src: './static/icons/mark-cut-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
  ],
}));
