// Days off and closures as ranges that can be changed.
import type { DaySpan, Workdays } from '../engine/wire.gen';
import { withOff, withWork } from '../state/calendar';
import { DateField } from '../widgets/DateField';
import { TextField } from '../widgets/TextField';
import { faultOf, spanWords, WORK_WORDS } from '../words/calendar';
import type { WorkProps } from './CalendarWork';

export function DaySpans(p: WorkProps & { work: Workdays }) {
  const { end, work } = p;
  const words = WORK_WORDS[end];
  const add = () => p.onSet((q) => withWork(q, end, (w) => withOff(w, [{ from: p.today, to: p.today, name: words.span }])), words.spans);
  return (
    <div class="day-spans">
      <h4>{words.spans}</h4>
      {work.off.length > 0 ? <ul>{work.off.map((span, i) => <Span key={i} {...p} span={span} i={i} />)}</ul> : null}
      <button type="button" class="link" onClick={add}>{words.add}</button>
    </div>
  );
}

function Span(p: WorkProps & { span: DaySpan; i: number }) {
  const { span, i, end } = p;
  const what = WORK_WORDS[end].spans;
  const change = (c: Partial<DaySpan>) => p.onSet((q) => withWork(q, end, (w) => ({ off: w.off.map((o, j) => (j === i ? { ...o, ...c } : o)) })), what);
  const drop = () => p.onSet((q) => withWork(q, end, (w) => ({ off: w.off.filter((_, j) => j !== i) })), `Taken out: ${span.name || what}`);
  const fault = (at: string) => faultOf(p.faults, `${end}.off[${i}].${at}`);
  return (
    <li class="day-row">
      <DateField label="from" value={span.from} fault={fault('from')} onDay={(from) => change({ from })} />
      <DateField label="to" value={span.to} fault={fault('to')} onDay={(to) => change({ to })} />
      <TextField class="span-name" label="for" value={span.name} onSet={(name) => () => change({ name: name.trim() })} />
      <button type="button" class="link" aria-label={`Take out ${spanWords(span)}`} onClick={drop}>✕</button>
    </li>
  );
}
