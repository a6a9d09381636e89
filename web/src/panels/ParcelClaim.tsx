// What to write to the maker, to be copied with its pictures.
import { useState } from 'preact/hooks';
import type { Claim } from '../engine/wire.gen';
import type { Photo } from '../state/photos';

export interface ClaimProps {
  claim: Claim | undefined;
  /** The count has moved on since it was written. */
  late: boolean;
  photos: ReadonlyMap<string, Photo>;
  onWrite: () => void;
  onCopy: (claim: Claim) => Promise<string>;
  onSavePhotos: (claim: Claim) => void;
}

export function ParcelClaim(p: ClaimProps) {
  const [done, say] = useState('');
  const { claim } = p;
  if (!claim) return <p><button type="button" class="plain" onClick={p.onWrite}>Write to the maker</button></p>;
  const there = claim.photos.filter((c) => p.photos.has(c.photo));
  return (
    <div class="claim">
      <h3>To the maker</h3>
      {p.late ? <p class="warn">You counted on since this was written. <button type="button" class="link" onClick={p.onWrite}>write it anew</button></p> : null}
      <pre class="claim-text" tabIndex={0} aria-label="Text for the maker">{claim.text}</pre>
      {there.length > 0 ? (
        <ul class="claim-photos">
          {there.map((c) => <li key={c.photo}><Picture photo={p.photos.get(c.photo)} /><span>{c.caption}</span></li>)}
        </ul>
      ) : null}
      {there.length < claim.photos.length ? <p class="warn">{claim.photos.length - there.length} of the pictures are not on this device.</p> : null}
      <p class="row-acts">
        <button type="button" class="solid" onClick={() => void p.onCopy(claim).then(say)}>{there.length > 0 ? 'Copy with its pictures' : 'Copy the text'}</button>
        {there.length > 0 ? <button type="button" class="plain" onClick={() => p.onSavePhotos(claim)}>Save the pictures</button> : null}
      </p>
      <p class="hint" role="status">{done}</p>
    </div>
  );
}

/** Addresses of pictures, made once for each; the caption stands beside them. */
const addresses = new WeakMap<Blob, string>();

function Picture({ photo }: { photo: Photo | undefined }) {
  if (!photo) return null;
  let url = addresses.get(photo.blob);
  if (!url) addresses.set(photo.blob, (url = URL.createObjectURL(photo.blob)));
  return <img src={url} alt="" loading="lazy" />;
}
