// A project as one file: made of what is on the sheet, and opened from one.
import type { FileDrawing, FilePhoto, Opened, Project } from '../engine/wire.gen';
import { atHand, faultOf } from './desk';
import { current, follow, layNew, leave } from './keep';
import { drawingsIn, picturesIn, withDrawings, withPictures } from './keepRecord';
import { thumbOf } from './keepThumb';
import { freshName, photosNamed, takeIn, type Photo } from './photos';
import { saveFile } from './save';
import * as s from './store';

type Bytes = Uint8Array<ArrayBuffer>;

function joined(all: readonly Bytes[]): Bytes {
  const out = new Uint8Array(all.reduce((n, b) => n + b.length, 0));
  let at = 0;
  for (const b of all) {
    out.set(b, at);
    at += b.length;
  }
  return out;
}

const bytesOf = async (b: Blob): Promise<Bytes> => new Uint8Array(await b.arrayBuffer());

/** Hands the project on the sheet to the person as one file. */
export async function toFile(): Promise<void> {
  const engine = atHand.value;
  const project = s.history.value?.now;
  if (!engine || !project) return;
  await told('Saving the project', async () => {
    const all: Bytes[] = [];
    const drawings: FileDrawing[] = [];
    for (const id of drawingsIn(project)) {
      const files: FileDrawing['files'] = [];
      for (const { file, name } of engine.keptOf(id)?.files ?? []) {
        const bytes = await bytesOf(file);
        all.push(bytes);
        files.push({ name, size: bytes.length });
      }
      if (files.length > 0) drawings.push({ id, files });
    }
    const pictures: FilePhoto[] = [];
    for (const { id, blob } of photosNamed(picturesIn(project))) {
      const bytes = await bytesOf(blob);
      all.push(bytes);
      pictures.push({ id, size: bytes.length, type: blob.type });
    }
    const small = current.value?.thumb ?? (await thumbOf(s.front.value));
    const thumb = small ? await bytesOf(small) : new Uint8Array();
    const got = await engine.call('savefile', { project, drawings, pictures, thumb: thumb.length }, { bytes: joined([...all, thumb]) });
    if (got.bytes) saveFile(new Blob([got.bytes], { type: 'application/octet-stream' }), got.answer.fileName);
  });
}

/** Opens a project from a file; when it is refused, what was open stays. */
export async function fromFile(file: Blob, name: string): Promise<void> {
  const engine = atHand.value;
  if (!engine) return;
  await told(`Opening ${name}`, async () => {
    const { answer, bytes } = await engine.call('openfile', {}, { bytes: await bytesOf(file) });
    const next = parts(bytes ?? new Uint8Array());
    const { project: drawn, opened } = await bring(answer.project, answer.drawings, next);
    const { project, pictures } = named(drawn, answer.pictures ?? [], next);
    await leave();
    s.opened.value = { ...s.opened.value, ...opened };
    takeIn(pictures);
    layNew(project);
    follow();
    if (answer.notes.length > 0) s.tell(`${name} is open.`, answer.notes.join(' '));
  });
}

type Next = (size: number, type?: string) => Blob;

/** Cuts the bytes of a file into those of its parts, one after the other. */
function parts(bytes: Bytes): Next {
  let at = 0;
  return (size, type = '') => new Blob([bytes.slice(at, (at += size))], { type });
}

/** Gives the pictures of a file names of their own, those too that did not come with it. */
function named(project: Project, all: readonly FilePhoto[], next: Next): { project: Project; pictures: Photo[] } {
  const names = new Map(picturesIn(project).map((id) => [id, freshName('p')] as const));
  const pictures = all.flatMap(({ id, size, type }) => {
    const blob = next(size, type);
    const name = names.get(id);
    return name ? [{ id: name, blob }] : [];
  });
  return { project: withPictures(project, (id) => names.get(id) ?? id), pictures };
}

/** Opens the drawings of a file under names of their own. */
async function bring(project: Project, drawings: readonly FileDrawing[], next: Next): Promise<{ project: Project; opened: Record<string, Opened> }> {
  const names = new Map<string, string>();
  const opened: Record<string, Opened> = {};
  const grounds = new Map(project.order.designs.flatMap((d) => d.drawings.map((r) => [r.id, r.ground] as const)));
  for (const d of drawings) {
    const [first, second] = d.files.map((f) => ({ name: f.name, file: next(f.size) }));
    if (!first || !atHand.value) continue;
    const o = await atHand.value.openFiles(second ? [first, second] : [first], grounds.get(d.id) ?? 'auto');
    names.set(d.id, o.drawing);
    opened[o.drawing] = o;
  }
  return { project: withDrawings(project, names), opened };
}

async function told(doing: string, work: () => Promise<void>): Promise<void> {
  s.note.value = undefined;
  s.work.value = { doing, share: 0 };
  try {
    await work();
  } catch (err) {
    const fault = faultOf(err);
    s.tell(fault.what, fault.do);
  } finally {
    s.work.value = undefined;
  }
}
