// The calendar: its answer in a sentence, the days drawn, and what they hang on.
import type { OrderUsual, Schedule } from '../engine/wire.gen';
import type { Shown } from '../state/calendar';
import { Room } from '../widgets/Room';
import { DateField } from '../widgets/DateField';
import { CountField } from '../widgets/TextField';
import { calendarSays, coverage, faultOf, missed } from '../words/calendar';
import { Why } from '../widgets/basic';
import { DaysList, DaysTable } from './CalendarDays';
import { CalendarRuler } from './CalendarRuler';
import { CalendarSteps, Standing } from './CalendarSteps';
import { CalendarWays } from './CalendarWays';
import { CalendarWork } from './CalendarWork';

export interface CalendarProps extends Shown {
  /** How the calendar is set; missing until the engine has said what it starts from. */
  set: Schedule | undefined;
  usual: OrderUsual | undefined;
  today: string;
  /** px there are. */
  width: number;
  onSet: (change: (set: Schedule) => Schedule, what: string) => void;
  onWay: (name: string) => void;
  onSave: () => void;
}

/** Less room than this, px, and the days are a list. */
const LEAST_RULER = 366;

export function CalendarPanel(p: CalendarProps) {
  const { set, calendar: c } = p;
  const says = calendarSays(c, p.faults.length, p.problem);
  return (
    <Room id="calendar" title="Calendar" says={says} alarm={missed(c, p.filled) || p.faults.length > 0} late={p.late && p.faults.length === 0 && c !== undefined}>
      {c && p.width > 0 ? <Drawn {...p} calendar={c} launch={p.filled?.launch ?? ''} /> : null}
      {set ? <Fields {...p} set={set} /> : null}
    </Room>
  );
}

function Drawn(p: CalendarProps & { calendar: NonNullable<CalendarProps['calendar']>; launch: string }) {
  const { calendar: c, launch, today, width } = p;
  const of = { calendar: c, launch, today, width };
  return (
    <div class={p.late ? 'cal-drawn behind' : 'cal-drawn'}>
      {width < LEAST_RULER ? <DaysList {...of} /> : <><CalendarRuler {...of} /><DaysTable {...of} /></>}
      {c.notes.length > 0 ? <ul class="notes">{c.notes.map((n) => <li key={n}>{n}</li>)}</ul> : null}
    </div>
  );
}

function Fields(p: CalendarProps & { set: Schedule }) {
  const { set, faults, onSet } = p;
  return (
    <>
      <div class="order-fields">
        <DateField label="launch day" value={set.launch} fault={faultOf(faults, 'launch')} onDay={(launch) => onSet((q) => ({ ...q, launch }), launch ? 'Launch day' : 'No launch day')} />
        <DateField label="work begins, if not today" value={set.start} fault={faultOf(faults, 'start')} onDay={(start) => onSet((q) => ({ ...q, start }), start ? 'First day' : 'Begun today')} />
        <CountField label="kept free before it" value={set.slack} least={0} most={365} unit="working days" fault={faultOf(faults, 'slack')} onCount={(slack) => onSet((q) => ({ ...q, slack }), 'Slack')} />
        <Standing set={set} faults={faults} onSet={onSet} />
      </div>
      {p.calendar ? <CalendarWays calendar={p.calendar} filled={p.filled} unpriced={p.unpriced} onWay={p.onWay} /> : null}
      <CalendarSteps set={set} filled={p.filled} faults={faults} onSet={onSet} />
      <CalendarWork end="here" set={set} usual={p.usual} calendar={p.calendar} today={p.today} faults={faults} onSet={onSet} />
      <CalendarWork end="maker" set={set} usual={p.usual} calendar={p.calendar} today={p.today} faults={faults} onSet={onSet} />
      <p class="row-acts"><button type="button" class="plain" onClick={p.onSave} disabled={p.late}>Save as a calendar file</button> <span class="hint">Whole days, for any calendar (iCalendar).</span></p>
      <Why ask="how are days counted?">
        <p>A step takes working days of whoever does it: holidays, days off and closures are waited for. With a launch day the steps are counted back from it, the days kept free first, so the latest days are the last on which nothing is lost; they are counted forward from today as well, and the two are held against each other.</p>
        <p>The lengths to start from, and how long makers close, are common practice without a published source: ask yours. {p.usual ? coverage(p.usual.countries) : ''} The lunar new year comes from a table for the years 2024 to 2034; outside them it is unknown here.</p>
      </Why>
    </>
  );
}
