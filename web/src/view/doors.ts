// The ways a drawing comes in: chosen, pasted, photographed, dropped, or one of ours.
import { open } from '../state/ask';
import { bringList, isList } from '../state/codes';
import { tell } from '../state/store';
import { go } from './go';

export const DEMOS = {
  lighthouse: 'Skerry Light',
  harbour: 'Skerry Harbour',
  buoy: 'Anchor Buoy',
} as const;

export type Demo = keyof typeof DEMOS;

export async function openDemo(demo: Demo): Promise<void> {
  const name = `${demo}.svg`;
  const got = await fetch(new URL(`./static/demo/${name}`, document.baseURI));
  if (!got.ok) {
    tell(`The example "${DEMOS[demo]}" did not come.`, 'Choose a drawing of your own, or load the page again.');
    return;
  }
  await open(new Blob([await got.arrayBuffer()], { type: 'image/svg+xml' }), name, DEMOS[demo]);
}

/** A list lands under Colours, wherever on the page it was let go. */
function showNews(): void {
  go('colours');
  document.querySelector('.list-news')?.scrollIntoView({ block: 'center' });
}

export function openFirst(files: FileList | null | undefined): void {
  const file = files?.[0];
  if (!file) return;
  if (isList(file.name)) void bringList(file, file.name).then(showNews);
  else void open(file, file.name);
}

/** Paste by button: browsers ask the person first, and some do not offer it at all. */
export async function pasteNow(): Promise<void> {
  try {
    for (const item of await navigator.clipboard.read()) {
      const type = item.types.find((t) => t.startsWith('image/'));
      if (type) {
        await open(await item.getType(type), `pasted.${type.slice(6).replace(/\+.*/, '')}`);
        return;
      }
    }
    tell('There is no picture to paste.', 'Copy one first, or choose its file.');
  } catch {
    tell('This browser keeps the clipboard closed to buttons.', 'Press Ctrl+V (or Cmd+V) here, or choose the file.');
  }
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
