// What was read of a price list that was brought: its problems by row and
// column, and the choice to take it. Until then the old list stays in use.
import type { PriceList } from '../engine/wire.gen';
import type { Arrived } from '../state/lists';

interface Props {
  arrived: Arrived;
  /** The list in use. */
  list: PriceList;
  onAccept: () => void;
  onAcceptMore: () => void;
  onLeave: () => void;
}

export function Arrival({ arrived, list, onAccept, onAcceptMore, onLeave }: Props) {
  const { read, refused } = arrived;
  const kept = <p>“{list.name}” stays as it is until you take what was read.</p>;
  if (refused) return <div class="list-news bad" role="alert"><p><b>{refused.what}</b> {refused.do}</p>{kept}</div>;
  if (!read) return null;
  const bad = read.problems.length > 0;
  return (
    <div class={bad ? 'list-news bad' : 'list-news'} role={bad ? 'alert' : 'status'}>
      <p><b>{read.words}</b></p>
      {bad ? <Problems read={read} /> : null}
      <ul class="notes">{read.notes.map((n) => <li key={n}>{n}</li>)}</ul>
      {bad ? <p>Correct the rows and read them again. “{list.name}” stays as it is.</p> : kept}
      <p class="row-acts">
        {bad ? null : <button type="button" class="solid" onClick={onAccept}>Put into “{list.name}”</button>}
        {bad ? null : <button type="button" class="plain" onClick={onAcceptMore}>Add as another maker</button>}
        <button type="button" class="link" onClick={onLeave}>leave it</button>
      </p>
    </div>
  );
}

function Problems({ read }: { read: NonNullable<Arrived['read']> }) {
  return (
    <div class="scroll">
      <table class="problems">
        <thead><tr><th scope="col">row</th><th scope="col">column</th><th scope="col">stands there</th><th scope="col">what is wrong</th></tr></thead>
        <tbody>
          {read.problems.map((q, i) => (
            <tr key={i}>
              <td>{q.row || '–'}</td>
              <td>{q.column || '–'}</td>
              <td>{q.text || 'nothing'}</td>
              <td>{q.what}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
