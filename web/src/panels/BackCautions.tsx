// What must be heeded: from the pin's parts and those it is meant for.
import type { Buyers, Caution, Rule } from '../engine/wire.gen';
import { Choice } from '../widgets/basic';
import type { OnBack } from './BackPanel';

interface Props {
  cautions: readonly Caution[];
  buyers: Buyers;
  onBack: OnBack;
}

const TITLES: Record<Caution['matter'], string> = {
  'small-parts': 'Small parts', magnets: 'Magnets', sharp: 'Points and edges', nickel: 'Nickel',
  'lead-and-cadmium': 'Lead and cadmium', law: 'Who decides',
};

const BUYERS: readonly { value: Buyers; label: string }[] = [
  { value: '', label: 'grown-ups' }, { value: 'teens', label: '13 and up' }, { value: 'eight', label: '8 and up' },
  { value: 'three', label: '3 and up' }, { value: 'toddlers', label: 'under 3 too' },
];

export function BackCautions({ cautions, buyers, onBack }: Props) {
  return (
    <>
      <h3>Cautions</h3>
      <Choice legend="Who it is meant for" value={buyers} options={BUYERS}
        onPick={(v) => onBack(() => ({ buyers: v || undefined }), `Meant for ${BUYERS.find((b) => b.value === v)?.label ?? 'grown-ups'}`)} />
      <ul class="cautions">
        {cautions.map((c) => (
          <li key={c.matter} class={c.grave ? 'grave' : ''}>
            <p><b>{c.grave ? <span aria-hidden="true">! </span> : null}{TITLES[c.matter]}.</b> {c.says}</p>
            <p>{c.do}</p>
            <details class="why">
              <summary>clause and number</summary>
              <div class="why-body">
                {c.more.map((w) => <p key={w}>{w}</p>)}
                {c.rules.map((r) => <p key={r.clause + r.what}>{ruleWords(r)}</p>)}
              </div>
            </details>
          </li>
        ))}
      </ul>
    </>
  );
}

const PLACES: Record<string, string> = { US: 'US', 'US-CA': 'California', EU: 'EU' };

const UNITS: Record<string, string> = { 'ug/cm2/week': 'µg/cm² a week', 'kG2 mm2': 'kG² mm²', 'T2 mm2': 'T² mm²', 'percent by weight': '% by weight' };

const figure = (value: string, unit: string) => `${value} ${UNITS[unit] ?? unit}`;

function ruleWords(r: Rule): string {
  const number = r.value ? ` ${figure(r.value, r.unit)}${r.value2 ? ` (${figure(r.value2, r.unit2)})` : ''}` : '';
  const note = r.note ? `; ${r.note}` : '';
  const memory = r.memory ? ' Part of this is from memory: look it up.' : '';
  return `${PLACES[r.place] ?? r.place}, ${r.clause}: ${r.what}${number}${note}.${memory}`;
}
