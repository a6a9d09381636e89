// Further designs that a pre-sale unlocks, each with its first run and its bill.
import type { Fault, PresaleGoal, PresalePlan } from '../engine/wire.gen';
import { withGoal, withoutGoal } from '../state/sellingPlan';
import { Amount, faultAt, Pick } from '../widgets/MoneyFields';
import { CountField, TextField } from '../widgets/TextField';

interface Props {
  plan: PresalePlan;
  currency: string;
  faults: readonly Fault[];
  onPlan: (change: (plan: PresalePlan) => PresalePlan, what: string) => void;
}

const MOST = 20000;

/** A usual first run, priced as the pin on the sheet. */
const fresh = (n: number): PresaleGoal => ({ name: `Design ${n + 2}`, quantity: 100, alike: true, each: '0', once: '0' });

export function PresaleGoals(p: Props) {
  const { goals } = p.plan;
  return (
    <div class="cell-rows goals">
      {goals.length > 0 ? (
        <ul aria-label="Further designs">
          {goals.map((g, i) => <Goal key={i} {...p} goal={g} at={i} />)}
        </ul>
      ) : null}
      <button type="button" class="link" onClick={() => p.onPlan((q) => ({ ...q, goals: [...q.goals, fresh(q.goals.length)] }), 'Added a goal')}>add a design that more pre-orders unlock</button>
    </div>
  );
}

function Goal(p: Props & { goal: PresaleGoal; at: number }) {
  const { goal: g, at } = p;
  const set = (change: Partial<PresaleGoal>) => p.onPlan((q) => withGoal(q, at, change), `Goal: ${g.name}`);
  const fault = (field: string) => faultAt(p.faults, `goals[${at}].${field}`);
  return (
    <li>
      <TextField label="design" value={g.name} onSet={(text) => (text.trim() === '' ? 'A design has a name. Type one.' : () => set({ name: text.trim() }))} />
      <CountField label="first run" value={g.quantity} least={1} most={MOST} unit="pins" fault={fault('quantity')} onCount={(quantity) => set({ quantity })} />
      <Pick label="costs, with its die" value={g.alike ? 'alike' : 'own'} options={[['alike', 'as this pin'], ['own', 'what you type']]} onPick={(v) => set({ alike: v === 'alike' })} fault={fault('bill')} />
      {g.alike ? null : <Amount label="a pin" value={g.each} currency={p.currency} fault={fault('bill.steps[0].each')} onSet={(each) => set({ each })} />}
      {g.alike ? null : <Amount label="die and carriage" value={g.once} currency={p.currency} fault={fault('bill.steps[0].once')} onSet={(once) => set({ once })} />}
      <button type="button" class="link" aria-label={`Remove ${g.name}`} onClick={() => p.onPlan((q) => withoutGoal(q, at), `Removed ${g.name}`)}>✕</button>
    </li>
  );
}
