// The order drawn over its days: a lane for each step, today, the launch day and
// the slack before it.
import { useId } from 'preact/hooks';
import type { Calendar, FreeRun, StepRow } from '../engine/wire.gen';
import { dayLine, mondays, months, type DayLine } from '../state/dayline';
import { lengthWords, monthWords, shortDay, spareWords } from '../words/calendar';
import { Hatching, LANE, Lane } from './CalendarLane';

export interface RulerProps {
  calendar: Calendar;
  /** Days as ISO 8601 has them; no launch day is empty. */
  today: string;
  launch: string;
  /** px there are. */
  width: number;
}

const HEAD = 40;
const NAME = 19;
const ROW = NAME + LANE + 8;
const FOOT = 18;
/** Room for the name of a month, px. */
const MONTH_ROOM = 34;
/** Weeks narrower than this, px, get no tick. */
const WEEK_ROOM = 8;
/** Room at both ends, so that a line on the first or the last day is seen, px. */
const EDGE = 5;

/** Whose days off lie under a step. */
export const freeOf = (c: Calendar, r: StepRow): readonly FreeRun[] => (r.by === 'every' ? [] : c.ruler[r.by]);

/** Steps that still have days, and the slack. */
export const rowsOf = (c: Calendar): StepRow[] => [...c.rows.filter((r) => r.first !== ''), ...(c.slack.latestFirst ? [c.slack] : [])];

export function CalendarRuler({ calendar: c, today, launch, width }: RulerProps) {
  const hatch = useId();
  const line = dayLine(c.ruler.from, c.ruler.to, width - 2 * EDGE);
  const rows = rowsOf(c);
  const foot = HEAD + rows.length * ROW;
  return (
    <figure class="cal-ruler">
      <svg width={width} height={foot + FOOT} viewBox={`0 0 ${width} ${foot + FOOT}`} role="img" aria-label="The steps of the order over their days; the table below says the same.">
        <Hatching id={hatch} />
        <g transform={`translate(${EDGE} 0)`}>
          <Scale line={line} foot={foot} />
          {rows.map((r, i) => (
            <g key={r.key} transform={`translate(0 ${HEAD + i * ROW + NAME})`}><Lane row={r} line={line} free={freeOf(c, r)} hatch={hatch} launch={launch} /></g>
          ))}
          <Mark kind="today" x={line.x(today)} says={`today, ${shortDay(today)}`} width={width} top={HEAD - 4} foot={foot} at={foot + 14} />
          {launch ? <Mark kind="launch" x={line.x(launch)} says={`launch, ${shortDay(launch)}`} width={width} top={HEAD - 10} foot={foot} at={HEAD - 12} /> : null}
        </g>
        {rows.map((r, i) => <RowWords key={r.key} row={r} y={HEAD + i * ROW + NAME - 6} end={width - 1} />)}
      </svg>
      <figcaption>
        <span class="cal-key falls">as the days fall</span>
        {launch ? <span class="cal-key latest">the latest, slack kept</span> : null}
        <span class="cal-key hatched">holiday, day off, closure</span>
      </figcaption>
    </figure>
  );
}

function RowWords({ row: r, y, end }: { row: StepRow; y: number; end: number }) {
  return (
    <g class="row-words">
      <text class="row-name" x={0} y={y}>{r.name}<tspan class="row-days" dx="6">{lengthWords(r)}</tspan></text>
      {r.first && r.latestFirst ? <text class={r.spare < 0 ? 'row-spare late' : 'row-spare'} x={end} y={y}>{spareWords(r.spare)}</text> : null}
    </g>
  );
}

/** Months along the top, and Mondays as small ticks. */
function Scale({ line, foot }: { line: DayLine; foot: number }) {
  const all = months(line);
  const first = all[0];
  const named = first && first.x >= MONTH_ROOM ? [{ day: '', x: 0 }, ...all] : all;
  const step = Math.max(1, Math.ceil(MONTH_ROOM / (line.wide * 30)));
  return (
    <g class="scale">
      {all.map((t) => <path key={t.day} class="month-line" d={`M${t.x} 0V${foot}`} />)}
      {line.wide * 7 >= WEEK_ROOM ? mondays(line).map((t) => <path key={t.day} class="week-tick" d={`M${t.x} ${HEAD - 5}v5`} />) : null}
      {named.map((t, i) => (t.day && i % step === 0 ? <text key={t.day} class="month" x={t.x + 4} y={12}>{monthWords(t.day, i === 0)}</text> : null))}
    </g>
  );
}

interface MarkProps {
  kind: 'today' | 'launch';
  x: number;
  says: string;
  width: number;
  top: number;
  foot: number;
  /** Where its words stand. */
  at: number;
}

function Mark({ kind, x, says, width, top, foot, at }: MarkProps) {
  const left = x > width / 2;
  return (
    <g class={`mark ${kind}`}>
      <path class={`${kind}-line`} d={`M${x} ${top}V${foot + 3}`} />
      {kind === 'launch' ? <path class="flag" d={`M${x} ${top - 12}v14M${x} ${top - 12}h${left ? -9 : 9}v7h${left ? 9 : -9}z`} /> : <path class="point" d={`M${x} ${foot + 3}l-4 6h8z`} />}
      <text x={left ? x - 13 : x + 13} y={at} class={left ? 'to-left' : undefined}>{says}</text>
    </g>
  );
}
