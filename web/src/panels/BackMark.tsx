// The artist's own mark on the back: its picture, its height, and what the maker holds of it.
import { useEffect, useRef } from 'preact/hooks';
import type { Mark, StampedMark } from '../engine/wire.gen';
import { KINDS } from '../widgets/Doors';
import { LengthField } from '../widgets/LengthField';

interface Props {
  mark: Mark | undefined;
  /** As it stands on the back. */
  found: StampedMark | undefined;
  fault: string;
  onFile: (file: File) => void;
  onSet: (change: Partial<Mark>, what: string) => void;
  onRemove: () => void;
}

/** Bounds of the mark's height and of its narrowest stroke, mm. */
const LOWEST = 1;
const HIGHEST = 20;
const FINEST = 0.05;
const COARSEST = 2;

export function BackMark({ mark, found, fault, onFile, onSet, onRemove }: Props) {
  const input = useRef<HTMLInputElement>(null);
  const take = (files: FileList | null | undefined) => { if (files?.[0]) onFile(files[0]); };
  return (
    <div
      class="back-mark" role="group" aria-label="Your mark"
      onDrop={(e) => {
        if (!e.dataTransfer?.files.length) return;
        // The page would take it for a drawing; it only needs to know that the drag is over.
        e.preventDefault();
        e.stopPropagation();
        dispatchEvent(new Event('dragleave'));
        take(e.dataTransfer.files);
      }}
    >
      <input ref={input} class="unseen" type="file" accept={KINDS} tabIndex={-1} aria-label="Picture of your mark"
        onChange={(e) => { take(e.currentTarget.files); e.currentTarget.value = ''; }} />
      {mark ? <MarkView mark={mark} /> : null}
      <div>
        <button type="button" class="plain" onClick={() => input.current?.click()}>{mark ? 'Another picture' : 'Your mark, from a picture'}</button>
        {mark ? <button type="button" class="plain" onClick={onRemove}>Take your mark away</button> : null}
        <p class="hint">{mark ? 'Dark is struck. The smaller, the plainer it should be.' : 'Dark on light, or on a transparent ground; or drop it here.'}</p>
      </div>
      {fault ? <p class="warn" role="alert">{fault}</p> : null}
      {mark && found ? (
        <div class="limit-grid mark-sizes">
          <LengthField label="height of your mark" mm={mark.height || found.height || LOWEST} least={LOWEST} most={HIGHEST}
            onLength={(height, words) => onSet({ height }, `Mark ${words} high`)} />
          <LengthField label="narrowest your maker holds here" mm={mark.least || found.least} least={FINEST} most={COARSEST}
            onLength={(least, words) => onSet({ least }, `Narrowest stroke of the mark ${words}`)} />
        </div>
      ) : null}
      {mark?.height ? <button type="button" class="plain" onClick={() => onSet({ height: 0 }, 'Mark as high as there is room')}>Your mark as high as there is room</button> : null}
    </div>
  );
}

/** The mark's cells as the project keeps them. */
function MarkView({ mark }: { mark: Mark }) {
  const at = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const pen = at.current?.getContext('2d');
    if (!pen) return;
    pen.clearRect(0, 0, mark.w, mark.h);
    pen.fillStyle = getComputedStyle(pen.canvas).color;
    const rows = bytesOf(mark.rows);
    const stride = Math.ceil(mark.w / 8);
    for (let y = 0; y < mark.h; y++) {
      for (let x = 0; x < mark.w; x++) if (((rows[y * stride + (x >> 3)] ?? 0) << (x & 7)) & 0x80) pen.fillRect(x, y, 1, 1);
    }
  });
  return <canvas ref={at} width={mark.w} height={mark.h} role="img" aria-label="Your mark as it is struck" />;
}

/** Rows of a file of another hand may be damaged: the engine says so, here nothing is drawn. */
function bytesOf(rows: string): Uint8Array {
  try {
    return Uint8Array.from(atob(rows), (c) => c.charCodeAt(0));
  } catch {
    return new Uint8Array();
  }
}
