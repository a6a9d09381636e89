// What it is, in one line, as at the foot of every technical drawing.
import type { Check, Design, Plating, Version } from '../engine/wire.gen';
import { TextField } from '../widgets/TextField';
import { eachWords, enamelCount, FILL_WORDS, MAKING_WORDS, plural, VERDICT } from '../words/words';

interface Props {
  check: Check | undefined;
  /** Design and version that the check was made for. */
  design: Design | undefined;
  version: Version | undefined;
  plating: Plating | undefined;
  behind: boolean;
  /** What a piece comes to where the order holds more than this version. */
  each?: { says: string; of: string } | undefined;
  onName: (name: string) => void;
  onGo: (section: string) => void;
}

export function TitleBlock({ check, design, version, plating, behind, each, onName, onGo }: Props) {
  if (!check || !design || !version) return <div class="title-block empty" />;
  const v = VERDICT[check.verdict];
  return (
    <section class={behind ? 'title-block behind' : 'title-block'} aria-label="Title block">
      <div class="cell name">
        <TextField label="name" value={design.name} onSet={(t) => { if (!t.trim()) return 'A pin wants a name.'; onName(t.trim()); return undefined; }} />
      </div>
      <Cell label="colours" value={plural(enamelCount(check.flats.flats), 'enamel')} onClick={() => onGo('colours')} />
      <Cell label="size" value={check.shown.inMM} more={check.shown.inInches} onClick={() => onGo('sight')} />
      <Cell label="making" value={MAKING_WORDS[design.making]} more={FILL_WORDS[design.fill]} onClick={() => onGo('metal')} />
      <Cell label="plating" value={plating?.name ?? '—'} onClick={() => onGo('metal')} />
      <Cell label="quantity" value={plural(version.quantity, 'pin')} onClick={() => onGo('order')} />
      <Cell label="each" value={each?.says ?? eachWords(check)} more={[each?.of, check.quote.invented && 'invented prices'].filter(Boolean).join(', ')} onClick={() => onGo('order')} />
      <button type="button" class={`cell verdict ${check.verdict}`} onClick={() => onGo('metal')}>
        <span class="stamp" aria-hidden="true">{v.mark}</span>
        <span><span class="field-label">{v.word}</span>{check.words}</span>
      </button>
    </section>
  );
}

function Cell({ label, value, more, onClick }: { label: string; value: string; more?: string; onClick: () => void }) {
  return (
    <button type="button" class="cell" onClick={onClick}>
      <span class="field-label">{label}</span>
      <span class="cell-value">{value}</span>
      {more ? <span class="cell-more">{more}</span> : null}
    </button>
  );
}
