// One row of the ledger, and how it comes to its sum.
import type { ChannelRow } from '../engine/wire.gen';

export function RowHead(p: { name: string; says: string; sum: string }) {
  return (
    <>
      <span class="ledger-name">{p.name}</span>
      <span class="ledger-sum">{p.sum}</span>
      <small>{p.says}</small>
    </>
  );
}

/** How a row comes to its sum. */
export function Lines({ row }: { row: Pick<ChannelRow, 'lines' | 'leftSays'> }) {
  return (
    <table class="quote">
      <tbody>
        {row.lines.map((l) => <tr key={l.key}><th scope="row">{l.what}</th><td>{l.says}</td></tr>)}
      </tbody>
      <tfoot><tr><th scope="row">left</th><td>{row.leftSays}</td></tr></tfoot>
    </table>
  );
}
