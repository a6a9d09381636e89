// Hands the claim to the person: as text with its pictures for a letter, or the
// pictures as files.
import type { Claim } from '../engine/wire.gen';
import { photos, type Photo } from './photos';
import { saveFile } from './save';

/** A picture as an address that holds it whole. */
async function dataAddress(blob: Blob): Promise<string> {
  const bytes = new Uint8Array(await blob.arrayBuffer());
  let text = '';
  for (const b of bytes) text += String.fromCharCode(b);
  return `data:${blob.type};base64,${btoa(text)}`;
}

const escaped = (text: string) => text.replace(/[&<>"]/g, (c) => `&#${c.charCodeAt(0)};`);

/** The claim as a letter with its pictures in it. */
export async function letter(claim: Claim, all: ReadonlyMap<string, Photo>): Promise<string> {
  const text = claim.text.split('\n\n').map((part) => `<p>${escaped(part).replaceAll('\n', '<br>')}</p>`);
  const pictures = await Promise.all(claim.photos.map(async (c) => {
    const photo = all.get(c.photo);
    return photo ? `<p><img src="${await dataAddress(photo.blob)}" alt="${escaped(c.caption)}" width="480"><br>${escaped(c.caption)}</p>` : '';
  }));
  return [...text, ...pictures].join('');
}

/** Copies the claim; says in words what is on the clipboard now. */
export async function copyClaim(claim: Claim): Promise<string> {
  const plain = async () => {
    await navigator.clipboard.writeText(claim.text);
    return claim.photos.length > 0 ? 'The text is copied; save the pictures and attach them.' : 'The text is copied.';
  };
  try {
    if (claim.photos.length === 0 || typeof ClipboardItem === 'undefined') return await plain();
    const html = new Blob([await letter(claim, photos.value)], { type: 'text/html' });
    await navigator.clipboard.write([new ClipboardItem({ 'text/html': html, 'text/plain': new Blob([claim.text], { type: 'text/plain' }) })]);
    return 'Copied with its pictures: paste it into a letter.';
  } catch {
    return plain().catch(() => 'The browser does not let the page copy. Mark the text and copy it by hand.');
  }
}

/** Saves each picture under the number it has in the claim. */
export function savePhotos(claim: Claim): void {
  for (const c of claim.photos) {
    const photo = photos.value.get(c.photo);
    if (photo) saveFile(photo.blob, `flaw-${c.number}.jpg`);
  }
}
