// What must work in every browser engine: the first screen, a file of one's
// own, fewer colours, another size, the policy.
import assert from 'node:assert/strict';
import { createServer } from 'node:http';
import { join } from 'node:path';
import { after, before, describe, it } from 'node:test';
import { drawings, fixtures, servePage } from '../page/house.mjs';
import { ready, section, sizeOf } from '../page/sheet.mjs';

/** Runs the smoke tests in one browser. */
export function smoke(name, start) {
  describe(name, () => {
    let server;
    let foreign;
    let visits = 0;
    let d;

    before(async () => {
      server = await servePage();
      foreign = createServer((_, res) => {
        visits++;
        res.writeHead(200, { 'access-control-allow-origin': '*' });
        res.end('welcome');
      });
      await new Promise((done) => foreign.listen(0, '127.0.0.1', done));
      d = await start();
      await d.viewport(1280, 900);
      await d.open(server.address);
      await ready(d);
    });
    after(async () => {
      await d?.close();
      foreign?.close();
      await server?.close();
    });

    it('shows the demo struck, and what it costs', async () => {
      assert.match(await d.read('.title-block'), /about EUR [\d.]+/);
      assert.deepEqual(d.complaints(), []);
    });

    for (const [path, file] of [[drawings, 'buoy.png'], [drawings, 'lighthouse-white.jpg'], [fixtures, 'lighthouse.webp'], [drawings, 'demo/harbour.svg']]) {
      it(`opens ${file}`, async () => {
        const last = file.split('/').at(-1);
        await d.drop(join(path, file));
        await d.waitForText(last, '#drawing');
        await ready(d);
      });
    }

    it('cuts it to three enamels', async () => {
      await section(d, 'colours');
      await d.evaluate(() => document.querySelector('#colours input[name=count][value="3"]').click());
      await d.waitForText('3 enamels', '.title-block');
      await ready(d);
    });

    it('takes a typed size', async () => {
      await d.click('.dim-label.w button');
      await d.type('.dim-label.w input', '41');
      await d.waitForText('41 ×', '.title-block');
      await ready(d);
      assert.ok(Math.abs((await sizeOf(d)).w - 41) < 0.051);
    });

    it('lets neither the page nor a worker started from a blob ask a foreign host', async () => {
      const away = `http://127.0.0.1:${foreign.address().port}/`;
      const said = await d.evaluate(async (address) => {
        const attempt = 'fetch(address).then(() => "reached", () => "stopped")';
        const page = await fetch(address).then(() => 'reached', () => 'stopped');
        const text = `const address = ${JSON.stringify(address)}; ${attempt}.then((s) => postMessage(s));`;
        const worker = new Worker(URL.createObjectURL(new Blob([text], { type: 'text/javascript' })));
        const inWorker = await new Promise((done) => worker.addEventListener('message', (e) => done(e.data)));
        worker.terminate();
        return { page, inWorker };
      }, away);
      assert.deepEqual(said, { page: 'stopped', inWorker: 'stopped' });
      assert.equal(visits, 0);
    });
  });
}
