// The rooms of the order that come after its price: what is left after costs,
// how many, and the pre-sale. Kept up while the order is open.
import { useEffect, useRef } from 'preact/hooks';
import { signal } from '@preact/signals';
import '../style/selling.css';
import { HowManyPanel } from '../panels/HowManyPanel';
import { LeftPanel } from '../panels/LeftPanel';
import { PresalePanel } from '../panels/PresalePanel';
import { priceListOf, type Place } from '../state/project';
import * as sell from '../state/selling';
import * as plans from '../state/sellingPlan';
import * as s from '../state/store';
import type { OrderUsual, Project } from '../engine/wire.gen';

const open = signal(false);

export default function Selling() {
  const ref = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const stop = sell.followSelling(open);
    const section = ref.current?.closest<HTMLDetailsElement>('details.section');
    const toggled = () => (open.value = section?.open ?? true);
    toggled();
    section?.addEventListener('toggle', toggled);
    return () => {
      section?.removeEventListener('toggle', toggled);
      stop();
    };
  }, []);
  const p = s.asked.value;
  const known = sell.usual.value;
  return (
    <div class="selling" ref={ref}>
      {p && known ? (
        <>
          <LeftRoom p={p} known={known} />
          <HowManyRoom p={p} known={known} />
          <PresaleRoom p={p} known={known} />
        </>
      ) : null}
    </div>
  );
}

interface RoomProps {
  p: Project;
  known: OrderUsual;
}

/** An answer is late while it is of an earlier wish. */
const late = (a: sell.Answered<unknown> | undefined, p: Project) => a !== undefined && a.project !== p;

function currencyOf(p: Project, plan: { currency: string }): { currency: string; currencies: string[] } {
  const own = priceListOf(p)?.currency ?? plan.currency;
  const into = p.order.terms?.into?.currency;
  const currencies = into && into !== own ? [own, into] : [own];
  return { currency: currencies.includes(plan.currency) ? plan.currency : own, currencies };
}

function LeftRoom({ p, known }: RoomProps) {
  const at = s.at.value;
  const plan = plans.leftPlan(p, known.selling, at);
  const a = sell.left.value;
  const change = (make: Parameters<typeof plans.withLeft>[3], what: string) => s.change((q) => plans.withLeft(q, known.selling, s.at.value, make), what);
  return (
    <LeftPanel
      plan={plan} left={a?.got?.left} faults={a?.got?.faults ?? []} problem={a?.problem ?? ''} late={late(a, p)} {...currencyOf(p, plan)}
      invented={plans.stillInvented(plan, plans.proposed(p, known.selling, at))} pinGrams={sell.pinGrams.value}
      onPlan={change}
      onChannel={(i, to, what) => change((q) => plans.withChannel(q, i, to), what)}
      onAdd={(kind) => change((q) => plans.withMore(q, known.selling, kind), 'Another way to sell')}
      onRemove={(i) => change((q) => plans.withoutChannel(q, i), `Took out ${plan.channels[i]?.name ?? ''}`)}
    />
  );
}

const versionsOf = (p: Project, at: Place) => p.order.designs[at.design]?.versions ?? [];

function HowManyRoom({ p, known }: RoomProps) {
  const at = s.at.value;
  const a = sell.demand.value;
  const after = sell.left.value?.got?.left;
  const plan = plans.leftPlan(p, known.selling, at);
  return (
    <HowManyPanel
      demand={a?.got} problem={a?.problem ?? ''} late={late(a, p)} stake={plans.stakeOf(p)} currency={currencyOf(p, plan).currency}
      follows={after && { each: after.each, second: after.second }}
      versions={versionsOf(p, at).map((v, version) => {
        const place = { ...at, version };
        return { name: v.name, quantity: v.quantity, guess: plans.guessOf(p, place, known.guess), own: plans.guessed(p, place) };
      })}
      onGuess={(version, to, what) => s.change((q) => plans.withGuess(q, { ...s.at.value, version }, known.guess, to), what)}
      onStake={(key, value) => s.change((q) => plans.withStake(q, key, value), 'What a pin leaves')}
      onFree={(free) => s.change((q) => plans.withFree(q, free), 'Given away')}
      onTake={(each, what) => s.change((q) => plans.withQuantities(q, s.at.value.design, each), what)}
    />
  );
}

function PresaleRoom({ p, known }: RoomProps) {
  const at = s.at.value;
  const a = sell.presale.value;
  const day = sell.promise.value;
  const plan = plans.leftPlan(p, known.selling, at);
  const presale = plans.presaleOf(p, known);
  const guess = plans.guessOf(p, at, known.guess);
  const after = sell.left.value?.got;
  return (
    <PresalePanel
      presale={a?.got} problem={a?.problem ?? ''} late={late(a, p)} plan={presale} guess={guess} counted={sell.orderGuess(guess) !== undefined}
      promise={presale.days.closes ? day?.got : undefined} promiseProblem={day?.project === p ? (day.problem ?? '') : ''} currency={currencyOf(p, plan).currency}
      follows={(after && sell.presaleEach(plans.withPresale(p, known, (q) => plans.withPresaleEach(q, undefined)), known, after)) ?? ''}
      onPlan={(make, what) => s.change((q) => plans.withPresale(q, known, make), what)}
      onEach={(each) => s.change((q) => plans.withPresale(q, known, (o) => plans.withPresaleEach(o, each)), 'What a pre-order leaves')}
      onGuess={(to, what) => s.change((q) => plans.withGuess(q, s.at.value, known.guess, to), what)}
    />
  );
}
