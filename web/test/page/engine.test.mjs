// The engine and its client: the policy that binds them, crashes, stops, queue.
import assert from 'node:assert/strict';
import { createServer } from 'node:http';
import { join } from 'node:path';
import { after, before, describe, it } from 'node:test';
import { at, base64, call, drawings, serveHarness, servePage } from './house.mjs';

let server;
let d;
let picked;

before(async () => {
  server = await serveHarness();
  d = await at(server.address);
  picked = await d.evaluate((b) => globalThis.harness.projectOf(b, 'buoy.png'), base64(join(drawings, 'buoy.png')));
});
after(async () => {
  await d?.close();
  await server?.close();
});

/** The engine's worker, spoken to from outside the page. */
const worker = () => d.page.workers()[0];

describe('the policy', () => {
  // A host that welcomes everybody: only the policy keeps the page from it.
  let foreign;
  let visits = 0;
  before(async () => {
    foreign = createServer((_, res) => {
      visits++;
      res.writeHead(200, { 'access-control-allow-origin': '*' });
      res.end('welcome');
    });
    await new Promise((done) => foreign.listen(0, '127.0.0.1', done));
  });
  after(() => foreign?.close());

  const attempt = async (address) => {
    try {
      return `reached: ${(await (await fetch(address)).text()).slice(0, 20)}`;
    } catch (e) {
      return `stopped: ${e.name}`;
    }
  };

  it('keeps page and worker from foreign hosts, and only from those', async () => {
    const away = `http://127.0.0.1:${foreign.address().port}/`;
    assert.match(await d.evaluate(attempt, away), /^stopped/);
    assert.match(await worker().evaluate(attempt, away), /^stopped/);
    assert.equal(visits, 0, 'no request left');
    assert.match(await d.evaluate(attempt, server.address), /^reached/);
    assert.match(await worker().evaluate(attempt, server.address), /^reached/);
    assert.match(await attempt(away), /^reached/, 'the host does welcome visitors');
  });

  it('keeps worker from sockets and scripts of foreign hosts', async () => {
    const away = `127.0.0.1:${foreign.address().port}`;
    const before = visits;
    await worker().evaluate((a) => {
      for (const f of [() => new WebSocket(`ws://${a}/`), () => importScripts(`http://${a}/x.js`), () => new EventSource(`http://${a}/`)]) {
        try {
          f();
        } catch {
          // Thrown, as it should be; some are refused later and silently.
        }
      }
    }, away);
    await new Promise((r) => setTimeout(r, 300));
    assert.equal(visits, before);
  });

  it('is the policy of the page too', async () => {
    const page = await servePage();
    try {
      const html = await (await fetch(page.address)).text();
      const meta = /<meta http-equiv="Content-Security-Policy" content="([^"]+)"/.exec(html)?.[1].replaceAll('&#39;', "'");
      assert.equal(meta, "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; worker-src 'self' blob:; style-src 'self'; font-src 'self'; manifest-src 'self'; img-src 'self' blob: data:; connect-src 'self'; base-uri 'none'; form-action 'none'");
      assert.ok(html.indexOf('Content-Security-Policy') < html.indexOf('<script'), 'it stands before what it binds');
    } finally {
      await page.close();
    }
  });

  it('lets an SVG neither run scripts nor fetch', async () => {
    const away = `http://127.0.0.1:${foreign.address().port}/`;
    const before = visits;
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="300" height="300">
      <script>fetch('${away}'); globalThis.ran = true;</script><image xlink:href="${away}a.png" width="9" height="9"/>
      <style>@import url(${away}b.css);</style><circle cx="150" cy="150" r="100" fill="#a33" onload="fetch('${away}')"/>
      <circle cx="150" cy="150" r="60" fill="#33a"/></svg>`;
    const { opened, failure } = await d.evaluate((b) => globalThis.harness.open(b, 'sly.svg'), Buffer.from(svg).toString('base64'));
    assert.equal(failure, undefined);
    assert.ok(opened.suggested >= 2, 'what it shows is opened all the same');
    await new Promise((r) => setTimeout(r, 300));
    assert.equal(visits, before);
    assert.equal(await d.evaluate(() => globalThis.ran === true), false);
  });
});

describe('a crash', () => {
  const panic = () => worker().evaluate(() => globalThis.badgewrightCall('hello')).catch(() => {});

  it('between calls is mended and the drawing is still there', async () => {
    const first = await call(d, 'check', { picked });
    const old = worker();
    await panic();
    await d.waitFor(() => globalThis.harness.states.at(-1) === 'ready' && globalThis.harness.states.includes('restarting'));
    const again = await call(d, 'check', { picked });
    assert.deepEqual(again.answer, first.answer, 'the same answer as before');
    assert.notEqual(worker(), old, 'from another worker');
  });

  it('during a call is mended and the call is answered', async () => {
    const running = call(d, 'buys', { picked });
    await new Promise((r) => setTimeout(r, 60));
    await panic();
    const { answer, failure } = await running;
    assert.equal(failure, undefined);
    assert.ok(answer.rows.length > 0);
  });

  it('that happens at every try is told in words', async () => {
    const said = await d.evaluate(async () => {
      const { harness } = globalThis;
      // A request of the wrong kind for the bridge is a fault of ours: it panics.
      const real = Worker.prototype.postMessage;
      Worker.prototype.postMessage = function post(m, t) {
        return real.call(this, m.type === 'call' && m.name === 'touch' ? { ...m, bytes: 5 } : m, t ?? []);
      };
      try {
        await harness.engine.call('touch', {});
        return {};
      } catch (e) {
        return harness.said(e);
      } finally {
        Worker.prototype.postMessage = real;
      }
    });
    assert.equal(said.kind, 'crashed');
    assert.match(said.what, /fault of ours/);
    assert.ok((await call(d, 'quote', { picked })).answer, 'and the next call is answered');
  });
});

describe('the answers', () => {
  it('hold a value wherever their types promise one', async () => {
    const drawing = picked.project.order.designs[0].drawings[0].id;
    const asks = { hello: {}, ground: { drawing, ground: 'none' }, flats: { drawing, options: { count: 4, edits: [] } }, buys: { picked }, check: { picked }, quote: { picked }, picture: { picked, view: 'flat', longSide: 64 }, touch: { picked, x: 5, y: 5 } };
    for (const [name, ask] of Object.entries(asks)) {
      const { answer, failure } = await call(d, name, ask);
      assert.equal(failure, undefined, name);
      assert.deepEqual(nulls(answer, name), [], 'a list that is nil in Go is null here');
    }
  });
});

/** Places of an answer that hold null. */
function nulls(value, path) {
  if (value === null) return [path];
  return typeof value === 'object' ? Object.entries(value).flatMap(([k, v]) => nulls(v, `${path}.${k}`)) : [];
}

describe('the queue', () => {
  it('answers the newest of a lane and drops those between', async () => {
    const kinds = await d.evaluate(async (p) => {
      const { harness } = globalThis;
      await harness.engine.call('quote', { picked: p });
      const ask = (mm) => harness.engine.call('check', { picked: { ...p, project: { ...p.project, order: { ...p.project.order, designs: [{ ...p.project.order.designs[0], size: { mm, by: 'longest' } }] } } } }, { lane: 'check' });
      const all = await Promise.allSettled([30, 31, 32, 33, 34].map(ask));
      return all.map((r) => (r.status === 'fulfilled' ? r.value.answer.longest : r.reason.kind));
    }, picked);
    assert.equal(kinds.slice(1, 4).join(), 'superseded,superseded,superseded');
    assert.ok(Math.abs(kinds[0] - 30) < 1e-6 && Math.abs(kinds[4] - 34) < 1e-6, String(kinds));
  });

  it('stops a waiting call at once', async () => {
    const said = await d.evaluate(async (p) => {
      const { harness } = globalThis;
      const stop = new AbortController();
      const busy = harness.engine.call('picture', { picked: p, view: 'struck', longSide: 700 });
      const waiting = harness.engine.call('buys', { picked: p }, { signal: stop.signal });
      stop.abort();
      const kind = await waiting.then(() => 'answered', (e) => e.kind);
      await busy;
      return kind;
    }, picked);
    assert.equal(said, 'stopped');
  });

  it('stops a running call by its progress', async () => {
    const { kind, told } = await d.evaluate(async (b) => {
      const { harness } = globalThis;
      const stop = new AbortController();
      const file = new Blob([Uint8Array.from(atob(b), (c) => c.charCodeAt(0))]);
      let told = 0;
      const onProgress = (share) => {
        told = Math.max(told, share);
        stop.abort();
      };
      const kind = await harness.engine.openFiles([{ file, name: 'lighthouse.svg' }], 'auto', { signal: stop.signal, onProgress }).then(() => 'answered', (e) => e.kind);
      return { kind, told };
    }, base64(join(drawings, 'demo/lighthouse.svg')));
    assert.ok(told > 0 && told < 1, `was told of progress (${told})`);
    assert.equal(kind, 'stopped');
    assert.ok((await call(d, 'quote', { picked })).answer, 'what was open stays open');
  });

  it('moves bytes instead of copying them', async () => {
    const left = await d.evaluate(async () => {
      const bytes = new Uint8Array(1000);
      await globalThis.harness.engine.call('header', { fileName: 'x.png', size: 1000 }, { bytes }).catch(() => {});
      return bytes.byteLength;
    });
    assert.equal(left, 0);
  });
});
