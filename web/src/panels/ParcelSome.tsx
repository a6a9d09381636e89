// A look at some of the pieces: a sentence with numbers in it, and its answer.
// The tables stand behind "why?".
import type { LookedAt, Planned, PlanAsk, ParcelUsual, SomeLooked } from '../engine/wire.gen';
import { Why } from '../widgets/basic';
import { CountField, TextField } from '../widgets/TextField';
import { typed } from '../state/typed';
import { inHundred } from '../words/parcel';

export interface SomeProps {
  look: SomeLooked;
  answer: LookedAt | undefined;
  plan: PlanAsk | undefined;
  planned: Planned | undefined;
  usual: ParcelUsual;
  onLook: (change: Partial<SomeLooked>) => void;
  onPlan: (ask: PlanAsk) => void;
}

export function ParcelSome(p: SomeProps) {
  const { look, answer } = p;
  const number = (key: 'lot' | 'looked' | 'bad' | 'atMost', label: string, least: number) => (
    <CountField label={label} hideLabel class="in-line" value={look[key]} least={least} most={20000} onCount={(n) => p.onLook({ [key]: n })} />
  );
  const sure = (
    <TextField label="How sure, percent" hideLabel class="in-line" value={String(look.sure)} numeric
      onSet={(text) => typed({ text, as: 'percent', beside: '%', least: 50, most: 99.99 }, (t) => p.onLook({ sure: t.number }))} />
  );
  return (
    <div class="look-some">
      <h3>A look at some</h3>
      <p class="hint">An example until you put in your own numbers.</p>
      <p class="sentence">Of {number('lot', 'Pieces in the parcel', 1)} I looked at {number('looked', 'Looked at', 0)}, and {number('bad', 'Bad among them', 0)} were bad.</p>
      <p class="answer" role="status">{answer?.faults[0]?.what ?? answer?.found?.says ?? '…'}</p>
      <p class="sentence">I want to be {sure} percent sure that at most {number('atMost', 'Bad ones put up with', 0)} are bad.</p>
      <p class="answer">{answer?.faults.length ? '' : answer?.found?.lookSays ?? '…'}</p>
      <Why>
        <p>Exact chances of drawing without putting back (the hypergeometric distribution), one-sided: the greatest number of bad ones under which a look as good as yours would still happen more often than you allow for being wrong. It holds for pieces picked blindly from all over the parcel, not from the top.</p>
        {answer?.found ? <Rows answer={answer} look={look} /> : null}
        <Tables {...p} />
      </Why>
    </div>
  );
}

function Rows({ answer, look }: { answer: LookedAt; look: SomeLooked }) {
  return (
    <div class="scroll">
      <table class="narrow">
        <caption>Looked at of {look.lot}, all sound: how many may still be bad</caption>
        <thead><tr><th scope="col">looked at</th><th scope="col">bad at most</th></tr></thead>
        <tbody>{answer.found?.rows.map((r) => <tr key={r.looked}><th scope="row">{r.looked}</th><td>{r.most}</td></tr>)}</tbody>
      </table>
    </div>
  );
}

/** The published tables, for serious faults or for those who want them. */
function Tables(p: SomeProps) {
  const ask = p.plan;
  const now = ask ?? { lot: p.look.lot, level: 'II', quality: 2.5 };
  return (
    <details class="more" onToggle={(e) => { if (e.currentTarget.open && !ask) p.onPlan(now); }}>
      <summary>The published sampling tables</summary>
      <p>Single plans for normal inspection (MIL-STD-105E, 1989; the same in ISO 2859-1), tables I and II-A. They are made for many parcels of one maker; for one parcel the sentence above says more.</p>
      <div class="order-fields">
        <CountField label="Pieces in the parcel" value={now.lot} least={2} most={20000} unit="pins" onCount={(lot) => p.onPlan({ ...now, lot })} />
        <label class="field"><span class="field-label">Inspection level</span>
          <select value={now.level} onChange={(e) => p.onPlan({ ...now, level: e.currentTarget.value })}>{p.usual.levels.map((l) => <option key={l} value={l}>{l}</option>)}</select>
        </label>
        <label class="field"><span class="field-label">Quality level, percent bad</span>
          <select value={String(now.quality)} onChange={(e) => p.onPlan({ ...now, quality: Number(e.currentTarget.value) })}>{p.usual.qualities.map((q) => <option key={q} value={String(q)}>{q} %</option>)}</select>
        </label>
      </div>
      {p.planned ? <p class="answer">{p.planned.faults[0]?.what ?? p.planned.says}</p> : null}
      {p.planned?.plan ? <Plan planned={p.planned} /> : null}
    </details>
  );
}

function Plan({ planned }: { planned: Planned }) {
  const { plan, curve } = planned;
  if (!plan) return null;
  const moved = plan.letter !== plan.resolved;
  return (
    <>
      <p>Letter {plan.letter}{moved ? `; an arrow in the table leads to letter ${plan.resolved}, which changes the number to look at as well` : ''}. Accept {plan.accept}, refuse {plan.refuse}.</p>
      <div class="scroll">
        <table class="narrow">
          <caption>How many of 100 such parcels the plan accepts</caption>
          <thead><tr><th scope="col">bad ones</th><th scope="col">share</th><th scope="col">accepted of 100</th></tr></thead>
          <tbody>{curve.map((c) => <tr key={c.bad}><th scope="row">{c.bad}</th><td>{c.share.toFixed(1)} %</td><td>{inHundred(c.accept)}</td></tr>)}</tbody>
        </table>
      </div>
    </>
  );
}
