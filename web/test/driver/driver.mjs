// The one way page tests speak to a browser. Each browser engine has an
// adapter that gives the few acts of `Raw`; everything else is built on them here.
import { createRequire } from 'node:module';
import { readFileSync } from 'node:fs';
import { basename, extname } from 'node:path';

/**
 * What an adapter must do.
 * @typedef {object} Raw
 * @property {(address: string) => Promise<void>} open        goes to an address and waits until it has loaded
 * @property {(fn: string, args: unknown[]) => Promise<unknown>} run  runs a function's source in the page and waits for its result
 * @property {(x: number, y: number) => Promise<void>} clickAt  presses and lets go at a place of the viewport, CSS px
 * @property {(x0: number, y0: number, x1: number, y1: number) => Promise<void>} dragFrom
 * @property {(text: string) => Promise<void>} keys             types text
 * @property {(key: string) => Promise<void>} press             presses one key, or a chord such as Control+Z
 * @property {(view: {w: number, h: number, scale: number}) => Promise<void>} viewport
 * @property {(scheme: 'light' | 'dark') => Promise<void>} scheme
 * @property {(path: string) => Promise<void>} screenshot
 * @property {() => string[]} requests   addresses asked for so far, where the adapter can tell
 * @property {() => string[]} complaints errors of the page so far, where the adapter can tell
 * @property {() => Promise<void>} close
 */

const TYPES = { '.png': 'image/png', '.jpg': 'image/jpeg', '.webp': 'image/webp', '.avif': 'image/avif', '.gif': 'image/gif', '.svg': 'image/svg+xml' };

/** How long a page may take to show what it was asked for, ms: far longer than
 * it takes, so that a busy machine fails no test. */
const PATIENCE = 60_000;

export class Driver {
  /** @param {Raw} raw */
  constructor(raw) {
    this.raw = raw;
  }

  open(address) {
    return this.raw.open(address);
  }

  /** Runs a function in the page. It sees its arguments and nothing else. */
  evaluate(fn, ...args) {
    return this.raw.run(fn.toString(), args);
  }

  /** Waits until a function in the page gives something, and returns it (true for an element). */
  async waitFor(fn, ...args) {
    const end = Date.now() + PATIENCE;
    for (;;) {
      const got = await this.raw.run(`async (...args) => { const got = await (${fn})(...args); return got instanceof Node ? true : got; }`, args);
      if (got) return got;
      if (Date.now() > end) throw new Error(`waited ${PATIENCE} ms in vain for ${fn} with ${JSON.stringify(args)}`);
      await new Promise((r) => setTimeout(r, 50));
    }
  }

  /** Waits until an element says something. */
  waitForText(text, selector = 'body') {
    return this.waitFor((t, s) => document.querySelector(s)?.textContent?.includes(t), text, selector);
  }

  /** The text of the first element a selector finds, or undefined. */
  read(selector) {
    return this.evaluate((s) => {
      const el = document.querySelector(s);
      return el instanceof HTMLInputElement || el instanceof HTMLSelectElement ? el.value : el?.textContent?.replace(/\s+/g, ' ').trim();
    }, selector);
  }

  count(selector) {
    return this.evaluate((s) => document.querySelectorAll(s).length, selector);
  }

  /** Clicks the middle of an element, found by selector and, where given, by
   * what it says or is called. */
  async click(selector, name) {
    const at = await this.waitFor(place, selector, name ?? '');
    await this.raw.clickAt(at.x, at.y);
  }

  /** Puts text into a field in place of what stands there, and leaves it. */
  async type(selector, text) {
    await this.waitFor((s) => {
      const el = document.querySelector(s);
      if (!el) return false;
      el.scrollIntoView({ block: 'center' });
      el.focus();
      el.select?.();
      return document.activeElement === el;
    }, selector);
    await this.raw.keys(text);
    await this.raw.press('Enter');
  }

  press(key) {
    return this.raw.press(key);
  }

  drag(x0, y0, x1, y1) {
    return this.raw.dragFrom(x0, y0, x1, y1);
  }

  /** Drops a file onto the page, as from a file manager. */
  async drop(path, name = basename(path)) {
    const file = await this.fileIn(path, name);
    await this.evaluate(dropFile, file);
  }

  /** Drops bytes under a name. */
  dropBytes(bytes, name) {
    return this.evaluate(dropFile, named(bytes, name));
  }

  /** Drops several files at once, each [bytes, name]. */
  dropTogether(...files) {
    return this.evaluate(dropFile, ...files.map(([bytes, name]) => named(bytes, name)));
  }

  /** Gives a file to a file field, as a file dialogue would. */
  choose(selector, bytes, name) {
    return this.evaluate(chooseFile, selector, named(bytes, name));
  }

  fileIn(path, name) {
    return named(readFileSync(path), name);
  }

  viewport(w, h, scale = 1) {
    return this.raw.viewport({ w, h, scale });
  }

  scheme(scheme) {
    return this.raw.scheme(scheme);
  }

  screenshot(path) {
    return this.raw.screenshot(path);
  }

  /** What the accessibility rules of axe-core find wrong, one line each. */
  async unfit() {
    if (!(await this.evaluate(() => 'axe' in globalThis))) await this.raw.run(`() => { ${axe()}; return true; }`, []);
    return this.evaluate(async () => {
      const { violations } = await globalThis.axe.run(document, { resultTypes: ['violations'] });
      return violations.flatMap((v) => v.nodes.map((n) => `${v.id} (${v.impact}): ${n.target.join(' ')}: ${n.failureSummary ?? v.help}`));
    });
  }

  requests() {
    return this.raw.requests();
  }

  complaints() {
    return this.raw.complaints();
  }

  close() {
    return this.raw.close();
  }
}

const axe = () => readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

function place(selector, name) {
  const named = (el) => name === '' || (el.getAttribute('aria-label') ?? '').includes(name) || (el.textContent ?? '').replace(/\s+/g, ' ').includes(name) || el.getAttribute('title') === name;
  for (const el of document.querySelectorAll(selector)) {
    if (!named(el)) continue;
    el.scrollIntoView({ block: 'center', inline: 'center', behavior: 'instant' });
    const r = el.getBoundingClientRect();
    if (r.width > 0 && r.height > 0) return { x: r.x + r.width / 2, y: r.y + r.height / 2 };
  }
  return undefined;
}

/** A file as the page can make it. */
function named(bytes, name) {
  return { base64: Buffer.from(bytes).toString('base64'), name, type: TYPES[extname(name)] ?? '' };
}

function chooseFile(selector, { base64, name, type }) {
  const data = new DataTransfer();
  data.items.add(new File([Uint8Array.from(atob(base64), (c) => c.charCodeAt(0))], name, { type }));
  const input = document.querySelector(selector);
  input.files = data.files;
  input.dispatchEvent(new Event('change', { bubbles: true }));
}

function dropFile(...files) {
  const data = new DataTransfer();
  for (const { base64, name, type } of files) {
    const bytes = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
    data.items.add(new File([bytes], name, { type }));
  }
  const at = document.elementFromPoint(innerWidth / 2, innerHeight / 2) ?? document.body;
  for (const kind of ['dragenter', 'dragover', 'drop']) {
    at.dispatchEvent(new DragEvent(kind, { dataTransfer: data, bubbles: true, cancelable: true }));
  }
}
