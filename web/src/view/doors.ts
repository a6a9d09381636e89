// The ways a drawing comes in: chosen, pasted, photographed, dropped, or one of ours.
import type { NamedFile } from '../engine/client';
import { open, revise } from '../state/ask';
import { bringList, isList } from '../state/codes';
import { tell } from '../state/store';
import { DEMOS } from '../words/demos';
import { go } from './go';

export type Demo = keyof typeof DEMOS;

export async function openDemo(demo: Demo): Promise<void> {
  const got = await demoFile(demo);
  if (got) await open(got.files, got.name);
}

/** The file of an example, and the name it goes by; nothing when it did not come. */
export async function demoFile(demo: Demo): Promise<{ files: [NamedFile]; name: string } | undefined> {
  const name = `${demo}.svg`;
  const got = await fetch(new URL(`./static/demo/${name}`, document.baseURI));
  if (!got.ok) {
    tell(`The example "${DEMOS[demo]}" did not come.`, 'Choose a drawing of your own, or load the page again.');
    return undefined;
  }
  return { files: [{ file: new Blob([await got.arrayBuffer()], { type: 'image/svg+xml' }), name }], name: DEMOS[demo] };
}

/** A list lands under Colours, wherever on the page it was let go. */
function showNews(): void {
  go('colours');
  document.querySelector('.list-news')?.scrollIntoView({ block: 'center' });
}

/** A project file, by its name. */
export const isProject = (name: string) => /\.badgewright$/i.test(name);

/** One picture is a drawing; two together are its lines and its colours. */
export function openFirst(files: FileList | null | undefined): void {
  const [first] = files ?? [];
  if (first && isProject(first.name)) void import('../state/keepFile').then((k) => k.fromFile(first, first.name));
  else if (first && isList(first.name)) void bringList(first, first.name).then(showNews);
  else withPictures(files, (pictures) => void open(pictures));
}

/** The new version of the drawing on the sheet. */
export function reviseFirst(files: FileList | null): void {
  withPictures(files, (pictures) => void revise(pictures));
}

function withPictures(files: FileList | null | undefined, use: (pictures: [NamedFile, NamedFile?]) => void): void {
  const pictures = filesOf(files);
  if (pictures) use(pictures);
}

/** One picture, or two that are the lines and the colours of one drawing; more are told. */
export function filesOf(files: FileList | null | undefined): [NamedFile, NamedFile?] | undefined {
  const [first, second, more] = [...(files ?? [])];
  if (!first) return undefined;
  if (more) tell('These are more than two pictures.', 'Bring one drawing, or its lines and its colours as two pictures.');
  else return second ? [named(first), named(second)] : [named(first)];
  return undefined;
}

const named = (file: File) => ({ file, name: file.name });

/** Paste by button: browsers ask the person first, and some do not offer it at all. */
export async function pasteNow(): Promise<void> {
  const got = await pastedFile();
  if (got) await open(got);
}

/** The picture on the clipboard; that there is none is told. */
export async function pastedFile(): Promise<[NamedFile] | undefined> {
  try {
    for (const item of await navigator.clipboard.read()) {
      const type = item.types.find((t) => t.startsWith('image/'));
      if (type) return [{ file: await item.getType(type), name: `pasted.${type.slice(6).replace(/\+.*/, '')}` }];
    }
    tell('There is no picture to paste.', 'Copy one first, or choose its file.');
  } catch {
    tell('This browser keeps the clipboard closed to buttons.', 'Press Ctrl+V (or Cmd+V) here, or choose the file.');
  }
  return undefined;
}

/** Listens for drops and pastes anywhere on the page. */
export function listen(onOver: (over: boolean) => void): () => void {
  const over = (e: DragEvent) => {
    if (!e.dataTransfer?.types.includes('Files')) return;
    e.preventDefault();
    onOver(true);
  };
  const out = (e: DragEvent) => {
    if (!e.relatedTarget) onOver(false);
  };
  const drop = (e: DragEvent) => {
    e.preventDefault();
    onOver(false);
    openFirst(e.dataTransfer?.files);
  };
  const paste = (e: ClipboardEvent) => {
    if (e.clipboardData?.files.length) {
      e.preventDefault();
      openFirst(e.clipboardData.files);
    }
  };
  addEventListener('dragover', over);
  addEventListener('dragleave', out);
  addEventListener('drop', drop);
  addEventListener('paste', paste);
  return () => {
    removeEventListener('dragover', over);
    removeEventListener('dragleave', out);
    removeEventListener('drop', drop);
    removeEventListener('paste', paste);
  };
}
