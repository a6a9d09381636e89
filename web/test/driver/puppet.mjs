// The part that Chromium and Firefox share: both speak through puppeteer-core.
import { launch } from 'puppeteer-core';
import { Driver } from './driver.mjs';

/** As the page marks that some work is kept. */
const KEPT = 'badgewright.kept';

/** Starts a browser and returns a driver of one page in it. */
export async function puppet({ offline, keeps, ...options }) {
  return tab(await launch({ headless: true, acceptInsecureCerts: false, protocolTimeout: 120_000, ...options }), { offline, keeps });
}

/** Another page of a browser, with a driver of its own. Only where it is tested
 * does a page have an offline worker, which would fetch all of the page beside the
 * test, and bring back the work of the page before it. */
export async function tab(browser, { offline = false, keeps = false } = {}) {
  const page = await browser.newPage();
  if (!keeps) await page.evaluateOnNewDocument((kept) => { try { localStorage.removeItem(kept); } catch { /* A page without a store. */ } }, KEPT);
  if (!offline) await page.evaluateOnNewDocument(() => delete Navigator.prototype.serviceWorker);
  const requests = [];
  const complaints = [];
  page.on('request', (r) => requests.push(r.url()));
  page.on('pageerror', (e) => complaints.push(String(e)));
  page.on('console', (m) => {
    if (m.type() === 'error') complaints.push(m.text());
  });
  const driver = new Driver(rawOf(browser, page, requests, complaints));
  return Object.assign(driver, { page, browser });
}

function rawOf(browser, page, requests, complaints) {
  return {
    open: async (address) => {
      await page.goto(address, { waitUntil: 'load', timeout: 60_000 });
    },
    run: (fn, args) => page.evaluate(`(${fn})(...${JSON.stringify(args)})`),
    clickAt: (x, y) => page.mouse.click(x, y),
    dragFrom: async (x0, y0, x1, y1) => {
      await page.mouse.move(x0, y0);
      await page.mouse.down();
      await page.mouse.move((x0 + x1) / 2, (y0 + y1) / 2, { steps: 4 });
      await page.mouse.move(x1, y1, { steps: 4 });
      await page.mouse.up();
    },
    keys: (text) => page.keyboard.type(text),
    press: async (chord) => {
      const keys = chord.split('+');
      const last = keys.pop();
      for (const k of keys) await page.keyboard.down(k);
      await page.keyboard.press(last);
      for (const k of keys.reverse()) await page.keyboard.up(k);
    },
    viewport: ({ w, h, scale }) => page.setViewport({ width: w, height: h, deviceScaleFactor: scale }),
    scheme: (value) => page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value }]),
    screenshot: async (path) => {
      await page.screenshot({ path });
    },
    requests: () => requests,
    complaints: () => complaints,
    close: () => browser.close(),
  };
}
