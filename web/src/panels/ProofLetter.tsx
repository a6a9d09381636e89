// The request to the maker, in words, with the marked picture.
import { useState } from 'preact/hooks';
import type { Inquiry } from '../engine/wire.gen';

export interface LetterProps {
  toChange: number;
  letter: Inquiry | undefined;
  /** Something was decided otherwise since it was written. */
  late: boolean;
  onWrite: () => void;
  onMarks: () => void;
}

export function ProofLetter(p: LetterProps) {
  const [done, say] = useState('');
  if (p.toChange === 0) return null;
  const copy = (text: string) => navigator.clipboard.writeText(text).then(() => say('Copied.'), () => say('The browser does not let the page copy. Mark the text and copy it by hand.'));
  return (
    <div class="proof-letter">
      <h3>To the maker</h3>
      {p.letter ? (
        <>
          {p.late ? <p class="warn">You decided otherwise since this was written. <button type="button" class="link" onClick={p.onWrite}>write it anew</button></p> : null}
          <p><b>{p.letter.subject}</b></p>
          <pre class="claim-text" tabIndex={0} aria-label="Request for changes">{p.letter.body}</pre>
        </>
      ) : null}
      <p class="row-acts">
        {p.letter ? <button type="button" class="solid" onClick={() => void copy(`${p.letter?.subject}\n\n${p.letter?.body}`)}>Copy the text</button> : <button type="button" class="solid" onClick={p.onWrite}>Write the request</button>}
        <button type="button" class="plain" onClick={p.onMarks}>Save the marked picture</button>
      </p>
      <p class="hint" role="status">{done}</p>
    </div>
  );
}
