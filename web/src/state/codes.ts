// A maker's colour list: read by the engine, kept in the order, and held
// against the colours of the version on the sheet.
import { computed, effect, signal, untracked } from '@preact/signals';
import type { Codes, ColourListRead, Project, White } from '../engine/wire.gen';
import { withColourList } from './colouring';
import { atHand, faultOf } from './desk';
import { designOf, drawingOf, versionOf } from './project';
import * as s from './store';

/** More than the engine takes of a list; it says so in words. */
const READ_MOST = 2 << 20;

/** The last list that was brought, and what became of it. */
export interface Brought {
  file: Blob;
  fileName: string;
  read?: ColourListRead;
  /** Why nothing of it could be read. */
  refused?: { what: string; do: string };
}

export const brought = signal<Brought | undefined>(undefined);
export const codes = signal<{ project: Project; codes: Codes } | undefined>(undefined);
/** The fold is open: it stays so while lists come and go. */
export const foldOpen = signal(false);
export const colourList = computed(() => s.asked.value?.order.colourList);

/** Reads a list and takes it into use; one that cannot be read leaves the one in use. */
export async function bringList(file: Blob, fileName: string, white: White = ''): Promise<void> {
  foldOpen.value = true;
  const engine = atHand.value;
  if (!engine) return;
  const base: Brought = { file, fileName };
  try {
    const bytes = new Uint8Array(await file.slice(0, READ_MOST).arrayBuffer());
    const { answer } = await engine.call('colourlist', { fileName, white }, { bytes });
    brought.value = { ...base, read: answer };
    if (answer.list.entries.length > 0) s.change((p) => withColourList(p, answer.list), `Colour list ${answer.list.name}`);
    s.said.value = answer.words;
  } catch (err) {
    brought.value = { ...base, refused: faultOf(err) };
  }
}

/** A file that is a table by its name, and no drawing. */
export function isList(fileName: string): boolean {
  return /\.(csv|tsv|txt)$/i.test(fileName);
}

/** What the codes hang on; a change of size or plating asks nothing anew. */
function cause(p: Project): unknown[] {
  const d = designOf(p);
  return [p.order.colourList, d?.drawings, d?.colours, d?.edits, versionOf(p)?.colours];
}

/** Keeps the codes up with the project: called once. */
export function followCodes(): () => void {
  let last: unknown[] = [];
  return effect(() => {
    const p = s.asked.value;
    const engine = atHand.value;
    const list = p?.order.colourList;
    if (!p || !engine || !list || !drawingOf(p)) {
      last = [];
      untracked(() => (codes.value = undefined));
      return;
    }
    const now = cause(p);
    if (now.length === last.length && now.every((v, i) => v === last[i])) return;
    last = now;
    untracked(() => {
      const picked = s.picked(p);
      engine.call('codes', { picked, list }, { lane: 'codes' })
        .then(({ answer }) => {
          if (last === now) codes.value = { project: p, codes: answer };
        })
        // What is wrong with the drawing the sheet says; a newer wish is no failure.
        .catch(() => {
          if (last === now) codes.value = undefined;
        });
    });
  });
}
