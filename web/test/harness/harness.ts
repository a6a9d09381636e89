// The engine's client without the page, for tests and benchmarks: everything
// they may do hangs on one global value.
import type { CallName, CallOptions, EngineState } from '../../src/engine/client';
import { startEngine } from '../../src/engine/engine';
import type { GroundChoice, Picked, Project } from '../../src/engine/wire.gen';

const engine = startEngine();
const states: EngineState[] = [];
engine.onState((s) => states.push(s));

/** What a failed call says, as a plain value that tests can read. */
interface Said {
  what: string;
  do: string;
  kind: string;
}

function said(err: unknown): Said {
  const e = err as Partial<Said>;
  return { what: e.what ?? String(err), do: e.do ?? '', kind: e.kind ?? '' };
}

async function open(base64: string, name: string, ground: GroundChoice = 'auto') {
  return openBlob(new Blob([Uint8Array.from(atob(base64), (c) => c.charCodeAt(0))]), name, ground);
}

async function openBlob(file: Blob, name: string, ground: GroundChoice = 'auto') {
  try {
    return { opened: await engine.openFiles([{ file, name }], ground) };
  } catch (err) {
    return { failure: said(err) };
  }
}

/** Calls by name; pixels come back as a plain array of the places asked for. */
async function call(name: CallName, ask: never, places: [number, number][] = [], options: CallOptions = {}) {
  try {
    const { answer, bytes } = await engine.call(name, ask, options);
    const w = (answer as { w?: number }).w ?? 0;
    const at = places.map(([x, y]) => [...(bytes?.subarray(4 * (y * w + x), 4 * (y * w + x) + 4) ?? [])]);
    return { answer, at, bytes: bytes?.length ?? 0 };
  } catch (err) {
    return { failure: said(err) };
  }
}

/** A project of one design, as the page would make it of an opened drawing. */
async function projectOf(base64: string, name: string): Promise<{ project: Project; design: 0; version: 0 }> {
  const { opened, failure } = await open(base64, name);
  if (!opened) throw new Error(failure?.what);
  return pickedOf(opened.design);
}

async function pickedOf(design: Project['order']['designs'][number]) {
  const { blank } = (await engine.call('hello', {})).answer;
  const first = blank.order.designs[0];
  const versions = design.versions.length > 0 ? design.versions : (first?.versions ?? []);
  const project: Project = { ...blank, order: { ...blank.order, designs: [{ ...design, versions }] } };
  return { project, design: 0 as const, version: 0 as const };
}

/** Hands a version from one program to the other; returns its key there. */
async function handing(picked: Picked): Promise<string> {
  const { answer, bytes } = await engine.call('struck', { picked });
  return (await engine.call('hand', answer, bytes ? { bytes } : {})).answer.key;
}

const harness = { engine, states, open, openBlob, call, projectOf, pickedOf, handing, said };
export type Harness = typeof harness;
(globalThis as unknown as { harness: Harness }).harness = harness;
