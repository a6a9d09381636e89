// Quotes as makers give them, and the simplest list that they agree with.
import { useEffect, useRef, useState } from 'preact/hooks';
import type { DeducedEntry, DeducedStatus, Deduction, PlainMistake, PriceList } from '../engine/wire.gen';
import { plural } from '../words/words';

export interface QuotesProps {
  /** The quotes as they are kept. */
  text: string;
  /** The quotes that the answer is about. */
  asked: string | undefined;
  working: { share: number; stop: () => void } | undefined;
  found: Deduction | undefined;
  refused: { what: string; do: string } | undefined;
  /** The price list in use. */
  used: PriceList;
  onText: (text: string) => void;
  onWork: (text: string) => void;
  onUse: (list: PriceList) => void;
  onInPlace: (list: PriceList) => void;
  onLeave: () => void;
}

/** Worked examples; each line says what is understood. */
const EXAMPLES = [
  '150 at 30 mm with 3 colours: 412.50',
  '150 at 30 mm with 3 colours, without die: 345',
  '300 at 30 mm with 6 colours: 760',
  '150 at 1 1/4 in, hard, two posts, delivered: 520',
  '200 at 30 mm with 3 colours: 2.10 each',
] as const;

export function QuotesPanel(p: QuotesProps) {
  const [draft, setDraft] = useState<string>();
  const box = useRef<HTMLTextAreaElement>(null);
  const text = draft ?? p.text;
  const keep = () => {
    if (draft !== undefined && draft !== p.text) p.onText(draft);
    setDraft(undefined);
  };
  const work = () => {
    setDraft(undefined);
    p.onWork(text);
  };
  return (
    <details class="more quotes">
      <summary>From quotes to a list</summary>
      <p class="hint">Type what a maker told you, a quote a line. The simplest price list that agrees with them is worked out, and what they leave open is said.</p>
      <label class="quotes-text">
        <span class="field-label">quotes, one a line, in {p.used.currency}</span>
        <textarea
          ref={box} rows={6} value={text} placeholder={EXAMPLES.slice(0, 2).join('\n')} spellcheck={false} aria-describedby="quotes-mistakes"
          onInput={(e) => setDraft(e.currentTarget.value)} onBlur={keep} onPaste={(e) => e.stopPropagation()} onKeyDown={(e) => e.stopPropagation()}
        />
      </label>
      <Mistakes all={p.asked === text ? (p.found?.mistakes ?? []) : []} onLine={(line) => select(box.current, line)} />
      <details class="more">
        <summary>How a quote is written</summary>
        <ul class="notes examples">{EXAMPLES.map((e) => <li key={e}><code>{e}</code></li>)}</ul>
        <p class="hint">A total holds the die unless it says “without die” or “reorder”, and no shipping unless it says “with shipping” or “delivered”. A price “each” is taken without the die.</p>
      </details>
      <p class="row-acts">
        <button type="button" class="solid" disabled={!text.trim() || p.working !== undefined} onClick={work}>Work out a list</button>
        {p.working ? <Working {...p.working} /> : null}
      </p>
      {p.refused ? <div class="list-news bad" role="alert"><p><b>{p.refused.what}</b> {p.refused.do}</p></div> : null}
      {p.found ? <Proposal {...p} found={p.found} late={p.asked !== text} /> : null}
    </details>
  );
}

/** Picks a line out of the text, to be corrected. */
function select(box: HTMLTextAreaElement | null, line: number): void {
  const lines = box?.value.split('\n') ?? [];
  const from = lines.slice(0, line - 1).reduce((n, l) => n + l.length + 1, 0);
  box?.focus();
  box?.setSelectionRange(from, from + (lines[line - 1]?.length ?? 0));
}

function Mistakes({ all, onLine }: { all: readonly PlainMistake[]; onLine: (line: number) => void }) {
  return (
    <ul class="quote-mistakes" id="quotes-mistakes" role="alert">
      {all.map((m) => (
        <li key={m.line} class="complaint"><button type="button" class="link" onClick={() => onLine(m.line)}>line {m.line}</button> “{m.text}”: {m.what}</li>
      ))}
    </ul>
  );
}

function Working({ share, stop }: { share: number; stop: () => void }) {
  return (
    <span class="quotes-working">
      <label>working it out <progress max={1} value={share > 0 ? share : undefined} /></label>
      <button type="button" class="plain" onClick={stop}>Stop</button>
    </span>
  );
}

function Proposal(p: QuotesProps & { found: Deduction; late: boolean }) {
  const { found } = p;
  const ref = useRef<HTMLDivElement>(null);
  useEffect(() => ref.current?.scrollIntoView({ block: 'nearest' }), [found]);
  if (found.entries.length === 0) return null;
  const open = found.entries.filter((e) => e.status !== 'fixed').length;
  return (
    <div ref={ref} class={p.late ? 'proposal behind' : 'proposal'} role="status">
      <p><b>{found.agrees ? 'A list that agrees with these quotes.' : 'No list agrees with all of these quotes; this is the nearest.'}</b>{' '}
        {open === 0 ? 'Every entry is fixed by them.' : `${plural(open, 'entry', 'entries')} of ${found.entries.length} not fixed yet.`}</p>
      {found.next ? <p class="next-quote"><span class="field-label">what to ask next</span>{found.next.words}</p> : null}
      <Entries all={found.entries} />
      {found.residuals.length > 0 ? <Residuals {...found} /> : null}
      <ul class="notes">{found.notes.map((n) => <li key={n}>{n}</li>)}</ul>
      {p.late ? <p>The quotes were changed since: work it out again.</p> : null}
      <p class="row-acts">
        <button type="button" class="solid" disabled={p.late} onClick={() => p.onUse(found.list)}>Use this list</button>
        <button type="button" class="plain" disabled={p.late} onClick={() => p.onInPlace(found.list)}>Put it in the place of “{p.used.name}”</button>
        <button type="button" class="link" onClick={p.onLeave}>leave it</button>
      </p>
    </div>
  );
}

const SIGNS: Record<DeducedStatus, { sign: string; word: string }> = {
  fixed: { sign: '●', word: 'fixed by the quotes' },
  between: { sign: '◐', word: 'held between' },
  unknown: { sign: '○', word: 'unknown' },
};

function Entries({ all }: { all: readonly DeducedEntry[] }) {
  return (
    <div class="scroll">
      <table class="deduced">
        <thead><tr><th scope="col">entry</th><th scope="col">how well it is known</th><th scope="col">what it is</th></tr></thead>
        <tbody>
          {all.map((e) => (
            <tr key={e.cell} class={e.status}>
              <th scope="row">{e.what}</th>
              <td><span class="sign" aria-hidden="true">{SIGNS[e.status].sign}</span> {SIGNS[e.status].word}</td>
              <td>{e.status === 'unknown' ? 'left open in the list' : e.says}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Residuals({ residuals, agrees }: Deduction) {
  return (
    <details class="more" open={!agrees}>
      <summary>How near the list is to each quote</summary>
      <div class="scroll">
        <table class="deduced">
          <thead><tr><th scope="col">quote</th><th scope="col">the list says</th></tr></thead>
          <tbody>{residuals.map((r, i) => <tr key={i}><th scope="row">{r.text}</th><td>{r.says}</td></tr>)}</tbody>
        </table>
      </div>
    </details>
  );
}
