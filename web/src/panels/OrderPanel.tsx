import type { ComponentChildren } from 'preact';
import type { Choice, Quote, Version } from '../engine/wire.gen';
import type { Invented } from '../state/invented';
import { Section, Why } from '../widgets/basic';
import { ChoiceTable } from '../widgets/ChoiceTable';
import { CountField } from '../widgets/TextField';
import { billSays } from '../words/order';
import { OrderBill } from './OrderBill';
import { OrderList, type ListProps } from './OrderList';
import { OrderMakers, type MakersProps } from './OrderMakers';
import { OrderTerms, type TermsProps } from './OrderTerms';

export interface Together {
  items: readonly string[];
  now: string;
  left: readonly string[];
}

export interface OrderProps {
  quote: Quote | undefined;
  /** Why there is no bill. */
  problem: string;
  /** The bill is that of an earlier wish. */
  late: boolean;
  version: Version;
  /** Where the order holds several versions: each by its name in the order of
   * the bill's items, the one on the sheet, and what is left out of the bill. */
  together?: Together | undefined;
  choices: readonly Choice[];
  /** The choices are those of an earlier wish. */
  choicesLate: boolean;
  invented: Invented;
  onOwn: () => void;
  onQuantity: (n: number) => void;
  list: ListProps;
  terms: TermsProps;
  makers: MakersProps;
  /** What else an order wants to know, below the makers. */
  children?: ComponentChildren;
}

function says(p: OrderProps): string {
  if (p.problem) return p.problem;
  return p.quote ? billSays(p.quote, p.makers.used.name) : 'Counting …';
}

export function OrderPanel(p: OrderProps) {
  const open = (p.quote?.needs.length ?? 0) > 0;
  return (
    <Section id="order" title="Order" says={says(p)} alarm={Boolean(p.problem) || open}>
      <CountField label={p.together ? `Quantity: ${p.together.now}` : 'Quantity'} value={p.version.quantity} least={1} most={100000} unit="pins" onCount={p.onQuantity} />
      {p.problem ? <p class="warn">{p.problem}</p> : null}
      {p.quote && !p.problem ? <OrderBill {...p.list} quote={p.quote} late={p.late} items={p.together?.items ?? []} left={p.together?.left ?? []} invented={p.invented} onOwn={p.onOwn} /> : null}
      {p.quote && !p.problem && p.choices.length > 0 ? <ChoiceTable rows={p.choices} behind={p.choicesLate} of={p.together?.now} /> : null}
      <OrderTerms {...p.terms} />
      <OrderMakers {...p.makers} />
      <OrderList {...p.list} />
      {p.children}
      <Why>
        <p>Each line is rounded once, to the smallest coin; the total is the sum of the lines you see; the price each is the total shared out, so it is marked “about”.</p>
        <p>What a list does not say is left open, and asked for only where the order needs it. Between two numbers of pieces at which some price changes, totals are straight lines; so the chart shows every number.</p>
      </Why>
    </Section>
  );
}
