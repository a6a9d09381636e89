import { spawn } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { Builder, Capabilities, Key } from 'selenium-webdriver';
import { Driver } from './driver.mjs';

/** How long the driver program may take to answer its first request, ms. */
const START = 20_000;

const KEYS = { Enter: Key.ENTER, Escape: Key.ESCAPE, Tab: Key.TAB, Control: Key.CONTROL, Shift: Key.SHIFT, Delete: Key.DELETE };

/** WebKitGTK's small browser, over WebDriver; it wants a display, which xvfb-run gives. */
export async function webkit() {
  const port = 4700 + Math.floor(Math.random() * 200);
  const program = spawn('xvfb-run', ['-a', '-s', '-screen 0 1400x1000x24', 'WebKitWebDriver', `--port=${port}`], { stdio: 'ignore', detached: true });
  const server = `http://127.0.0.1:${port}`;
  try {
    await answering(`${server}/status`);
    const wants = new Capabilities({ browserName: 'MiniBrowser', 'webkitgtk:browserOptions': { binary: browserPath(), args: ['--automation'] } });
    const session = await new Builder().usingServer(server).withCapabilities(wants).build();
    await session.manage().setTimeouts({ script: 120_000, pageLoad: 60_000 });
    return new Driver(rawOf(session, program));
  } catch (err) {
    end(program);
    throw err;
  }
}

const browserPath = () => process.env.WEBKIT ?? '/usr/lib/x86_64-linux-gnu/webkit2gtk-4.1/MiniBrowser';

async function answering(address) {
  const stop = Date.now() + START;
  for (;;) {
    try {
      if ((await fetch(address)).ok) return;
    } catch {
      // Not up yet.
    }
    if (Date.now() > stop) throw new Error(`WebKitWebDriver did not answer within ${START} ms`);
    await new Promise((r) => setTimeout(r, 100));
  }
}

function end(program) {
  try {
    process.kill(-program.pid);
  } catch {
    // It ended by itself.
  }
}

function rawOf(session, program) {
  const mouse = () => session.actions({ async: true });
  return {
    open: (address) => session.get(address),
    run: async (fn, args) => {
      const got = await session.executeAsyncScript(
        `const done = arguments[arguments.length - 1];
         Promise.resolve().then(() => (${fn})(...${JSON.stringify(args)})).then((value) => done({ value }), (e) => done({ error: String(e && e.stack || e) }));`,
      );
      if (got.error) throw new Error(got.error);
      return got.value ?? undefined;
    },
    clickAt: (x, y) => mouse().move({ x: Math.round(x), y: Math.round(y) }).press().release().perform(),
    dragFrom: (x0, y0, x1, y1) => mouse().move({ x: Math.round(x0), y: Math.round(y0) }).press().move({ x: Math.round(x1), y: Math.round(y1) }).release().perform(),
    keys: (text) => session.switchTo().activeElement().sendKeys(text),
    press: (chord) => session.switchTo().activeElement().sendKeys(Key.chord(...chord.split('+').map((k) => KEYS[k] ?? k.toLowerCase()))),
    viewport: ({ w, h }) => session.manage().window().setRect({ width: w, height: h }),
    scheme: async () => {},
    screenshot: async (path) => writeFileSync(path, await session.takeScreenshot(), 'base64'),
    requests: () => [],
    complaints: () => [],
    close: async () => {
      try {
        await session.quit();
      } finally {
        end(program);
      }
    },
  };
}
