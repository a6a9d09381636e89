// The delivery choices of the price list: which still make the day, and what
// each saves.
import type { Calendar, Schedule } from '../engine/wire.gen';
import { capital } from '../words/words';

interface Props {
  calendar: Calendar;
  filled: Schedule | undefined;
  unpriced: string;
  onWay: (name: string) => void;
}

export function CalendarWays({ calendar: c, filled, unpriced, onWay }: Props) {
  if (c.ways.length < 2) return null;
  return (
    <fieldset class="cal-ways">
      <legend>Delivery</legend>
      {c.bestSays ? <p>{capital(c.bestSays)}</p> : null}
      <ul class="maker-rows">
        {c.ways.map((w, i) => (
          <li key={w.name} class={i === filled?.way ? 'now' : undefined}>
            <input type="radio" name="cal-way" id={`cal-way-${i}`} checked={i === filled?.way} onChange={() => onWay(w.name)} />
            <label for={`cal-way-${i}`}>{w.name}</label>
            <span class="maker-now">{filled?.launch ? <span class={w.makes ? 'way-makes' : 'way-makes not'} aria-hidden="true">{w.makes ? '✓ ' : '✕ '}</span> : null}{w.says}</span>
          </li>
        ))}
      </ul>
      {unpriced ? <p class="hint">Nothing is said of prices: {unpriced}</p> : null}
    </fieldset>
  );
}
