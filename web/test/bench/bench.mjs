// What the engine and the page take in Chromium: medians, in ms, and memory.
//   node test/bench/bench.mjs [runs]
import { join } from 'node:path';
import { readFileSync } from 'node:fs';
import { execFileSync } from 'node:child_process';
import { cpus } from 'node:os';
import { serve } from '../../dev/serve.mjs';
import { chromium } from '../driver/chromium.mjs';
import { root } from '../page/house.mjs';

const RUNS = Number(process.argv[2] ?? 7);

/** Working rasters, in megapixels: the proportions of the lighthouse. */
const SIZES = [1, 2.5, 4];

const median = (all) => [...all].sort((a, b) => a - b)[Math.floor(all.length / 2)];
const cell = (v) => (v === undefined ? '-' : v.toFixed(v < 10 ? 1 : 0)).padStart(8);

async function main() {
  const page = await serve(join(root, 'web/dist'), { port: 4400 });
  const harness = await serve(join(root, '.build/harness'), { port: 4500 });
  const d = await chromium();
  const version = await d.browser.version();
  await d.close();
  console.log(`\n${version}, ${cpus().length} cores (${cpus()[0]?.model.trim()}), medians of ${RUNS} in ms\n`);
  try {
    await starts(page.address, harness.address);
    for (const kind of ['flat', 'jpeg']) {
      console.log(`\n${kind === 'flat' ? 'flat art (PNG)' : 'the same as JPEG'}, working raster of${''.padEnd(10)}${SIZES.map((m) => `${m} Mpx`.padStart(8)).join(' ')}`);
      const columns = [];
      for (const mpx of SIZES) columns.push(await steps(harness.address, kind, mpx));
      for (const name of Object.keys(columns[0])) console.log(`  ${name.padEnd(44)}${columns.map((c) => cell(c[name])).join(' ')}`);
    }
    await large(page.address);
  } finally {
    await page.close();
    await harness.close();
  }
}

/** Cold start: a new browser each time, nothing cached. */
async function starts(pageAddress, harnessAddress) {
  const first = [];
  const screen = [];
  for (let i = 0; i < Math.min(RUNS, 5); i++) {
    const a = await chromium();
    await a.open(harnessAddress);
    first.push(await a.evaluate(async () => {
      await globalThis.harness.engine.call('hello', {});
      return performance.now();
    }));
    await a.close();
    const b = await chromium();
    await b.page.evaluateOnNewDocument(watchFirstScreen);
    await b.open(pageAddress);
    screen.push(await b.waitFor(() => globalThis.firstScreen));
    await b.close();
  }
  console.log(`navigation to the first answer of the engine      ${cell(median(first))}`);
  console.log(`navigation to the first useful screen (the pin drawn, with its price)${cell(median(screen))}`);
}

/** Notes when the pin and its title block are there. */
function watchFirstScreen() {
  const look = () => {
    const c = document.querySelector('.flipper .front canvas');
    if (c?.width > 100 && document.querySelector('.title-block .verdict')) globalThis.firstScreen = performance.now();
    else requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}

/** The steps of a session on one drawing, in a fresh engine. */
async function steps(address, kind, mpx) {
  const svg = readFileSync(join(root, 'testdata/drawings/demo/lighthouse.svg')).toString('base64');
  const d = await chromium();
  try {
    await d.open(address);
    await d.evaluate(() => globalThis.harness.engine.call('hello', {}));
    return await d.evaluate(session, svg, kind, mpx, RUNS);
  } finally {
    await d.close();
  }
}

/** Runs in the page. The pixels are made here, so that a working raster larger
 * than files are brought to can be measured too. */
async function session(svg, kind, mpx, runs) {
  const { engine, pickedOf } = globalThis.harness;
  const mid = (all) => all.sort((a, b) => a - b)[Math.floor(all.length / 2)];
  const timed = async (f) => {
    const t = performance.now();
    await f();
    return performance.now() - t;
  };
  const image = new Image();
  image.src = `data:image/svg+xml;base64,${svg}`;
  await image.decode();
  const ratio = image.width / image.height;
  const h = Math.round(Math.sqrt((mpx * 1e6) / ratio));
  const w = Math.round(h * ratio);
  const canvas = new OffscreenCanvas(w, h);
  const pen = canvas.getContext('2d', { willReadFrequently: true });
  if (kind === 'jpeg') {
    pen.fillStyle = '#fff';
    pen.fillRect(0, 0, w, h);
  }
  pen.drawImage(image, 0, 0, w, h);
  const file = await canvas.convertToBlob(kind === 'jpeg' ? { type: 'image/jpeg', quality: 0.85 } : { type: 'image/png' });

  const out = {};
  const pixels = async () => {
    const bitmap = await createImageBitmap(file);
    pen.clearRect(0, 0, w, h);
    pen.drawImage(bitmap, 0, 0);
    bitmap.close();
    return new Uint8Array(pen.getImageData(0, 0, w, h).data.buffer);
  };
  out['decode and draw (browser)'] = await timed(pixels);
  const open = async (id) => (await engine.call('open', { id, fileName: `bench.${kind}`, w, h, fileW: w, fileH: h, space: 'srgb', ground: 'auto' }, { bytes: await pixels() })).answer;
  let opened;
  out['open: background and flats, first'] = await timed(async () => (opened = await open('first'))) - out['decode and draw (browser)'];
  const picked = await pickedOf(opened.design);
  out['full check, first (cold)'] = await timed(() => engine.call('check', { picked }));

  const counts = [3, 5, 4, 6, 2, 7, 8, 9, 10, 11, 12, 1];
  const labels = [];
  for (const count of counts.slice(0, Math.max(runs, 5))) labels.push(await timed(() => engine.call('flats', { drawing: 'first', options: { count, edits: [] } })));
  out['changed count to new labels'] = mid(labels);

  const at = (change) => ({ ...picked, project: { ...picked.project, order: { ...picked.project.order, designs: [{ ...picked.project.order.designs[0], ...change }] } } });
  const platedIn = (p, i) => {
    const design = p.project.order.designs[0];
    const plating = ['gold', 'silver', 'copper', 'rose', 'black-nickel'][i % 5];
    return { ...p, project: { ...p.project, order: { ...p.project.order, designs: [{ ...design, versions: [{ ...design.versions[0], plating }] }] } } };
  };
  const again = async (n, change) => {
    const all = [];
    for (let i = 0; i < n; i++) all.push(await timed(() => engine.call('check', { picked: at(change(i)) })));
    return mid(all);
  };
  out['full check, another count (warm engine)'] = await again(Math.min(runs, 8), (i) => ({ colours: [5, 3, 6, 4, 7, 2, 8, 9][i] ?? 5 }));
  out['full check, another size'] = await again(runs, (i) => ({ size: { mm: 30 + i, by: 'longest' } }));
  out['price alone'] = await (async () => {
    const all = [];
    for (let i = 0; i < runs; i++) all.push(await timed(() => engine.call('quote', { picked })));
    return mid(all);
  })();
  out['what each colour buys'] = await timed(() => engine.call('buys', { picked }));
  const pictures = [];
  for (let i = 0; i < Math.min(runs, 5); i++) pictures.push(await timed(() => engine.call('picture', { picked: at({ size: { mm: 31 + i, by: 'longest' } }), view: 'struck', longSide: 1024 })));
  out['picture as struck, 1024 px'] = mid(pictures);
  const { eye } = (await engine.call('hello', {})).answer;
  const sight = { viewing: { distance: 1000, acuity: eye.acuity }, thresholds: eye.thresholds, cloth: eye.cloths[0].rgb };
  const seen = async (name, ask) => {
    const all = [];
    for (let i = 0; i < Math.max(runs, 5); i++) all.push(await timed(() => engine.call(name, ask(i))));
    return mid(all);
  };
  const plain = { recipes: [] };
  await engine.call('reading', { picked: at(plain), ...sight });
  out['what can be read, another size'] = await seen('reading', (i) => ({ picked: at({ ...plain, size: { mm: 31 + i / 2, by: 'longest' } }), ...sight }));
  out['colours that meet, another plating'] = await seen('neighbours', (i) => ({ picked: platedIn(at(plain), i), thresholds: sight.thresholds }));
  const long = Math.round(Math.sqrt(mpx * 1e6 * Math.max(ratio, 1 / ratio)));
  out['look from a distance, another size'] = await seen('look', (i) => ({ picked: at({ size: { mm: 31 + i, by: 'longest' } }), longSide: long, cloth: sight.cloth, viewing: { distance: 400, acuity: 1 } }));
  out['look, another distance'] = await seen('look', (i) => ({ picked, longSide: long, cloth: sight.cloth, viewing: { distance: 400 + 10 * i, acuity: 1 } }));
  const curves = [];
  for (let i = 0; i < Math.min(runs, 5); i++) {
    const of = await globalThis.harness.handing(at({ size: { mm: 31 + i, by: 'longest' } }));
    curves.push(await timed(() => engine.call('shapes', { of })));
  }
  out['clean curves in mm'] = mid(curves);
  const next = [];
  for (const id of ['second', 'third', 'fourth']) {
    const bytes = await pixels();
    next.push(await timed(async () => {
      const { answer } = await engine.call('open', { id, fileName: `next.${kind}`, w, h, fileW: w, fileH: h, space: 'srgb', ground: 'auto' }, { bytes });
      await engine.call('check', { picked: await pickedOf(answer.design) });
    }));
  }
  out['another drawing opened and checked (warm engine)'] = mid(next);
  return out;
}

/** Memory of the tab with a 24-megapixel file open. */
async function large(address) {
  const d = await chromium();
  try {
    await d.open(address);
    await d.waitFor(() => document.querySelector('.title-block .verdict'));
    // The engine finds the demo again first; its thumbnail comes last.
    await d.waitFor(() => document.querySelector('#drawing summary canvas')?.width > 2 && !document.querySelector('.progress'));
    await new Promise((r) => setTimeout(r, 2000));
    const before = tabMemory(d);
    await d.evaluate(async () => {
      const c = new OffscreenCanvas(6000, 4000);
      const pen = c.getContext('2d');
      pen.fillStyle = '#fff';
      pen.fillRect(0, 0, 6000, 4000);
      for (let i = 0; i < 60; i++) {
        pen.fillStyle = ['#23415f', '#c3362b', '#f1c04a', '#2f7f7b'][i % 4];
        pen.beginPath();
        pen.arc(600 + ((i * 911) % 4800), 500 + ((i * 577) % 3000), 200 + ((i * 131) % 300), 0, 7);
        pen.fill();
        pen.lineWidth = 30;
        pen.strokeStyle = '#14161c';
        pen.stroke();
      }
      const file = new File([await c.convertToBlob({ type: 'image/jpeg', quality: 0.9 })], 'large.jpg', { type: 'image/jpeg' });
      c.width = c.height = 0;
      const data = new DataTransfer();
      data.items.add(file);
      document.body.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
    });
    let peak = 0;
    const watch = setInterval(() => (peak = Math.max(peak, tabMemory(d))), 50);
    const t = Date.now();
    await d.waitFor(() => document.querySelector('#drawing')?.textContent.includes('large.jpg') && !document.querySelector('.title-block.behind'));
    const took = Date.now() - t;
    await new Promise((r) => setTimeout(r, 4000));
    clearInterval(watch);
    console.log(`\na 24-megapixel JPEG: opened and checked in ${took} ms; the tab's process held ${before} MB before, ${peak} MB at most, ${tabMemory(d)} MB after`);
  } finally {
    await d.close();
  }
}

/** Memory, in MB, that the tab's process holds for itself alone, by the system's own account. */
function tabMemory(d) {
  const children = execFileSync('ps', ['-eo', 'pid=,args='], { encoding: 'utf8' }).split('\n').filter((l) => l.includes('--type=renderer') && l.includes(profileOf(d)));
  let most = 0;
  for (const line of children) {
    try {
      const status = readFileSync(`/proc/${Number.parseInt(line, 10)}/smaps_rollup`, 'utf8');
      const kB = [...status.matchAll(/^Private_(?:Clean|Dirty):\s+(\d+)/gm)].reduce((sum, m) => sum + Number(m[1]), 0);
      most = Math.max(most, kB / 1024);
    } catch {
      // It ended meanwhile.
    }
  }
  return Math.round(most);
}

/** What tells this browser's processes from another's. */
function profileOf(d) {
  return d.browser.process().spawnargs.find((a) => a.startsWith('--user-data-dir='))?.split('=')[1] ?? '';
}

await main();
