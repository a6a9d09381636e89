// A contact sheet of one drawing: what there was, what came out, what is wrong.
import { join } from 'node:path';
import sharp from 'sharp';
import { unpacked as bytesOf } from './colour.mjs';
import { room } from './house.mjs';
import { assignedColours } from './measure.mjs';
import { NONE, PNG } from './raster.mjs';

/** Side of one picture on the sheet, px. */
const CELL = 640;
const GROUND = [236, 236, 236];
const WRONG = [255, 0, 128];
const PALE = 0.25;

function painted(v, colourAt) {
  const data = Buffer.alloc(4 * v.w * v.h, 255);
  for (let i = 0; i < v.w * v.h; i++) data.set(colourAt(i) ?? GROUND, 4 * i);
  return PNG({ w: v.w, h: v.h, data });
}

const flat = (v, labels, palette) => painted(v, (i) => (labels[i] === NONE ? undefined : bytesOf(palette[labels[i]])));

/** Right pixels pale, wrong ones loud. */
function wrong(v, labels, palette) {
  const truth = assignedColours(v, labels, palette);
  return painted(v, (i) => {
    if (v.truth[i] === NONE) return labels[i] === NONE ? undefined : [200, 200, 255];
    if (truth[v.truth[i]] !== labels[i]) return WRONG;
    return bytesOf(v.palette[v.truth[i]]).map((c) => 255 - PALE * (255 - c));
  });
}

/** One row for a variant: brought, true, and for each contender its flats and its faults. */
export async function sheetRow(v, answers) {
  const cells = [await sharp(v.file).flatten({ background: '#ececec' }).png().toBuffer(), await flat(v, v.truth, v.palette)];
  for (const { labels, palette } of answers) cells.push(await flat(v, labels, palette), await wrong(v, labels, palette));
  return cells;
}

export async function writeSheet(name, rows) {
  const layers = [];
  for (const [y, row] of rows.entries()) {
    for (const [x, cell] of row.entries()) layers.push({ input: await sharp(cell).resize(CELL, CELL, { fit: 'contain' }).png().toBuffer(), left: x * CELL, top: y * CELL });
  }
  const file = join(room('look'), `${name}.png`);
  await sharp({ create: { width: CELL * rows[0].length, height: CELL * rows.length, channels: 3, background: '#fff' } }).composite(layers).png().toFile(file);
  return file;
}
