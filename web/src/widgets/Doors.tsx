// The ways in: choose, paste, photograph; a door for those who have not drawn
// yet; and two more examples, quietly.
import { useRef } from 'preact/hooks';

export interface DoorsProps {
  onFiles: (f: FileList | null) => void;
  onPaste: () => void;
  /** There is no drawing yet. */
  onBefore: () => void;
  onDemo: (d: 'lighthouse' | 'harbour' | 'buoy') => void;
}

export const KINDS = 'image/png,image/jpeg,image/webp,image/avif,image/gif,image/svg+xml,.svg';

export function Doors({ onFiles, onPaste, onBefore, onDemo }: DoorsProps) {
  const file = useRef<HTMLInputElement>(null);
  const shot = useRef<HTMLInputElement>(null);
  const took = (e: { currentTarget: HTMLInputElement }) => {
    onFiles(e.currentTarget.files);
    e.currentTarget.value = '';
  };
  return (
    <div class="doors">
      <input ref={file} class="unseen" type="file" multiple accept={KINDS} tabIndex={-1} aria-label="Drawing file" onChange={took} />
      <input ref={shot} class="unseen" type="file" accept="image/*" capture="environment" tabIndex={-1} aria-label="Photograph of a drawing" onChange={took} />
      <button type="button" class="door first" onClick={() => file.current?.click()}>Choose drawing</button>
      <button type="button" class="door" onClick={onPaste}>Paste</button>
      <button type="button" class="door" onClick={() => shot.current?.click()}>Photograph</button>
      <button type="button" class="door second" aria-haspopup="dialog" onClick={onBefore}>I haven’t drawn it yet</button>
      <p class="quiet">
        <span class="drop-words">or drop one.{' '}</span><span class="examples">Examples:{' '}
        <button type="button" class="link" onClick={() => onDemo('lighthouse')}>lighthouse</button>,{' '}
        <button type="button" class="link" onClick={() => onDemo('harbour')}>harbour</button>,{' '}
        <button type="button" class="link" onClick={() => onDemo('buoy')}>buoy</button></span>
      </p>
    </div>
  );
}
