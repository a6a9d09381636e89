// Pieces with a small flaw, and the tax on sales.
import type { Fault, SalesTax, Selling } from '../engine/wire.gen';
import { faultAt, Percent, Pick, Tick } from '../widgets/MoneyFields';

interface Props {
  plan: Selling;
  faults: readonly Fault[];
  onPlan: (change: (plan: Selling) => Selling, what: string) => void;
}

export function LeftSeconds(p: Props) {
  const { plan } = p;
  const taxed = plan.channels.filter((c) => c.taxed).length;
  return (
    <details class="more">
      <summary>Seconds, tax on sales</summary>
      <div class="order-fields">
        <Percent label="pins with a small flaw" value={plan.secondsShare} fault={faultAt(p.faults, 'secondsShare')} onSet={(secondsShare) => p.onPlan((q) => ({ ...q, secondsShare }), 'Share of seconds')} />
        <Percent label="they are cheaper by" value={plan.secondsOff} fault={faultAt(p.faults, 'secondsOff')} onSet={(secondsOff) => p.onPlan((q) => ({ ...q, secondsOff }), 'Price of seconds')} />
        <Pick label="they sell" value={String(Math.max(-1, plan.secondsBy))} options={[['-1', 'not at all: kept'], ...plan.channels.map((c, i) => [String(i), c.name] as const)]}
          onPick={(v) => p.onPlan((q) => ({ ...q, secondsBy: Number(v) }), 'How seconds sell')} fault={faultAt(p.faults, 'secondsBy')} />
      </div>
      <Tax {...p} />
      {taxed === 0 ? <p class="hint">No way to sell is taxed yet: tick “tax on sales applies” where it does. What is due hangs on where you sell; ask there.</p> : null}
    </details>
  );
}

function Tax(p: Props) {
  const { tax } = p.plan;
  const set = (change: Partial<SalesTax>, what: string) => p.onPlan((q) => ({ ...q, tax: { ...q.tax, ...change } }), what);
  return (
    <div class="order-fields">
      <Percent label="tax on sales" value={tax.percent} fault={faultAt(p.faults, 'tax.percent')} onSet={(percent) => set({ percent }, 'Tax on sales')} />
      <Pick label="prices" value={tax.included ? 'in' : 'on'} options={[['in', 'include the tax'], ['on', 'are before tax']]} onPick={(v) => set({ included: v === 'in' }, 'Tax on sales')} />
      <Tick label="it falls on posting too" on={tax.onPosting} onTick={(onPosting) => set({ onPosting }, 'Tax on posting')} />
    </div>
  );
}
