// The section of the order, kept up while it is on the page.
import { useEffect } from 'preact/hooks';
import type { ComponentChildren } from 'preact';
import type { MakerRate, PriceList, Project } from '../engine/wire.gen';
import { OrderPanel, type Together } from '../panels/OrderPanel';
import { bill, compared, followBill, foreign, rates, withoutInto, withRate, withTerms } from '../state/bill';
import { choices } from '../state/choices';
import { NO_TERMS, versionsIn, type Billed } from '../state/items';
import { inventedNow, settled, withOwn } from '../state/invented';
import * as l from '../state/lists';
import { designOf, pickedOf, priceListOf, versionOf, withDesign, withPriceList, withVersion, type Place } from '../state/project';
import * as s from '../state/store';
import { dayOf } from '../state/today';
import { plural } from '../words/words';
import { later } from './later';

const Quotes = later(() => import('./Quotes'));
const Selling = later(() => import('./Selling'));
const Calendar = later(() => import('./Calendar'));

const rate = (r: MakerRate) => s.change((p) => withRate(p, r), `${r.currency} 1 is ${r.rate}`);

const inList = (id: string, change: Partial<PriceList>, what: string) =>
  s.change((p) => {
    const old = p.order.priceLists.find((o) => o.id === id);
    return old ? l.withListFor(p, { ...old, ...change }) : p;
  }, what);

/** An order of several versions says which of them each line is for. */
function togetherOf(p: Project, { places, left }: Billed): Together | undefined {
  if (versionsIn(p) < 2) return undefined;
  const name = (at: Place) => [designOf(p, at)?.name, versionOf(p, at)?.name].join(', ');
  return { items: (places ?? []).map(name), now: name(pickedOf(p)), left: left ?? [] };
}

export default function Order({ children }: { children?: ComponentChildren }) {
  useEffect(() => {
    const stops = [followBill(), l.followFaults()];
    return () => stops.forEach((stop) => stop());
  }, []);
  const p = s.asked.value;
  const v = s.version.value;
  const used = p && priceListOf(p);
  if (!p || !v || !used) return null;
  const { quote, problem } = bill.value;
  const c = compared.value;
  const day = dayOf(new Date());
  return (
    <OrderPanel
      quote={quote} problem={problem ?? ''} late={s.behind.value} version={v} together={togetherOf(p, bill.value)}
      invented={inventedNow(used)} onOwn={() => s.change(withOwn, 'The figures are my maker’s')}
      choices={choices.value?.rows ?? []} choicesLate={choices.value?.project !== p}
      onQuantity={(quantity) => s.change((q) => withVersion(q, { quantity }), plural(quantity, 'pin'))}
      list={{
        list: used, faults: l.faults.value, arrived: l.arrived.value,
        onList: (change, what) => s.change((q) => withPriceList(q, (o) => settled(change(o))), what),
        onText: (text) => void l.readText(text), onFile: (file) => void l.readFile(file),
        onAccept: l.accept, onAcceptMore: () => void l.acceptMore(), onLeave: () => (l.arrived.value = undefined),
        onSave: (list) => void l.save(list),
      }}
      terms={{
        list: used, terms: p.order.terms ?? NO_TERMS, extras: s.design.value?.extras ?? {}, today: day,
        onTerms: (change, what) => s.change((q) => withTerms(q, change), what),
        onNoInto: () => s.change(withoutInto, 'One currency'),
        onExtras: (change, what) => s.change((q) => withDesign(q, { extras: { ...designOf(q)?.extras, ...change } }), what),
      }}
      makers={{
        lists: p.order.priceLists, used, quantity: v.quantity, comparison: c?.comparison, problem: c?.problem ?? '', late: c?.project !== p,
        rates: rates.value, foreign: foreign(p), removed: l.removed.value?.list.name, today: day,
        onUse: (id) => s.change((q) => l.withUse(q, id), 'Another maker'),
        onRename: (id, name) => inList(id, { name }, `Called ${name}`),
        onAdd: () => void l.add(), onCopy: (list) => void l.copy(list), onRemove: l.remove, onPutBack: l.putBack, onRate: rate,
      }}
    >
      {children}
      <Quotes />
      <Selling />
      <Calendar />
    </OrderPanel>
  );
}
