// What a person thinks of demand: three numbers, or the pre-orders so far.
import type { Fault, Guess, GuessKind } from '../engine/wire.gen';
import { typed } from '../state/typed';
import { Choice } from '../widgets/basic';
import { faultAt } from '../widgets/MoneyFields';
import { CountField, TextField } from '../widgets/TextField';

interface Props {
  /** Of which version; empty where there is one. */
  of: string;
  guess: Guess;
  at: number;
  faults: readonly Fault[];
  onChange: (change: Partial<Guess>, what: string) => void;
}

const MOST = 20000;
const MOST_DAYS = 730;

const WAYS: readonly { value: GuessKind; label: string }[] = [
  { value: 'three', label: 'by three numbers' },
  { value: 'orders', label: 'from pre-orders so far' },
];

export function HowManyGuess(p: Props) {
  const { guess: g } = p;
  const field = (key: string) => faultAt(p.faults, `versions[${p.at}].guess.${key}`);
  return (
    <div class="guess">
      <Choice legend={p.of ? `Wanted of ${p.of}` : 'Wanted'} value={g.kind} options={WAYS} onPick={(kind) => p.onChange({ kind }, 'How demand is guessed')} />
      {g.kind === 'three' ? (
        <div class="order-fields three">
          {([['low', 'at least'], ['likely', 'most likely'], ['high', 'at most']] as const).map(([key, label]) => (
            <CountField key={key} label={label} value={g[key]} least={0} most={MOST} unit="pins" fault={field(key)} onCount={(n) => p.onChange({ [key]: n }, `Wanted ${label}: ${n}`)} />
          ))}
        </div>
      ) : <SoFar guess={g} fault={field} onChange={p.onChange} />}
    </div>
  );
}

/** Pre-orders so far, the days they came in and the days left; what was thought before. */
export function SoFar(p: { guess: Guess; fault: (key: string) => string | undefined; onChange: Props['onChange'] }) {
  const { guess: g } = p;
  const prior = (key: 'orders' | 'days', label: string, unit: string) => (
    <TextField label={label} value={String(g.prior[key])} unit={unit} numeric fault={p.fault(`prior.${key}`)}
      onSet={(text) => typed({ text, as: 'amount', beside: unit }, (t) => p.onChange({ prior: { ...g.prior, [key]: Number(t.text) } }, 'What was thought before'))} />
  );
  return (
    <>
      <div class="order-fields three">
        <CountField label="pre-orders so far" value={g.orders} least={0} most={MOST} unit="pins" fault={p.fault('orders')} onCount={(orders) => p.onChange({ orders }, `${orders} pre-orders so far`)} />
        <CountField label="they came in" value={g.daysGone} least={0} most={MOST_DAYS} unit="days" fault={p.fault('daysGone')} onCount={(daysGone) => p.onChange({ daysGone }, 'Days gone')} />
        <CountField label="days left" value={g.daysLeft} least={0} most={MOST_DAYS} unit="days" fault={p.fault('daysLeft')} onCount={(daysLeft) => p.onChange({ daysLeft }, 'Days left')} />
      </div>
      <details class="more">
        <summary>What you thought before the first came</summary>
        <div class="order-fields">
          {prior('orders', 'as if there had come', 'pins')}
          {prior('days', 'in', 'days')}
        </div>
        <p class="hint">The longer the days named here, the more this counts against what has come since.</p>
      </details>
    </>
  );
}
