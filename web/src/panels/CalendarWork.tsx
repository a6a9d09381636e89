// On which days one end works: weekends, the public holidays of a country, own
// days off or closures, and days worked all the same.
import type { Calendar, Fault, OrderUsual, Schedule, Workdays } from '../engine/wire.gen';
import { withOff, withWork, withWorked, type End } from '../state/calendar';
import { Field } from '../widgets/basic';
import { DateField } from '../widgets/DateField';
import { faultOf, dayWords, spanWords, WEEKDAYS, workSays, WORK_WORDS } from '../words/calendar';
import { DaySpans } from './CalendarSpans';

export interface WorkProps {
  end: End;
  set: Schedule;
  usual: OrderUsual | undefined;
  calendar: Calendar | undefined;
  today: string;
  faults: readonly Fault[];
  onSet: (change: (set: Schedule) => Schedule, what: string) => void;
}

export function CalendarWork(p: WorkProps) {
  const { end, set, usual } = p;
  const words = WORK_WORDS[end];
  const work = set[end];
  const country = usual?.countries.find((c) => c.code === work.country);
  const wrong = p.faults.some((f) => f.field === end || f.field.startsWith(`${end}.`));
  return (
    <details class="more cal-work">
      <summary>{words.title}: {workSays(end, work, country?.name ?? '')}{wrong ? <span class="fault-count">to look at</span> : null}</summary>
      <div class="cal-fold">
        <Weekend {...p} work={work} />
        <Field label="public holidays of">
          <select value={work.country} onChange={(e) => { const code = e.currentTarget.value; p.onSet((q) => withWork(q, end, () => ({ country: code })), 'Public holidays'); }}>
            <option value="">{words.none}</option>
            {usual?.countries.map((c) => <option key={c.code} value={c.code}>{c.name}</option>)}
          </select>
        </Field>
        <Fault of={p} at="country" />
        {country?.note ? <p class="hint">{country.note}</p> : null}
        {work.country === '' ? <p class="hint">{words.unlisted}</p> : <Holidays {...p} work={work} />}
        <DaySpans {...p} work={work} />
        {end === 'maker' ? <Missing {...p} work={work} /> : null}
        <Worked {...p} work={work} />
        <Fault of={p} at="" />
      </div>
    </details>
  );
}

type With = WorkProps & { work: Workdays };

/** A fault of the whole end, or of one of its fields without a place of its own. */
function Fault({ of, at }: { of: WorkProps; at: string }) {
  const fault = faultOf(of.faults, at ? `${of.end}.${at}` : of.end);
  return fault ? <p class="complaint" role="alert">{fault}</p> : null;
}

function Weekend(p: With) {
  const { end, work } = p;
  const pick = (n: number, free: boolean) => p.onSet((q) => withWork(q, end, (w) => ({ weekend: free ? [...w.weekend, n].sort() : w.weekend.filter((d) => d !== n) })), `${WEEKDAYS[n - 1]} ${free ? 'free' : 'worked'}`);
  return (
    <fieldset class="weekend-days">
      <legend>{WORK_WORDS[end].weekend}</legend>
      <div class="choice-row">
        {WEEKDAYS.map((d, i) => (
          <label key={d}><input type="checkbox" checked={work.weekend.includes(i + 1)} onChange={(e) => pick(i + 1, e.currentTarget.checked)} /><span>{d}</span></label>
        ))}
      </div>
      <Fault of={p} at="weekend" />
    </fieldset>
  );
}

/** The holidays within the days drawn; each can be worked all the same. */
function Holidays(p: With) {
  const { end, work, usual, calendar: c } = p;
  const all = usual?.holidays.find((h) => h.code === work.country)?.holidays ?? [];
  const seen = all.filter((h) => c && h.date >= c.ruler.from && h.date <= c.ruler.to);
  if (seen.length === 0) return <p class="hint">No public holiday falls into these days.</p>;
  const pick = (date: string, off: boolean) => p.onSet((q) => withWork(q, end, (w) => withWorked(w, date, !off)), off ? 'A holiday kept' : 'A holiday worked');
  return (
    <fieldset class="holiday-days">
      <legend>kept free</legend>
      {seen.map((h) => (
        <label class="tick-box" key={h.date}>
          <input type="checkbox" checked={!work.worked.includes(h.date)} onChange={(e) => pick(h.date, e.currentTarget.checked)} />
          <span>{dayWords(h.date)}, {h.name}</span>
        </label>
      ))}
    </fieldset>
  );
}

/** Closures that the plan runs into and that are not put in. */
function Missing(p: With) {
  const closes = p.set.lunarYear;
  const missing = p.calendar?.missing ?? [];
  return (
    <>
      <label class="tick-box">
        <input type="checkbox" checked={closes} onChange={(e) => { const on = e.currentTarget.checked; p.onSet((q) => ({ ...q, lunarYear: on }), on ? 'Closes for the lunar new year' : 'Stays open over the lunar new year'); }} />
        <span>closes round the lunar new year and in the week from 1 October</span>
      </label>
      {closes && missing.length > 0 ? (
        <p class="missing-closures">
          Not in the list, and within these days: {missing.map(spanWords).join('; ')}.{' '}
          <button type="button" class="link" onClick={() => p.onSet((q) => withWork(q, 'maker', (w) => withOff(w, missing)), 'Closures put in')}>Put them in</button>
        </p>
      ) : null}
      {closes ? p.usual?.closures.unknown.map((u) => <p class="hint" key={u}>{u}</p>) : null}
    </>
  );
}

/** Days worked all the same that are no holiday of the list above. */
function Worked(p: With) {
  const { end, work } = p;
  const holidays = new Set(p.usual?.holidays.find((h) => h.code === work.country)?.holidays.map((h) => h.date));
  const set = (i: number, day: string) => p.onSet((q) => withWork(q, end, (w) => ({ worked: w.worked.flatMap((d, j) => (j !== i ? [d] : day ? [day] : [])) })), 'A day worked all the same');
  const add = () => p.onSet((q) => withWork(q, end, (w) => withWorked(w, p.today, true)), 'A day worked all the same');
  const rows = work.worked.map((day, i) => ({ day, i })).filter(({ day }) => !holidays.has(day));
  return (
    <div class="worked-days">
      {rows.map(({ day, i }) => (
        <span class="day-row" key={i}>
          <DateField label="worked all the same" value={day} fault={faultOf(p.faults, `${end}.worked[${i}]`)} onDay={(d) => set(i, d)} />
          <button type="button" class="link" aria-label={`${dayWords(day)} is not worked`} onClick={() => set(i, '')}>✕</button>
        </span>
      ))}
      <button type="button" class="link" onClick={add}>Add a day worked all the same</button>
    </div>
  );
}
