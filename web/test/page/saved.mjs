// Files that the page hands to the person, caught on their way out.

/** From now on a file that is saved is kept in the page instead of downloaded. */
export const catchFiles = (d) => d.evaluate(() => {
  globalThis.saved = [];
  const blobs = new Map();
  const make = URL.createObjectURL.bind(URL);
  URL.createObjectURL = (blob) => {
    const url = make(blob);
    blobs.set(url, blob);
    return url;
  };
  HTMLAnchorElement.prototype.click = function click() {
    if (this.download) globalThis.saved.push({ name: this.download, blob: blobs.get(this.href) });
  };
});

/** Waits for the next file and returns its name, its bytes and, of a picture, its pixels' size. */
export async function savedFile(d, name) {
  const got = await d.waitFor(async (want) => {
    const file = globalThis.saved.find((f) => f.name.includes(want));
    if (!file) return undefined;
    const bytes = new Uint8Array(await file.blob.arrayBuffer());
    const bitmap = await createImageBitmap(file.blob);
    const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
    canvas.getContext('2d').drawImage(bitmap, 0, 0);
    const { data } = canvas.getContext('2d').getImageData(0, 0, bitmap.width, bitmap.height);
    let clear = 0;
    let white = 0;
    for (let i = 0; i < data.length; i += 4) {
      if (data[i + 3] === 0) clear++;
      if (data[i + 3] === 255 && Math.min(data[i], data[i + 1], data[i + 2]) === 255) white++;
    }
    const all = bitmap.width * bitmap.height;
    let text = '';
    for (const b of bytes.slice(0, 200)) text += String.fromCharCode(b);
    return { name: file.name, type: file.blob.type, head: text, w: bitmap.width, h: bitmap.height, clear: clear / all, white: white / all };
  }, name);
  await d.evaluate((want) => { globalThis.saved = globalThis.saved.filter((f) => !f.name.includes(want)); }, name);
  return got;
}

/** The scale that a PNG states, px to the mm (PNG specification, 11.3.4.3 pHYs: px to the metre, unit 1). */
export function pxPerMM(head) {
  const at = head.indexOf('pHYs');
  if (at < 0 || head.charCodeAt(at + 12) !== 1) return undefined;
  const four = (i) => [0, 1, 2, 3].reduce((v, k) => 256 * v + head.charCodeAt(at + i + k), 0);
  return four(4) === four(8) ? four(4) / 1000 : undefined;
}
