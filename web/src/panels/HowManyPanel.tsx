// How many to order: what may be wanted, and the order that leaves most on average.
import type { Demand, Fault, Guess, HowMany, OwnStake } from '../engine/wire.gen';
import { bestOf, chanceSays, rowsOf, takeSays, wantedSays } from '../words/selling';
import { plural } from '../words/words';
import { Why } from '../widgets/basic';
import { MoneyChart, valueAt, type MoneyMark } from '../widgets/MoneyChart';
import { faultAt, OwnAmount } from '../widgets/MoneyFields';
import { CountField } from '../widgets/TextField';
import { Room } from '../widgets/Room';
import { HowManyGuess } from './HowManyGuess';

export interface GuessOf {
  name: string;
  guess: Guess;
  quantity: number;
  /** The person said so; otherwise it is an invented start. */
  own: boolean;
}

/** What a piece brings, as it follows from what is left. */
export interface Follows {
  each: string;
  second: string;
}

export interface HowManyProps {
  demand: Demand | undefined;
  /** Why nothing can be reckoned. */
  problem: string;
  late: boolean;
  versions: readonly GuessOf[];
  stake: OwnStake;
  follows: Follows | undefined;
  currency: string;
  onGuess: (version: number, change: Partial<Guess>, what: string) => void;
  onStake: (key: 'each' | 'second' | 'leftover' | 'missed', value: string | undefined) => void;
  onFree: (free: number) => void;
  onTake: (each: readonly number[], what: string) => void;
}

const MOST_FREE = 20000;

function says(p: HowManyProps, faults: readonly Fault[]): string {
  if (p.problem) return p.problem;
  if (faults[0]) return faults[0].what;
  return p.demand?.says || 'Counting …';
}

export function HowManyPanel(p: HowManyProps) {
  const faults = p.demand?.faults ?? [];
  const invented = p.versions.some((v) => !v.own);
  const answers = p.problem ? [] : (p.demand?.answers ?? []);
  return (
    <Room id="how-many" title="How many" says={says(p, faults)} alarm={Boolean(p.problem) || faults.length > 0} late={p.late}>
      {invented ? <p class="invented">What may be wanted is invented to start with. Put in your own guess.</p> : null}
      {p.versions.map((v, i) => (
        <HowManyGuess key={i} of={p.versions.length > 1 ? v.name : ''} guess={v.guess} at={i} faults={faults} onChange={(change, what) => p.onGuess(i, change, what)} />
      ))}
      <Brings {...p} faults={faults} />
      {answers.map((a, i) => (
        <Answer key={i} answer={a} now={nowOf(p, answers.length, i)} title={answers.length > 1 ? (p.versions[i]?.name ?? '') : ''} currency={p.currency} />
      ))}
      {p.demand && answers.length > 0 ? <Take {...p} demand={p.demand} /> : null}
      <Why>
        {[...new Set(answers.flatMap((a) => a.names))].map((n) => <p key={n}>Reckoned with: {n}.</p>)}
        <p>For each number ordered, what is left is averaged over all that may be wanted; the best number is found by looking at every one that could be it, price breaks and the die among it. A piece that finds no buyer brings what you say below “left over”.</p>
        <p>What is paid once however many you order, such as a table at a fair, changes no best number and is left out of these figures.</p>
      </Why>
    </Room>
  );
}

/** Several versions answered together are looked at by their sum. */
function nowOf(p: HowManyProps, answers: number, i: number): number {
  return answers > 1 ? (p.versions[i]?.quantity ?? 0) : p.versions.reduce((sum, v) => sum + v.quantity, 0);
}

function Brings(p: HowManyProps & { faults: readonly Fault[] }) {
  const { stake } = p;
  const own = (key: 'each' | 'second' | 'leftover' | 'missed', label: string, follows: string) => (
    <OwnAmount label={label} value={stake[key]} follows={follows} currency={p.currency} fault={faultAt(p.faults, `stake.${key}`)} onSet={(v) => p.onStake(key, v)} />
  );
  return (
    <>
      <div class="order-fields">
        {own('each', 'a pin sold leaves', p.follows?.each ?? '')}
        {own('second', 'one with a flaw', p.follows?.second ?? '')}
        {own('leftover', 'one left over brings', '0')}
        {own('missed', 'a buyer who finds none costs', '0')}
        <CountField label="given away besides" value={stake.free ?? 0} least={0} most={MOST_FREE} unit="pins" fault={faultAt(p.faults, 'stake.free')} onCount={p.onFree} />
      </div>
      <p class="hint">Before the maker’s bill. A field left empty follows from “Left after costs”.</p>
    </>
  );
}

function Answer({ answer: a, now, title, currency }: { answer: HowMany; now: number; title: string; currency: string }) {
  const points = a.points.filter((q) => q.quantity > 0).map((q) => ({ n: q.quantity, v: Number(q.left) }));
  const marked: MoneyMark[] = [];
  if (a.best.quantity > 0) marked.push({ n: a.best.quantity, v: Number(a.best.left), says: `${a.best.quantity} leave most`, kind: 'best' });
  const row = a.rows.find((r) => r.quantity === now);
  if (row && now !== a.best.quantity) marked.push({ n: now, v: Number(row.left), says: `${now} ordered now`, kind: 'now' });
  return (
    <div class="how-many">
      {title ? <h4>{title}: {a.says}</h4> : null}
      <p>{wantedSays(a)}</p>
      {points.length > 1 ? <MoneyChart points={points} marked={marked.map((m) => ({ ...m, v: m.kind === 'best' ? m.v : valueAt(points, m.n) }))} along="pins ordered" up={`${currency} left on average`} label={`What is left on average against the number ordered: ${a.says}`} /> : null}
      <div class="scroll">
        <table class="orders">
          <thead><tr><th scope="col">pins</th><th scope="col">left on average</th><th scope="col">all sell</th><th scope="col">over a tenth left</th><th scope="col">money lost</th></tr></thead>
          <tbody>
            {rowsOf(a).map((r) => (
              <tr key={r.quantity} class={r.quantity === a.best.quantity ? 'now' : undefined}>
                <th scope="row">{r.quantity}{r.quantity === a.best.quantity ? <small>best</small> : r.quantity === now ? <small>now</small> : null}</th>
                <td>{r.leftSays}</td><td>{chanceSays(r.sellOut)}</td><td>{chanceSays(r.tenthLeft)}</td><td>{chanceSays(r.lose)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {a.best.covering > 0 ? <p>Of the best number, {plural(a.best.covering, 'pin')} must sell to lose nothing.</p> : null}
      {a.notes.length > 0 ? <ul class="notes bill-notes">{a.notes.map((n) => <li key={n}>{n}</li>)}</ul> : null}
    </div>
  );
}

function Take(p: HowManyProps & { demand: Demand }) {
  const each = bestOf(p.demand);
  const names = p.versions.map((v) => v.name);
  const there = each.every((n, i) => n === p.versions[i]?.quantity);
  if (there) return <p class="hint">That is what is ordered now.</p>;
  // A version that is not worth ordering stays as it is: an order has no empty one.
  const set = each.map((n, i) => (n > 0 ? n : (p.versions[i]?.quantity ?? 1)));
  if (each.every((n) => n === 0)) return null;
  const words = takeSays(set, names);
  return <button type="button" class="plain" disabled={p.late} onClick={() => p.onTake(set, words)}>{words}</button>;
}
