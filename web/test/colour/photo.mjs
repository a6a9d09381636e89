// A simulated photograph of a printed drawing on a sheet that fills the view:
// light from one side, tinted paper, a camera held not quite square, blur, noise.
import { LINEAR, decoded, encoded } from './colour.mjs';
import { NONE } from './raster.mjs';

/** Long side of the photograph, px, and the part of it that the drawing takes. */
const SIDE = 1280;
const TAKES = 0.84;
/** How far a corner of the drawing may be from where it should be, as a share of the side. */
const ASKEW = 0.02;
/** Linear light at the brightest spot of the paper. */
const EXPOSURE = [0.8, 0.92];
/** Share of that light which is gone at the darkest corner. */
const FALL = [0.25, 0.42];
/** Linear reflectance of the paper: red is 1. */
const TINT_GREEN = [0.955, 0.985];
const TINT_BLUE = [0.88, 0.95];
/** Gaussian blur, px. */
const BLUR = [0.8, 1.3];
/** Noise in linear light: variance grows with the light (photons) on a floor (the sensor). */
const PHOTON = 3e-4;
const SENSOR = 2e-3;

/** Where colours mix under blur: in light, as a lens does it, or in encoded
 * values, as a picture softened after it was taken. */
const MIXES = {
  light: { from: (byte) => LINEAR[byte], toLight: (v) => v },
  encoded: { from: (byte) => byte / 255, toLight: decoded },
};

/**
 * The photograph, its truth map, and the photograph with the known light and
 * paper taken out (what perfect levelling would give).
 * soft: RGBA, colours multiplied by alpha, larger than SIDE; labels: truth of the same size.
 */
export function photographed(soft, labels, rand, mixing) {
  const mix = MIXES[mixing];
  const between = ([from, to]) => from + (to - from) * rand();
  const view = viewOf(rand);
  const tint = [1, between(TINT_GREEN), between(TINT_BLUE)];
  const light = lightOf(rand, between(EXPOSURE), between(FALL));
  const seen = blurred(sceneOf(inkOf(soft, mix), soft, view), between(BLUR));
  const photo = Buffer.alloc(3 * SIDE * SIDE);
  const level = Buffer.alloc(3 * SIDE * SIDE);
  const bell = bellOf(rand);
  for (let i = 0; i < SIDE * SIDE; i++) {
    for (let c = 0; c < 3; c++) {
      const v = mix.toLight(seen[3 * i + c]) * light[i] * tint[c];
      const noisy = v + bell() * Math.sqrt(PHOTON * v + SENSOR * SENSOR);
      photo[3 * i + c] = Math.round(encoded(noisy));
      level[3 * i + c] = Math.round(encoded(LINEAR[photo[3 * i + c]] / (light[i] * tint[c])));
    }
  }
  return { w: SIDE, h: SIDE, photo, level, truth: truthOf(labels, view) };
}

/** Takes a place in the photograph to a place in the drawing, both 0..1 of a side. */
function viewOf(rand) {
  const edge = (1 - TAKES) / 2;
  const corners = [[0, 0], [1, 0], [1, 1], [0, 1]].map(([x, y]) => [x, y].map((v) => edge + v * TAKES + (2 * rand() - 1) * ASKEW));
  const m = inverse(toQuad(corners));
  return (x, y) => {
    const w = m[6] * x + m[7] * y + m[8];
    return [(m[0] * x + m[1] * y + m[2]) / w, (m[3] * x + m[4] * y + m[5]) / w];
  };
}

/** Heckbert (1989), "Fundamentals of texture mapping", 2.2.3: unit square to quadrilateral. */
function toQuad([[x0, y0], [x1, y1], [x2, y2], [x3, y3]]) {
  const [dx1, dx2, sx] = [x1 - x2, x3 - x2, x0 - x1 + x2 - x3];
  const [dy1, dy2, sy] = [y1 - y2, y3 - y2, y0 - y1 + y2 - y3];
  const den = dx1 * dy2 - dx2 * dy1;
  const g = (sx * dy2 - dx2 * sy) / den;
  const h = (dx1 * sy - sx * dy1) / den;
  return [x1 - x0 + g * x1, x3 - x0 + h * x3, x0, y1 - y0 + g * y1, y3 - y0 + h * y3, y0, g, h, 1];
}

/** The adjugate: an inverse up to a factor, which a projective map does not mind. */
function inverse([a, b, c, d, e, f, g, h, i]) {
  return [e * i - f * h, c * h - b * i, b * f - c * e, f * g - d * i, a * i - c * g, c * d - a * f, d * h - e * g, b * g - a * h, a * e - b * d];
}

/** One lamp: the light falls with the square of the distance from its brightest spot. */
function lightOf(rand, most, fall) {
  const [lx, ly] = [rand() * SIDE, rand() * SIDE * 0.3];
  const far = Math.max(...[[0, 0], [SIDE, 0], [SIDE, SIDE], [0, SIDE]].map(([x, y]) => (x - lx) ** 2 + (y - ly) ** 2));
  return Float64Array.from({ length: SIDE * SIDE }, (_, i) => {
    const d = ((i % SIDE) - lx) ** 2 + (Math.floor(i / SIDE) - ly) ** 2;
    return most * (1 - (fall * d) / far);
  });
}

/** Places inside a pixel where the scene is looked at. */
const WITHIN = [0.25, 0.75];

/** Reflectance of drawing on white paper, as the camera sees it, before light. */
function sceneOf(ink, soft, view) {
  const out = new Float32Array(3 * SIDE * SIDE);
  const at = [0, 0, 0];
  for (let y = 0; y < SIDE; y++) {
    for (let x = 0; x < SIDE; x++) {
      for (const sy of WITHIN) for (const sx of WITHIN) {
        const [u, v] = view((x + sx) / SIDE, (y + sy) / SIDE);
        look(ink, soft.w, soft.h, u * soft.w - 0.5, v * soft.h - 0.5, at);
        for (let c = 0; c < 3; c++) out[3 * (y * SIDE + x) + c] += at[c] / (WITHIN.length * WITHIN.length);
      }
    }
  }
  return out;
}

/** Reflectance of every pixel of the drawing over white. */
function inkOf(soft, mix) {
  const out = new Float32Array(3 * soft.w * soft.h);
  for (let i = 0; i < soft.w * soft.h; i++) {
    const a = soft.data[4 * i + 3];
    for (let c = 0; c < 3; c++) {
      const straight = a === 0 ? 0 : Math.min(255, Math.round((soft.data[4 * i + c] * 255) / a));
      out[3 * i + c] = (mix.from(straight) * a) / 255 + 1 - a / 255;
    }
  }
  return out;
}

/** Between four pixels; white outside. */
function look(ink, w, h, x, y, into) {
  const [x0, y0] = [Math.floor(x), Math.floor(y)];
  if (x0 < 0 || y0 < 0 || x0 >= w - 1 || y0 >= h - 1) return into.fill(1);
  const [fx, fy] = [x - x0, y - y0];
  const o = 3 * (y0 * w + x0);
  for (let c = 0; c < 3; c++) {
    const top = ink[o + c] * (1 - fx) + ink[o + 3 + c] * fx;
    const low = ink[o + 3 * w + c] * (1 - fx) + ink[o + 3 * w + 3 + c] * fx;
    into[c] = top * (1 - fy) + low * fy;
  }
  return into;
}

function truthOf(labels, view) {
  const out = Buffer.alloc(SIDE * SIDE, NONE);
  for (let i = 0; i < out.length; i++) {
    const [u, v] = view(((i % SIDE) + 0.5) / SIDE, (Math.floor(i / SIDE) + 0.5) / SIDE);
    const [x, y] = [Math.floor(u * labels.w), Math.floor(v * labels.h)];
    if (x >= 0 && y >= 0 && x < labels.w && y < labels.h) out[i] = labels.data[y * labels.w + x];
  }
  return out;
}

/** Gaussian blur of three channels, along rows and then columns; edges repeat. */
function blurred(from, sigma) {
  const r = Math.ceil(3 * sigma);
  const bell = Array.from({ length: 2 * r + 1 }, (_, i) => Math.exp(-((i - r) ** 2) / (2 * sigma * sigma)));
  const sum = bell.reduce((a, b) => a + b, 0);
  const along = (src, step, other) => {
    const out = new Float32Array(src.length);
    for (let line = 0; line < SIDE; line++) {
      for (let p = 0; p < SIDE; p++) {
        const o = 3 * (line * other + p * step);
        for (let k = -r; k <= r; k++) {
          const q = 3 * (line * other + Math.min(SIDE - 1, Math.max(0, p + k)) * step);
          const weight = bell[k + r] / sum;
          for (let c = 0; c < 3; c++) out[o + c] += src[q + c] * weight;
        }
      }
    }
    return out;
  };
  return along(along(from, 1, SIDE), SIDE, 1);
}

/** Normal deviates from uniform ones (Box & Muller, 1958). */
function bellOf(rand) {
  let spare;
  return () => {
    if (spare !== undefined) {
      const z = spare;
      spare = undefined;
      return z;
    }
    const r = Math.sqrt(-2 * Math.log(1 - rand()));
    const t = 2 * Math.PI * rand();
    spare = r * Math.sin(t);
    return r * Math.cos(t);
  };
}
