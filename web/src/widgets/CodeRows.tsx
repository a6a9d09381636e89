// Each colour beside its nearest codes, as two halves of one dab.
import { useState } from 'preact/hooks';
import type { CodeMatch, Codes, ColourEntry, FlatCodes, RGB8 } from '../engine/wire.gen';
import { hexOf } from '../state/project';
import { nearWords, standing } from '../words/codes';

export interface TakeProps {
  /** Entries by code in small letters, for a code that is typed. */
  find: (code: string) => ColourEntry | undefined;
  onTake: (flat: number, entry: ColourEntry, painted: boolean) => void;
  onOff: (flat: number) => void;
}

export function CodeRows({ codes, ...take }: TakeProps & { codes: Codes }) {
  return (
    <ul class="code-rows">
      {codes.rows.map((row) => <li key={row.flat}><CodeRow row={row} {...take} /></li>)}
    </ul>
  );
}

function CodeRow({ row, ...take }: TakeProps & { row: FlatCodes }) {
  const { taken } = row;
  const entry = taken?.match?.entry ?? (taken ? undefined : row.nearest[0]?.entry);
  const code = taken?.code ?? entry?.code;
  const name = taken ? taken.named : entry?.name;
  return (
    <details class={taken ? 'code-row taken' : 'code-row'}>
      <summary>
        <Pair own={row.rgb} other={entry?.rgb} />
        <span class="code-words">
          <span class="code-line">
            <span class="flat-name">{row.name}</span><span class="unseen">: </span>
            {code ? <Tag code={code} written={taken !== undefined} /> : null}
          </span>
          <span class="code-far">{name ? `${name} · ` : ''}{standing(row)}</span>
        </span>
        <svg class="chevron" viewBox="0 0 12 12" aria-hidden="true"><path d="M2 4l4 4 4-4" /></svg>
      </summary>
      <div class="code-choices">
        <p class="hint">Write a code beside {row.name} and keep the colour as you drew it, or take the maker’s colour with it.</p>
        {choices(row).map((m) => <Candidate key={m.entry.code} row={row} match={m} {...take} />)}
        <Other row={row} {...take} />
        {taken ? <button type="button" class="link" onClick={() => take.onOff(row.flat)}>Take {taken.code} off</button> : null}
      </div>
    </details>
  );
}

/** The nearest, and the one that was taken where it is none of them. */
function choices(row: FlatCodes): CodeMatch[] {
  const own = row.taken?.match;
  return own && !row.nearest.some((m) => m.index === own.index) ? [own, ...row.nearest] : row.nearest;
}

function Candidate({ row, match, onTake }: TakeProps & { row: FlatCodes; match: CodeMatch }) {
  const e = match.entry;
  const written = row.taken?.code === e.code;
  const painted = written && row.taken?.recoloured === true;
  return (
    <div class="candidate">
      <Pair own={row.rgb} other={e.rgb} />
      <p class="code-words">
        <span class="code-line"><Tag code={e.code} written={written} />{e.name ? <span>{e.name}</span> : null}</span>
        <span class="code-far">{nearWords(match)}{e.outside ? '; stronger than this screen can show' : ''}</span>
      </p>
      <span class="two">
        <button type="button" class="plain" aria-pressed={written && !painted} onClick={() => onTake(row.flat, e, false)}>
          Code only<span class="unseen">: {e.code} for {row.name}</span>
        </button>
        <button type="button" class="plain" aria-pressed={painted} onClick={() => onTake(row.flat, e, true)}>
          Code and colour<span class="unseen">: {e.code} for {row.name}</span>
        </button>
      </span>
    </div>
  );
}

/** A code that the person knows. */
function Other({ row, find, onTake }: TakeProps & { row: FlatCodes }) {
  const [text, setText] = useState('');
  const [complaint, setComplaint] = useState<string>();
  const submit = (e: Event) => {
    e.preventDefault();
    const entry = find(text.trim());
    setComplaint(entry || !text.trim() ? undefined : `This list has no ${text.trim()}.`);
    if (!entry) return;
    setText('');
    onTake(row.flat, entry, false);
  };
  return (
    <form class="other-code" onSubmit={submit}>
      <label>
        <span class="field-label">or another code</span>
        <input type="text" value={text} autocomplete="off" spellcheck={false} aria-label={`Another code for ${row.name}`} aria-invalid={complaint ? true : undefined} onInput={(e) => setText(e.currentTarget.value)} />
      </label>
      <button type="submit" class="plain">Write it</button>
      {complaint ? <span class="complaint" role="alert">{complaint}</span> : null}
    </form>
  );
}

/** A tag as makers tie to a sample: solid once the code is written. */
export function Tag({ code, written }: { code: string; written: boolean }) {
  return (
    <span class={written ? 'tag written' : 'tag'}>
      <span class="tag-code">{code}</span>
      <span class="unseen">{written ? ', written' : ', the nearest'}</span>
    </span>
  );
}

/** Two colours with one edge between them: so they are best compared. */
export function Pair({ own, other }: { own: RGB8; other: RGB8 | undefined }) {
  const right = other ? hexOf(other) : 'transparent';
  return <span class="pair" style={{ backgroundImage: `linear-gradient(90deg, ${hexOf(own)} 50%, ${right} 50%)` }} aria-hidden="true" />;
}

/** What all codes are near to, in numbers, for those who ask. */
export function CodeNumbers({ codes }: { codes: Codes }) {
  return (
    <table class="code-numbers">
      <thead><tr><th scope="col">colour</th><th scope="col">nearest codes, ΔE00</th></tr></thead>
      <tbody>
        {codes.rows.map((r) => (
          <tr key={r.flat}>
            <th scope="row">{r.name}</th>
            <td>{r.nearest.map((m) => <span key={m.index}>{m.entry.code} {m.de.toFixed(1)}</span>)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

