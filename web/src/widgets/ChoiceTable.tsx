// What each neighbouring choice costs: a quiet table, not a form.
import type { Choice } from '../engine/wire.gen';

interface Props {
  rows: readonly Choice[];
  /** Lines of an earlier wish, kept until the new ones come. */
  behind: boolean;
  /** Which version is changed, where the order has several: the figures are those of all of it. */
  of?: string | undefined;
}

export function ChoiceTable({ rows, behind, of }: Props) {
  return (
    <details class="more choices">
      <summary>What each choice costs</summary>
      <p class="hint">One change at a time{of ? ` to ${of}` : ''} from where the pin stands now; nothing is changed here.{of ? ' “In all” and “a piece” are of the whole order.' : ''}</p>
      <table class={behind ? 'behind' : undefined}>
        <thead>
          <tr><th scope="col">with</th><th scope="col">a piece, about</th><th scope="col">in all</th></tr>
        </thead>
        <tbody>
          {rows.map((c) => (
            <tr key={c.key}>
              <th scope="row">{c.what}</th>
              {c.known ? (
                <>
                  <td class={toneOf(c.pieceSays)}>{c.pieceSays}</td>
                  <td class={toneOf(c.totalSays)}>{c.totalSays}</td>
                </>
              ) : <td colSpan={2} class="unknown">{c.why}</td>}
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

/** A saving is seen before it is read; the word beside the number says it as well. */
function toneOf(says: string): string | undefined {
  if (says.endsWith(' less')) return 'saves';
  return says.endsWith(' more') ? undefined : 'same';
}
