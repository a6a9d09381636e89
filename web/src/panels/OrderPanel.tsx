import type { Check, Choice, PriceList, Version } from '../engine/wire.gen';
import { Section, Why } from '../widgets/basic';
import { ChoiceTable } from '../widgets/ChoiceTable';
import { PriceTable } from '../widgets/PriceTable';
import { CountField } from '../widgets/TextField';
import { orderSays } from '../words/words';

export interface OrderProps {
  check: Check | undefined;
  /** The version the check was made for. */
  shownVersion: Version | undefined;
  version: Version;
  list: PriceList | undefined;
  choices: readonly Choice[];
  /** The choices are those of an earlier wish. */
  late: boolean;
  onQuantity: (n: number) => void;
  onList: (change: (l: PriceList) => PriceList, what: string) => void;
}

export function OrderPanel(p: OrderProps) {
  const q = p.check?.quote;
  const says = p.check && p.shownVersion ? orderSays(p.check, p.shownVersion) : 'Counting …';
  return (
    <Section id="order" title="Order" says={says} alarm={Boolean(p.check?.quoteProblem)}>
      <CountField label="Quantity" value={p.version.quantity} least={1} most={100000} unit="pins" onCount={p.onQuantity} />
      {p.check?.quoteProblem ? <p class="warn">{p.check.quoteProblem}</p> : null}
      {q && p.check && !p.check.quoteProblem ? (
        <>
          {q.invented ? <p class="invented">These prices are invented, to show how a price is made. Put in your own maker’s below.</p> : null}
          <table class="quote">
            <tbody>
              {q.lines.map((l, i) => (
                <tr key={i}>
                  <th scope="row">{l.what}</th>
                  <td>{l.sumSays}</td>
                  <td>{l.says}</td>
                </tr>
              ))}
            </tbody>
            <tfoot>
              <tr><th scope="row">in all</th><td /><td>{q.totalSays}</td></tr>
              <tr><th scope="row">each</th><td /><td>{q.eachSays}</td></tr>
            </tfoot>
          </table>
          <ul class="notes">{q.notes.map((n) => <li key={n}>{n}</li>)}</ul>
          {p.choices.length > 0 ? <ChoiceTable rows={p.choices} behind={p.late} /> : null}
        </>
      ) : null}
      {p.list ? <PriceTable list={p.list} onList={p.onList} /> : null}
      <Why>
        <p>Each line is rounded once, to the smallest coin; the total is the sum of the lines you see; the price each is the total shared out, so it is marked “about”.</p>
      </Why>
    </Section>
  );
}
