// Pictures of flawed pieces, and makers' proofs. A project holds their names only; the pictures
// themselves stay here, small, where whoever keeps the project finds them by name. A picture
// that changes is another value.
import { signal } from '@preact/signals';

export interface Photo {
  /** As the project names it. */
  id: string;
  /** A small JPEG of a piece, or a proof as it came. */
  blob: Blob;
}

/** Every picture at hand, by its name. They are never taken out while the page
 * is open: an undone step may bring a name back. */
export const photos = signal<ReadonlyMap<string, Photo>>(new Map());

/** Takes in pictures that were kept before, as with a project that is opened. */
export function takeIn(all: readonly Photo[]): void {
  photos.value = new Map([...photos.value, ...all.map((p) => [p.id, p] as const)]);
}

/** Those of some names that are at hand. */
export function photosNamed(ids: readonly string[]): Photo[] {
  return ids.flatMap((id) => photos.value.get(id) ?? []);
}

/** The long side, px, and the quality of a kept picture: a scratch is still
 * seen, and sixty of them weigh a few megabytes. */
const LONG_SIDE = 1280;
const QUALITY = 0.82;

/** A name that no other picture has. */
export const freshName = (kind: string) => crypto.getRandomValues(new Uint32Array(3)).reduce((t, n) => t + n.toString(36), kind);

/** Makes a picture small and takes it in; its name is new. A file that is no
 * picture is an error in words. */
export async function addPhoto(file: Blob): Promise<string> {
  const blob = await small(file);
  const photo = { id: freshName('p'), blob };
  takeIn([photo]);
  return photo.id;
}

async function small(file: Blob): Promise<Blob> {
  const image = await createImageBitmap(file, { imageOrientation: 'from-image' }).catch(() => undefined);
  if (!image) throw Object.assign(new Error(), { what: 'That is no picture the browser can read.', do: 'Bring a JPEG, PNG or WebP.' });
  const scale = Math.min(1, LONG_SIDE / Math.max(image.width, image.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(image.width * scale));
  canvas.height = Math.max(1, Math.round(image.height * scale));
  const ctx = canvas.getContext('2d');
  if (!ctx) throw Object.assign(new Error(), { what: 'The browser has no room for a picture.', do: 'Close other pages and try again.' });
  // What is see-through would turn black in a JPEG.
  ctx.fillStyle = '#fff';
  ctx.fillRect(0, 0, canvas.width, canvas.height);
  ctx.drawImage(image, 0, 0, canvas.width, canvas.height);
  image.close();
  return new Promise((done, fail) => canvas.toBlob((b) => (b ? done(b) : fail(new Error('no JPEG'))), 'image/jpeg', QUALITY));
}
