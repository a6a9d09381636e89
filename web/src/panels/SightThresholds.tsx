// What counts as told apart, and from where each figure comes: data the person
// can change.
import type { Thresholds } from '../engine/wire.gen';
import type { Outcome } from '../state/typed';
import { TextField } from '../widgets/TextField';

export interface SightThresholdsProps {
  thresholds: Thresholds;
  usual: Thresholds;
  onThreshold: (key: keyof Thresholds, text: string) => Promise<Outcome>;
  onUsual: () => void;
}

const FIELDS: readonly { key: keyof Thresholds; label: string; unit: string; source: string }[] = [
  { key: 'gap', label: 'gap that is told apart', unit: 'min of arc', source: 'ISO 8596, for a normal eye' },
  { key: 'letter', label: 'capitals, at least', unit: 'min of arc', source: 'ISO 9241-303' },
  { key: 'letterBest', label: 'capitals, with ease', unit: 'min of arc', source: 'ISO 9241-303: 20 to 22' },
  { key: 'noticed', label: 'difference that is noticed', unit: 'S-CIELAB', source: 'this tool’s choice' },
  { key: 'colour', label: 'two enamels', unit: 'CIEDE2000', source: 'this tool’s choice' },
  { key: 'metal', label: 'enamel and metal', unit: 'CIEDE2000', source: 'this tool’s choice' },
  { key: 'lightness', label: 'lightness alone', unit: 'to 1', source: 'WCAG 2, 1.4.11, for graphics' },
];

export function SightThresholds({ thresholds, usual, onThreshold, onUsual }: SightThresholdsProps) {
  const changed = FIELDS.some((f) => thresholds[f.key] !== usual[f.key]);
  return (
    <details class="why thresholds">
      <summary>what counts as told apart?</summary>
      <div class="why-body">
        <div class="limit-grid">
          {FIELDS.map((f) => (
            <div key={f.key}>
              <TextField label={f.label} unit={f.unit} value={String(thresholds[f.key])} numeric onSet={(text) => onThreshold(f.key, text)} />
              <span class="hint">{f.source}</span>
            </div>
          ))}
        </div>
        {changed ? <button type="button" class="plain" onClick={onUsual}>Back to the usual figures</button> : null}
      </div>
    </details>
  );
}
