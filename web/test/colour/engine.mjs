// Our own contender: the native program, one JSON line in and one out.
import { spawn } from 'node:child_process';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { packed } from './colour.mjs';
import { NONE, readGrey } from './raster.mjs';
import { root, work } from './house.mjs';

/** ENGINE names another build to measure. */
export const PROGRAM = process.env.ENGINE ?? join(root, '.build/engine-native');

/** A program that answers each line with one line, started when first asked. */
export function lineProgram(path) {
  let child;
  let lines;
  const start = () => {
    child = spawn(path, [], { stdio: ['pipe', 'pipe', 'inherit'] });
    lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
  };
  return {
    async ask(request) {
      if (!child) start();
      child.stdin.write(`${JSON.stringify(request)}\n`);
      const { value, done } = await lines.next();
      if (done) throw new Error(`${path} ended while it was asked ${JSON.stringify(request)}.`);
      const reply = JSON.parse(value);
      if (reply.error) throw new Error(`${path}: ${reply.error.words ?? JSON.stringify(reply.error)}`);
      return reply;
    },
    close() {
      child?.stdin.end();
      child = undefined;
    },
  };
}

const engine = lineProgram(PROGRAM);
export const closeEngine = () => engine.close();

/** The flats of a drawing in a file at several counts, roles off. */
export async function ourFlats(file, counts, ground) {
  const labels = join(work(), 'labels.png');
  const begun = performance.now();
  const opened = (await engine.ask({ call: 'open', file, ask: { ground } })).answer;
  const opening = performance.now() - begun;
  const at = [];
  for (const count of counts) {
    const asked = performance.now();
    const { flats } = (await engine.ask({ call: 'flats', ask: { options: { count, rolesOff: true, edits: [] } }, labels })).answer;
    const ms = opening + performance.now() - asked;
    const palette = flats.map((f) => packed(f.rgb.r, f.rgb.g, f.rgb.b));
    at.push({ palette, labels: (await readGrey(labels)).data, ms });
    rmSync(labels);
  }
  return { opened, at };
}

/** Ours, asked for all flats of the drawing; it finds the ground by itself. */
export async function ours(v) {
  const { opened, at: [flat] } = await ourFlats(v.file, [v.K], 'auto');
  let [spilt, ground] = [0, 0];
  for (let i = 0; i < v.truth.length; i++) {
    if (v.truth[i] !== NONE) continue;
    ground++;
    if (flat.labels[i] !== NONE) spilt++;
  }
  return { ...flat, extra: { suggested: opened.suggested, lined: opened.lined, ground: opened.ground, spilt: ground === 0 ? 0 : spilt / ground } };
}
