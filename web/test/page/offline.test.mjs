// The page with the network gone, and a new version of it offered.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { appendFileSync, cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, it } from 'node:test';
import { serve } from '../../dev/serve.mjs';
import { chromium } from '../driver/chromium.mjs';
import { at, root } from './house.mjs';
import { bring } from './pin.mjs';
import { ready, section } from './sheet.mjs';

const PATH = '/some/shelf/';
const buoy = Buffer.from(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 600 600" width="600" height="600">
<circle cx="300" cy="300" r="250" fill="#2f5d7c" stroke="#16181d" stroke-width="18"/>
<circle cx="300" cy="330" r="90" fill="#c8402f" stroke="#16181d" stroke-width="18"/></svg>`);

let folder;
let server;
let d;

before(async () => {
  folder = mkdtempSync(join(tmpdir(), 'page-'));
  cpSync(join(root, 'web/dist'), folder, { recursive: true });
  server = await serve(folder, { path: PATH });
  d = await at(server.address, () => chromium({ offline: true, keeps: true }));
  await ready(d);
});
after(async () => {
  await d?.close();
  await server?.close();
  rmSync(folder, { recursive: true, force: true });
});

it('once it says "Ready offline" it works with nobody to ask', async () => {
  await d.waitForText('Ready offline', '.maker');
  await server.close();
  const before = d.complaints().length;
  await d.open(server.address);
  await ready(d);
  await bring(d, buoy, 'Buoy');
  assert.match(await d.read('.title-block'), /enamels/);
  // The second program, and the example that is fetched.
  await section(d, 'order');
  await d.waitForText('EUR', '#order');
  await d.click('.examples button', 'harbour');
  await d.waitFor(() => document.querySelector('.title-block .name input')?.value === 'Skerry Harbour');
  await ready(d);
  assert.deepEqual(d.complaints().slice(before).filter((c) => !c.includes('sw.js')), []);
});

it('it can be kept as an app', async () => {
  const { icons, ...manifest } = await d.evaluate(async () => (await fetch(document.querySelector('link[rel=manifest]').href)).json());
  assert.deepEqual([manifest.start_url, manifest.scope, manifest.display], ['./', './', 'standalone']);
  // Web App Manifest: what is installed wants an icon of 192 px and one of 512 px at least.
  const sides = await d.evaluate((all) => Promise.all(all.map(async ({ src, sizes }) => {
    const bitmap = await createImageBitmap(await (await fetch(new URL(src, document.querySelector('link[rel=manifest]').href))).blob());
    return `${bitmap.width}x${bitmap.height}` === sizes ? sizes : `${sizes} is ${bitmap.width}x${bitmap.height}`;
  })), icons);
  assert.deepEqual(sides, ['192x192', '512x512', '512x512']);
});

it('a new version is offered and waits for a yes', async () => {
  appendFileSync(join(folder, 'static/demo/buoy.svg'), '<!-- a new version -->');
  execFileSync(process.execPath, [join(root, 'web/dev/offline.mjs'), folder]);
  server = await serve(folder, { path: PATH, port: Number(new URL(server.address).port) });
  await d.open(server.address);
  await d.waitForText('A new version is here', '.maker');
  await ready(d);
  const isNew = () => d.evaluate(async () => (await (await fetch(new URL('static/demo/buoy.svg', document.baseURI))).text()).includes('a new version'));
  assert.equal(await isNew(), false, 'nothing changes under what is being done');
  const over = d.page.waitForNavigation({ timeout: 60_000 });
  await d.click('.maker button', 'use it now');
  await over;
  await d.waitFor(() => document.querySelector('.title-block .name input')?.value === 'Skerry Harbour');
  assert.equal(await isNew(), true);
});
