// The room of the order that makes a price list of plain quotes.
import '../style/quotes.css';
import { QuotesPanel } from '../panels/QuotesPanel';
import { priceListOf } from '../state/project';
import * as q from '../state/quotes';
import * as s from '../state/store';

export default function Quotes() {
  const p = s.asked.value;
  const used = p && priceListOf(p);
  if (!used) return null;
  const { answer, refused, text } = q.found.value ?? {};
  return (
    <QuotesPanel
      text={q.quotes.value} asked={text} working={q.working.value} found={answer} refused={refused} used={used}
      onText={(typed) => s.change((o) => q.withQuotes(o, typed), 'Quotes typed')} onWork={(typed) => void q.work(typed)}
      onUse={(list) => void q.useAsMaker(list)} onInPlace={q.useInPlace} onLeave={() => (q.found.value = undefined)}
    />
  );
}
