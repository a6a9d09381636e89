// The first screen stands before the engine does, and says what the engine says.
import assert from 'node:assert/strict';
import { cpSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, describe, it } from 'node:test';
import { serve } from '../../dev/serve.mjs';
import { at, root, servePage } from './house.mjs';
import { counted, pick, ready } from './sheet.mjs';

const closing = [];
after(async () => {
  for (const close of closing) await close();
});

async function opened(server) {
  closing.push(() => server.close());
  const d = await at(server.address);
  closing.unshift(() => d.close());
  return d;
}

const drawn = (d) => d.waitFor(() => document.querySelector('.flipper .front canvas')?.width > 100 && document.querySelector('.title-block .verdict'));

describe('the first screen', () => {
  it('is there without any engine, and says that the engine did not come', async () => {
    const copy = mkdtempSync(join(tmpdir(), 'first-'));
    cpSync(join(root, 'web/dist'), copy, { recursive: true });
    for (const f of readdirSync(join(copy, 'assets')).filter((n) => n.endsWith('.wasm'))) rmSync(join(copy, 'assets', f));
    closing.push(() => rmSync(copy, { recursive: true }));
    const d = await opened(await serve(copy));
    await drawn(d);
    assert.match(await d.read('.title-block'), /6 enamels.*about EUR/);
    await d.waitForText('engine could not be loaded', '.note');
  });

  it('says the same as the engine once it has found it again', async () => {
    const server = await servePage();
    const d = await opened(server);
    await d.viewport(1800, 1300);
    await d.open(server.address);
    await drawn(d);
    const before = await d.read('.title-block');
    // The engine draws the pin at the size of this large sheet, which is not that of the kept picture.
    const kept = await d.evaluate(() => document.querySelector('.flipper .front canvas').width);
    await d.waitFor((w) => document.querySelector('.flipper .front canvas').width !== w, kept);
    await ready(d);
    assert.equal(await d.read('.title-block'), before);
  });

  it('takes a choice at once, and answers it when the engine is there', async () => {
    const d = await opened(await servePage());
    await drawn(d);
    await pick(d, 3);
    await d.waitFor(() => document.querySelector('.title-block')?.textContent.includes('3 enamels'));
    await ready(d);
    assert.equal(await counted(d), 3);
  });
});
