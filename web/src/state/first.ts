// The first screen, found by the same engine when the page was built: it is
// shown while this engine loads, and found again once it has.
import type { Engine } from '../engine/client';
import type { Buys, Check, Header, Hello, Opened, Picture } from '../engine/wire.gen';
import { withOpened } from './project';
import * as s from './store';
import { whole } from './whole';

interface First {
  hello: Hello;
  header: Header;
  opened: Opened;
  check: Check;
  buys: Buys;
  picture: Picture;
}

/** How the demo's drawing is called in the answers that come with the page. */
export const DEMO_ID = 'first';

const KEPT = 'badgewright.kept';

/** The project that was on the sheet last; nothing on a first visit. */
export function keptFlag(): string | null {
  try {
    return localStorage.getItem(KEPT);
  } catch {
    return null;
  }
}

export function keepFlag(id: string | undefined): void {
  try {
    if (id) localStorage.setItem(KEPT, id);
    else localStorage.removeItem(KEPT);
  } catch {
    // A full or forbidden store: then projects are opened from their list.
  }
}

/** Lays the demo on the sheet under the given name; false when its files did not come. */
export async function showFirst(engine: Engine, name: string): Promise<boolean> {
  const [first, pixels, file] = await Promise.all([
    taken('first/sheet.json', (r) => r.json() as Promise<First>),
    taken('first/pin.webp', async (r) => pixelsOf(await r.blob())),
    taken('demo/lighthouse.svg', async (r) => new Blob([await r.arrayBuffer()], { type: 'image/svg+xml' })),
  ]);
  if (!first || !pixels || !file) return false;
  if (s.history.value) return true; // The person was faster.
  const shot = { picture: first.picture, pixels };
  const { drawing: id, design } = first.opened;
  engine.adopt(file, first.header, { id, fileName: design.drawings[0]?.fileName ?? '', ground: 'auto' });
  s.hello.value ??= first.hello;
  s.opened.value = { ...s.opened.value, [id]: first.opened };
  const project = withOpened(first.hello.blank, first.opened, name, false);
  s.show({ project, check: whole(first.check) }, { project, view: 'struck', shot });
  s.buys.value = { project, buys: first.buys };
  s.start(project);
  return true;
}

async function taken<T>(path: string, read: (r: Response) => Promise<T>): Promise<T | undefined> {
  try {
    const got = await fetch(new URL(`./static/${path}`, document.baseURI));
    return got.ok ? await read(got) : undefined;
  } catch {
    return undefined;
  }
}

async function pixelsOf(picture: Blob): Promise<ImageData> {
  const bitmap = await createImageBitmap(picture);
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [bitmap.width, bitmap.height];
  const pen = canvas.getContext('2d', { willReadFrequently: true });
  if (!pen) throw new Error('The browser has no memory left for a picture.');
  pen.drawImage(bitmap, 0, 0);
  bitmap.close();
  return pen.getImageData(0, 0, canvas.width, canvas.height);
}
