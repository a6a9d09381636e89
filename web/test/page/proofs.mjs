// Makers' proofs as pictures and as a PDF, drawn from a drawing with a known edit
// by another renderer (sharp): turned, made smaller, on a white sheet with words.
import { readFileSync } from 'node:fs';
import sharp from 'sharp';

const WORDS = `<svg xmlns="http://www.w3.org/2000/svg" width="1400" height="1200"><rect width="100%" height="100%" fill="none"/>
<text x="60" y="90" font-size="34" font-family="sans-serif">Proof 1, size 36 mm</text>
<path d="M1180 1010h160m-16 -12l16 12l-16 12" stroke="#222" fill="none" stroke-width="3"/><text x="1060" y="1120" font-size="28" font-family="sans-serif">plating: gold</text></svg>`;

/** A sheet with the drawing on it, one colour changed to another; JPEG bytes. */
export async function sheetOf(path, from, to, { turn = 0, size = 760 } = {}) {
  const { data, info } = await sharp(readFileSync(path)).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  for (let i = 0; i < data.length; i += 4) {
    if (from.every((v, k) => Math.abs(data[i + k] - v) < 14)) to.forEach((v, k) => (data[i + k] = v));
  }
  const pin = await sharp(data, { raw: info }).resize(size, size, { fit: 'inside' }).rotate(turn, { background: '#ffffff00' }).png().toBuffer();
  return sharp({ create: { width: 1400, height: 1200, channels: 3, background: '#ffffff' } })
    .composite([{ input: pin, left: 280, top: 180 }, { input: Buffer.from(WORDS), left: 0, top: 0 }])
    .jpeg({ quality: 85 }).toBuffer();
}

/** A PDF of one page, wide and high in mm, with a JPEG over all of it, after a
 * first page that is empty (ISO 32000-1, 7.5: the structure of a file). */
export function pdfOf(jpeg, w, h, mm) {
  const [pw, ph] = [mm, (mm * h) / w].map((v) => (v * 72) / 25.4);
  const page = (contents, resources) => `<</Type/Page/Parent 2 0 R/MediaBox[0 0 ${pw.toFixed(2)} ${ph.toFixed(2)}]/Contents ${contents} 0 R/Resources<<${resources}>>>>`;
  const draw = `q ${pw.toFixed(2)} 0 0 ${ph.toFixed(2)} 0 0 cm /P Do Q`;
  const objects = [
    '<</Type/Catalog/Pages 2 0 R>>', '<</Type/Pages/Kids[3 0 R 4 0 R]/Count 2>>', page(5, ''), page(6, '/XObject<</P 7 0 R>>'),
    '<</Length 1>>stream\n \nendstream', `<</Length ${draw.length}>>stream\n${draw}\nendstream`,
  ].map((o, i) => Buffer.from(`${i + 1} 0 obj${o}endobj\n`));
  objects.push(Buffer.concat([Buffer.from(`7 0 obj<</Type/XObject/Subtype/Image/Width ${w}/Height ${h}/ColorSpace/DeviceRGB/BitsPerComponent 8/Filter/DCTDecode/Length ${jpeg.length}>>stream\n`), jpeg, Buffer.from('\nendstream endobj\n')]));
  const head = Buffer.from('%PDF-1.4\n');
  let at = head.length;
  const places = objects.map((o) => { const was = at; at += o.length; return was; });
  const xref = `xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${places.map((p) => `${String(p).padStart(10, '0')} 00000 n \n`).join('')}trailer<</Size ${objects.length + 1}/Root 1 0 R>>\nstartxref\n${at}\n%%EOF\n`;
  return Buffer.concat([head, ...objects, Buffer.from(xref)]);
}
