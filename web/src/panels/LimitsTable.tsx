// What the maker can hold: every limit, to be put in from the maker's own sheet.
import type { Limits, TypedAsk } from '../engine/wire.gen';
import { typed } from '../state/typed';
import { TextField } from '../widgets/TextField';
import { LIMIT_GROUPS, OFF, type LimitRow } from '../words/limits';

interface Props {
  limits: Limits;
  /** Changes as things then are: another field may have been read since. */
  onLimits: (change: Partial<Limits>) => void;
  onUsual: () => void;
}

const AS: Record<LimitRow['unit'], TypedAsk['as']> = { mm: 'length', 'mm²': 'area', N: 'force', '°': 'angle' };

/** No maker's limit is as coarse as this. */
const COARSEST: Record<LimitRow['unit'], number> = { mm: 20, 'mm²': 20, N: 100, '°': 180 };

export function LimitsTable({ limits, onLimits, onUsual }: Props) {
  return (
    <details class="more">
      <summary>What the maker can hold</summary>
      <p class="hint">Usual figures of the trade; put in your own maker’s. Where it says so, “{OFF}” leaves a thing unlooked at.</p>
      {LIMIT_GROUPS.map((g) => (
        <fieldset key={g.name} class="limits">
          <legend>{g.name}</legend>
          <div class="limit-grid">{g.rows.map((row) => <Limit key={row.key} row={row} value={limits[row.key] ?? 0} onLimits={onLimits} />)}</div>
        </fieldset>
      ))}
      <button type="button" class="plain" onClick={onUsual}>Back to the usual figures</button>
    </details>
  );
}

function Limit({ row, value, onLimits }: Pick<Props, 'onLimits'> & { row: LimitRow; value: number }) {
  const set = (text: string) => {
    if (row.off && [OFF, '0'].includes(text.trim().toLowerCase())) return () => onLimits({ [row.key]: 0 });
    return typed({ text, as: AS[row.unit], beside: row.unit, most: COARSEST[row.unit] }, (t) => onLimits({ [row.key]: t.number }));
  };
  return (
    <TextField
      label={row.off ? `${row.label}, or ${OFF}` : row.label} unit={row.unit} value={row.off && value === 0 ? OFF : String(value)}
      numeric={!row.off} onSet={set}
    />
  );
}
