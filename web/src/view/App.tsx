import { useEffect, useState } from 'preact/hooks';
import { wish } from '../state/before';
import * as s from '../state/store';
import { Before } from './Before';
import { Column } from './Column';
import { listen } from './doors';
import { Sheet } from './Sheet';

function keys(e: KeyboardEvent): void {
  const typing = e.target instanceof HTMLInputElement && e.target.type === 'text';
  // What lies under the sheet before drawing is not undone unseen.
  if (typing || wish.value || !(e.ctrlKey || e.metaKey) || e.altKey) return;
  const k = e.key.toLowerCase();
  if (k === 'z' && !e.shiftKey) s.goBack();
  else if (k === 'y' || (k === 'z' && e.shiftKey)) s.goForward();
  else return;
  e.preventDefault();
}

export function App() {
  const [over, setOver] = useState(false);
  useEffect(() => listen(setOver), []);
  useEffect(() => {
    addEventListener('keydown', keys);
    return () => removeEventListener('keydown', keys);
  }, []);
  return (
    <>
      <main class="bench">
        <h1 class="unseen">badgewright: a drawing as an enamel pin</h1>
        <Sheet />
        <Column />
      </main>
      <Before />
      <Notes />
      <Progress />
      {over ? <div class="drop" aria-hidden="true"><p>Let go to lay it on the sheet</p></div> : null}
      <p class="unseen" role="status">{s.said.value}</p>
    </>
  );
}

function Notes() {
  const n = s.note.value;
  if (!n) return null;
  return (
    <div class="note" role="alert">
      <p><b>{n.what}</b> {n.do}</p>
      <button type="button" class="close" onClick={() => (s.note.value = undefined)} aria-label="Put the note away">✕</button>
    </div>
  );
}

function Progress() {
  const w = s.work.value;
  if (!w) return null;
  return (
    <div class="progress" aria-live="polite">
      <label>{w.doing} <progress max={1} value={w.share > 0 ? w.share : undefined} /></label>
      {w.stop ? <button type="button" class="plain" onClick={w.stop}>Stop</button> : null}
    </div>
  );
}
