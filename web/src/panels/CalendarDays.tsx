// The days in words: as a table beside the drawing, and as a list with a lane
// each where there is no room for the drawing.
import type { StepRow } from '../engine/wire.gen';
import { dayLine } from '../state/dayline';
import { dayWords, lengthWords, spareWords } from '../words/calendar';
import { capital } from '../words/words';
import { LoneLane } from './CalendarLane';
import { freeOf, rowsOf, type RulerProps } from './CalendarRuler';

const falls = (r: StepRow) => r.falls || (r.days === 0 ? 'takes no days' : 'over');

export function DaysTable({ calendar: c, launch }: Pick<RulerProps, 'calendar' | 'launch'>) {
  return (
    <details class="more days-table">
      <summary>The days in a table</summary>
      <div class="scroll">
        <table>
          <thead>
            <tr>
              <th scope="col">step</th><th scope="col">as it falls</th>
              {launch ? <><th scope="col">at the latest</th><th scope="col">to spare</th></> : null}
              <th scope="col">free in between</th>
            </tr>
          </thead>
          <tbody>
            {c.rows.map((r) => (
              <tr key={r.key}>
                <th scope="row">{r.name}, {lengthWords(r)}</th><td>{falls(r)}</td>
                {launch ? <><td>{r.latest || '–'}</td><td>{r.first && r.latest ? spareWords(r.spare) : '–'}</td></> : null}
                <td>{r.over.join(', ') || '–'}</td>
              </tr>
            ))}
            {launch ? <tr><th scope="row">{c.slack.name}, {lengthWords(c.slack)}</th><td>–</td><td>{c.slack.latest || '–'}</td><td>–</td><td>–</td></tr> : null}
            <tr><th scope="row">All ready</th><td>{dayWords(c.ready)}</td>{launch ? <><td>{dayWords(launch)}, launch</td><td>–</td></> : null}<td>–</td></tr>
          </tbody>
        </table>
      </div>
    </details>
  );
}

export function DaysList({ calendar: c, launch, today, width }: RulerProps) {
  const line = dayLine(c.ruler.from, c.ruler.to, width);
  return (
    <ol class="days-list">
      <li class="day-mark today">Today, {dayWords(today)}</li>
      {rowsOf(c).map((r) => (
        <li key={r.key}>
          <p><b>{r.name}</b> <span class="row-days">{lengthWords(r)}</span></p>
          {r.falls ? <p>{r.falls}</p> : null}
          <LoneLane row={r} line={line} free={freeOf(c, r)} launch={launch} today={today} />
          {r.latest ? <p class={r.spare < 0 ? 'latest-says late' : 'latest-says'}>At the latest {r.latest}{r.first ? `: ${spareWords(r.spare)}` : ', kept free'}</p> : null}
          {r.over.length > 0 ? <p class="hint">Free in between: {r.over.join(', ')}</p> : null}
        </li>
      ))}
      <li class="day-mark ready">{capital('all ready')} on {dayWords(c.ready)}</li>
      {launch ? <li class="day-mark launch">Launch, {dayWords(launch)}</li> : null}
    </ol>
  );
}
