// A pre-sale: what has to be paid before the die is cut, the designs that more
// of it unlocks, and the day that can be promised.
import type { Fault, Guess, Presale, PresalePlan, Promise as Promised } from '../engine/wire.gen';
import { Why } from '../widgets/basic';
import { DateField } from '../widgets/DateField';
import { faultAt, OwnAmount } from '../widgets/MoneyFields';
import { PaidLadder } from '../widgets/PaidLadder';
import { Room } from '../widgets/Room';
import { CountField } from '../widgets/TextField';
import { SoFar } from './HowManyGuess';
import { PresaleGoals } from './PresaleGoals';

export interface PresaleProps {
  presale: Presale | undefined;
  problem: string;
  promise: Promised | undefined;
  promiseProblem: string;
  late: boolean;
  plan: PresalePlan;
  guess: Guess;
  /** Pre-orders are asked for: the chances are known. */
  counted: boolean;
  /** What a paid pre-order leaves, as it follows. */
  follows: string;
  currency: string;
  onPlan: (change: (plan: PresalePlan) => PresalePlan, what: string) => void;
  onEach: (each: string | undefined) => void;
  onGuess: (change: Partial<Guess>, what: string) => void;
}

function says(p: PresaleProps, faults: readonly Fault[]): string {
  if (p.problem) return p.problem;
  if (faults[0]) return faults[0].what;
  if (!p.presale?.goals) return 'Counting …';
  const day = p.promise?.promise;
  return day ? `${p.presale.goals.says} ${shortly(day.says)}` : p.presale.goals.says;
}

/** "Promise posting by Tue 20 Apr 2027.": its reasons stand further below. */
const shortly = (words: string) => `${words.split(':')[0]}.`;

export function PresalePanel(p: PresaleProps) {
  const faults = [...(p.presale?.faults ?? []), ...(p.promise?.faults ?? [])];
  const goals = p.problem ? undefined : p.presale?.goals;
  return (
    <Room id="presale" title="Pre-sale" says={says(p, faults)} alarm={Boolean(p.problem) || faults.length > 0} late={p.late}>
      <div class="order-fields">
        <OwnAmount label="a paid pre-order leaves" value={p.plan.each} follows={p.follows} currency={p.currency} fault={faultAt(faults, 'stake.each')} onSet={p.onEach} />
      </div>
      <p class="hint">Fees, posting and packing taken off, before the maker’s bill. Left empty it is what a pin sold online leaves.</p>
      {goals ? (
        <>
          <PaidLadder goals={goals.rows} paid={p.guess.orders} />
          <ol class="rungs">{goals.rows.map((r, i) => <li key={i}>{r.says}</li>)}</ol>
        </>
      ) : null}
      <PresaleGoals plan={p.plan} currency={p.currency} faults={faults} onPlan={p.onPlan} />
      <h4>So far</h4>
      <SoFar guess={p.guess} fault={(key) => faultAt(faults, `guess.${key}`)} onChange={p.onGuess} />
      {p.counted ? null : <p class="hint">Once pre-orders come in, type them here and the chances stand beside each goal.</p>}
      <h4>The day to promise</h4>
      <Days {...p} faults={faults} />
      <Why>
        <p>A goal is met when what the paid pre-orders leave covers the bill of so many pins, seconds ordered along, and of the designs before it. Pins that nobody has paid for yet bring nothing here.</p>
        <p>Chances come from a gamma-Poisson forecast of the pre-orders still to come: the rate is taken to stay as it is.</p>
        <p>Cut no die before the money is on your account: until it is paid out it can still be held back or asked back.</p>
      </Why>
    </Room>
  );
}

const MOST_DAYS = 365;

function Days(p: PresaleProps & { faults: readonly Fault[] }) {
  const { days } = p.plan;
  const set = (change: Partial<typeof days>, what: string) => p.onPlan((q) => ({ ...q, days: { ...q.days, ...change } }), what);
  const count = (key: 'payout' | 'posting' | 'carriage', label: string, unit: string) => (
    <CountField label={label} value={days[key]} least={0} most={MOST_DAYS} unit={unit} fault={faultAt(p.faults, `presale.${key}`)} onCount={(n) => set({ [key]: n }, label)} />
  );
  const got = p.promise?.promise;
  const steps = p.faults.find((f) => f.field.startsWith('steps') || f.field.startsWith('here') || f.field.startsWith('maker'));
  return (
    <>
      <div class="order-fields">
        <DateField label="the pre-sale closes on" value={days.closes} fault={faultAt(p.faults, 'presale.closes')} onDay={(closes) => set({ closes }, 'End of the pre-sale')} />
        {count('payout', 'paid out after', 'days')}
        {count('posting', 'packing and posting all', 'working days')}
        {count('carriage', 'the last parcel takes', 'days')}
      </div>
      {p.promiseProblem ? <p class="warn">{p.promiseProblem}</p> : null}
      {steps ? <p class="warn">{steps.what}</p> : null}
      {!days.closes ? <p class="hint">Say when it closes, and the day that can be promised stands here.</p> : null}
      {got ? <p class="promised">{got.says}</p> : null}
    </>
  );
}
