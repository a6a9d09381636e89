// The drawings as files, made once: clean, as JPEG and photographed, each with its truth.
import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { LOT, chanceOf, chosen } from './choose.mjs';
import { ciede2000, hex } from './colour.mjs';
import { drawn, drawnPNG } from './draw.mjs';
import { readJSON, room, stampOf, writeJSON } from './house.mjs';
import { photographed } from './photo.mjs';
import { NONE, census, hardened, read, readGrey, writeGrey, writeJPEG, writePNG, writeRGB } from './raster.mjs';

/** Side of a drawing, px; and of what a photograph is taken of. */
const SIDE = 1200;
const PRINT = 2400;

const JPEG_QUALITY = 80;

/** CIEDE2000 to white within which white paper is no colour more. */
const PAPER_COLOUR = 2;

const STAMP = stampOf('choose.mjs', 'draw.mjs', 'photo.mjs', 'pictures.mjs', 'package-lock.json');

export const VARIANTS = ['clean', 'jpeg', 'photo'];

/** Photographs of the same scenes that mix in encoded values: measured when asked for. */
export const EXTRA = 'photo-encoded';

const MIXING = { photo: 'light', [EXTRA]: 'encoded' };

/** Every drawing of the lot: [{name, style, dir, palette, stamp}]. Renders what is missing. */
export async function pictures(say) {
  const path = join(room(), `chosen-${LOT}.json`);
  let list = readJSON(path);
  if (list?.stamp !== STAMP) {
    say('choosing drawings');
    list = { stamp: STAMP, drawings: chosen() };
    writeJSON(path, list);
  }
  const out = [];
  for (const drawing of list.drawings) out.push(await rendered(drawing, say));
  return out;
}

async function rendered(drawing, say) {
  const dir = room('pictures', LOT, drawing.name);
  const meta = readJSON(join(dir, 'meta.json'));
  if (meta?.stamp === STAMP) return { ...meta, dir };
  say(`drawing ${drawing.name}`);
  writeFileSync(join(dir, 'drawing.svg'), drawing.svg);
  const { palette, labels } = truthOf(drawing.svg, SIDE);
  writeFileSync(join(dir, 'clean.png'), drawnPNG(drawing.svg, SIDE, 'soft'));
  const clean = await read(join(dir, 'clean.png'));
  await writePNG(join(dir, 'clean-hard.png'), hardened(clean));
  await writeJPEG(join(dir, 'jpeg.jpg'), clean, JPEG_QUALITY);
  await writeGrey(join(dir, 'truth.png'), { w: SIDE, h: SIDE, data: labels });
  await photograph(drawing, palette, dir);
  const whole = { name: drawing.name, collection: drawing.collection, style: drawing.style, palette: palette.map(hex), stamp: STAMP };
  writeJSON(join(dir, 'meta.json'), whole);
  return { ...whole, dir };
}

/** Labels of the drawing without soft edges, by a palette in the order of area. */
function truthOf(svg, side, known) {
  const { colours, counts, of } = census(drawn(svg, side, 'crisp'));
  const palette = known ?? colours.map((c, i) => [c, counts[i]]).sort((a, b) => b[1] - a[1] || a[0] - b[0]).map(([c]) => c);
  const rank = colours.map((c) => palette.indexOf(c));
  return { palette, labels: Buffer.from(of.map((k) => (k < 0 ? NONE : rank[k]))) };
}

async function photograph(drawing, palette, dir) {
  const large = truthOf(drawing.svg, PRINT, palette);
  for (const [name, mixing] of Object.entries(MIXING)) {
    const shot = photographed(drawn(drawing.svg, PRINT, 'soft'), { w: PRINT, h: PRINT, data: large.labels }, chanceOf(drawing.name), mixing);
    const size = { w: shot.w, h: shot.h };
    await writeRGB(join(dir, `${name}.png`), { ...size, data: shot.photo });
    await writeRGB(join(dir, `${name}-level.png`), { ...size, data: shot.level });
    await writeGrey(join(dir, `${name}-truth.png`), { ...size, data: shot.truth });
  }
}

/**
 * One variant of a drawing, ready to be measured. K counts the drawing's own
 * colours; `asked` is what a quantiser that sees the whole picture is asked
 * for, one more where white ground is in view that is no colour of the drawing.
 */
export async function variantOf(picture, variant) {
  const at = (name) => join(picture.dir, name);
  const truth = await readGrey(at(MIXING[variant] ? `${variant}-truth.png` : 'truth.png'));
  const palette = picture.palette.map((h) => Number.parseInt(h.slice(1), 16));
  const files = { clean: ['clean.png', 'clean-hard.png', 'clean.png'], jpeg: ['jpeg.jpg', 'jpeg.jpg', 'jpeg.jpg'] }[variant] ?? [`${variant}.png`, `${variant}.png`, `${variant}-level.png`];
  if (!existsSync(at(files[0]))) throw new Error(`${picture.name}: ${files[0]} is missing; remove .build/colour and try again.`);
  const whiteInk = palette.some((c) => ciede2000(c, 0xffffff) < PAPER_COLOUR);
  return {
    name: picture.name, variant, w: truth.w, h: truth.h, truth: truth.data, palette,
    K: palette.length, asked: palette.length + (variant === 'clean' || whiteInk ? 0 : 1),
    file: at(files[0]), peerFile: at(files[1]), levelFile: at(files[2]), clear: variant === 'clean',
  };
}
