// How long each step takes, and which one is in hand today.
import type { Fault, OrderStep, Schedule, Whose } from '../engine/wire.gen';
import { doneWith, withStep } from '../state/calendar';
import { Field } from '../widgets/basic';
import { CountField } from '../widgets/TextField';
import { BY_WORDS, doingAt, faultOf, wayMaking } from '../words/calendar';
import { plural } from '../words/words';

interface Props {
  set: Schedule;
  faults: readonly Fault[];
  onSet: (change: (set: Schedule) => Schedule, what: string) => void;
}

/** Where the order stands today. */
export function Standing({ set, faults, onSet }: Props) {
  const step = set.steps.find((st) => st.key === set.doing);
  const to = (doing: string) => onSet((q) => ({ ...q, doing, done: 0 }), doing ? `In hand: ${set.steps.find((st) => st.key === doing)?.name ?? doing}` : 'Nothing begun');
  return (
    <>
      <Field label="in hand today">
        <select value={set.doing} onChange={(e) => to(e.currentTarget.value)}>
          <option value="">nothing begun yet</option>
          {set.steps.map((st) => <option key={st.key} value={st.key}>{st.name}</option>)}
        </select>
      </Field>
      {step ? <CountField label="of it done" value={set.done} least={0} most={7300} unit="days" fault={faultOf(faults, 'done')} onCount={(done) => onSet((q) => ({ ...q, done }), `${plural(done, 'day')} done`)} /> : null}
      {step ? <button type="button" class="plain" onClick={() => onSet(doneWith, `${step.name} over`)} disabled={doingAt(set) === set.steps.length - 1}>{step.name}: over</button> : null}
    </>
  );
}

export function CalendarSteps(p: Props & { filled: Schedule | undefined }) {
  return (
    <details class="more">
      <summary>How long each step takes</summary>
      <ul class="cal-steps cal-fold">
        {p.set.steps.map((st, i) => <Step key={st.key} {...p} step={st} at={`steps[${i}]`} />)}
      </ul>
    </details>
  );
}

const BY: readonly Whose[] = ['here', 'maker', 'every'];

function Step(p: Props & { filled: Schedule | undefined; step: OrderStep; at: string }) {
  const { step, faults, at } = p;
  const change = (c: Partial<OrderStep>, what: string) => p.onSet((q) => withStep(q, step.key, c), what);
  const fixed = step.key === 'making' ? wayMaking(p.filled) : undefined;
  const rounds = step.times > 0;
  return (
    <li>
      <b>{step.name}</b>
      {fixed ? <p class="fixed-days">{fixed}</p>
        : <CountField label={rounds ? 'days a round' : 'days'} value={step.days} least={0} most={365} fault={faultOf(faults, `${at}.days`)} onCount={(days) => change({ days }, `${step.name}: ${plural(days, 'day')}`)} />}
      {rounds ? <CountField label="rounds" value={step.times} least={1} most={20} fault={faultOf(faults, `${at}.times`)} onCount={(times) => change({ times }, `${step.name}: ${plural(times, 'round')}`)} /> : null}
      <Field label="counted in">
        <select value={step.by} onChange={(e) => change({ by: e.currentTarget.value as Whose }, `${step.name} in ${BY_WORDS[e.currentTarget.value as Whose]}`)}>
          {BY.map((b) => <option key={b} value={b}>{BY_WORDS[b]}</option>)}
        </select>
      </Field>
    </li>
  );
}
