// Pixels in and out of files, and what can be told of them.
import sharp from 'sharp';

// One thread and no memory of files: the machine may be shared, and times are taken.
sharp.concurrency(1);
sharp.cache(false);

/** An RGBA picture {w, h, data} from a file or its bytes. */
export async function read(file) {
  const { data, info } = await sharp(file).toColourspace('srgb').ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  return { w: info.width, h: info.height, data };
}

const asSharp = (p, channels) => sharp(p.data, { raw: { width: p.w, height: p.h, channels } });

export const writePNG = (file, p) => asSharp(p, 4).png({ compressionLevel: 6 }).toFile(file);
export const writeRGB = (file, p) => asSharp(p, 3).png({ compressionLevel: 6 }).toFile(file);
export const writeGrey = (file, p) => asSharp(p, 1).png({ compressionLevel: 6 }).toFile(file);

/** A map of one byte a pixel, as written by writeGrey or by the engine. */
export async function readGrey(file) {
  const { data, info } = await sharp(file).toColourspace('b-w').extractChannel(0).raw().toBuffer({ resolveWithObject: true });
  return { w: info.width, h: info.height, data };
}

/** Quality in per cent; chroma at half resolution, as chats and cameras do it. */
export const writeJPEG = (file, p, quality) => asSharp(p, 4).flatten({ background: '#fff' }).jpeg({ quality, chromaSubsampling: '4:2:0' }).toFile(file);

export const PNG = (p) => asSharp(p, 4).png({ compressionLevel: 1 }).toBuffer();

/** Alpha from which a pixel counts as part of the drawing. */
const SEEN = 128;

/** A copy whose every pixel is opaque or clear, colours as they are. */
export function hardened(p) {
  const data = Buffer.from(p.data);
  for (let i = 3; i < data.length; i += 4) {
    if (data[i] >= SEEN) data[i] = 255;
    else data.fill(0, i - 3, i + 1);
  }
  return { w: p.w, h: p.h, data };
}

/** No colour: clear, or not told apart. */
export const NONE = 255;

const slot = new Int32Array(1 << 24).fill(-1);

/** The distinct colours of the seen pixels, how many pixels each has, and which
 * one each pixel has (-1: not seen). */
export function census(p) {
  const colours = [];
  const counts = [];
  const of = new Int32Array(p.w * p.h).fill(-1);
  for (let i = 0, o = 0; i < of.length; i++, o += 4) {
    if (p.data[o + 3] < SEEN) continue;
    const c = (p.data[o] << 16) | (p.data[o + 1] << 8) | p.data[o + 2];
    let k = slot[c];
    if (k < 0) {
      k = slot[c] = colours.length;
      colours.push(c);
      counts.push(0);
    }
    counts[k]++;
    of[i] = k;
  }
  for (const c of colours) slot[c] = -1;
  return { colours, counts, of };
}

/** Labels and palette of a picture that has few colours already. */
export function flatsOf(p) {
  const { colours, of } = census(p);
  if (colours.length >= NONE) throw new Error(`A picture of ${colours.length} colours is not flat.`);
  return { labels: Uint8Array.from(of, (k) => (k < 0 ? NONE : k)), palette: colours };
}
