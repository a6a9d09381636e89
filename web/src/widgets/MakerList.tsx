// A maker's colour list: how it comes in, what was read of it, and what the
// colours of the pin are called in it.
import { useRef, useState } from 'preact/hooks';
import type { Codes, ColourEntry, ColourList, ColourListRead, LineProblem, White } from '../engine/wire.gen';
import { placeWords } from '../words/codes';
import { Why } from './basic';
import { CodeNumbers, CodeRows, Pair, Tag } from './CodeRows';

/** What became of the list that was brought last. */
export interface ListNews {
  fileName: string;
  read?: ColourListRead | undefined;
  refused?: { what: string; do: string } | undefined;
}

export interface MakerListProps {
  list: ColourList | undefined;
  codes: Codes | undefined;
  news: ListNews | undefined;
  open: boolean;
  onOpen: (open: boolean) => void;
  onFile: (file: Blob, fileName: string) => void;
  onExample: () => void;
  onWhite: (white: White) => void;
  onTake: (takes: { flat: number; entry: ColourEntry }[], painted: boolean) => void;
  onOff: (flat: number) => void;
  onAway: () => void;
}

export function MakerList(p: MakerListProps) {
  const [pasting, setPasting] = useState(false);
  const bring = (file: Blob, fileName: string) => {
    setPasting(false);
    p.onFile(file, fileName);
  };
  return (
    <details class="more maker-list" open={p.open} onToggle={(e) => p.onOpen(e.currentTarget.open)}>
      <summary>A maker’s colour list{p.list ? `: ${p.list.name}` : ''}</summary>
      <div class="maker-body">
        {p.list ? null : <p class="hint">Makers order enamel by the codes of their own chart. Bring it as a table, a code, a name and a colour a line, and each of your colours finds its nearest code.</p>}
        {p.list && p.codes ? <Beside {...p} list={p.list} codes={p.codes} /> : null}
        <Ways has={p.list !== undefined} pasting={pasting} onPasting={setPasting} onFile={bring} onExample={p.onExample} onAway={p.onAway} />
        {p.news ? <News news={p.news} inUse={p.list} onWhite={p.onWhite} /> : null}
        {p.list && p.codes ? <Reasons codes={p.codes} notes={p.news?.read?.list === p.list ? p.news.read.notes : []} /> : null}
      </div>
    </details>
  );
}

const KINDS = '.csv,.tsv,.txt,text/csv,text/tab-separated-values,text/plain';

interface WaysProps {
  has: boolean;
  pasting: boolean;
  onPasting: (on: boolean) => void;
  onFile: (file: Blob, fileName: string) => void;
  onExample: () => void;
  onAway: () => void;
}

function Ways(p: WaysProps) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <input
        ref={input} class="unseen" type="file" accept={KINDS} tabIndex={-1} aria-label="Colour list file"
        onChange={(e) => {
          const file = e.currentTarget.files?.[0];
          if (file) p.onFile(file, file.name);
          e.currentTarget.value = '';
        }}
      />
      <div class="two ways">
        <button type="button" class={p.has ? 'link' : 'plain'} onClick={() => input.current?.click()}>{p.has ? 'another list' : 'Choose a list'}</button>
        <button type="button" class={p.has ? 'link' : 'plain'} aria-expanded={p.pasting} onClick={() => p.onPasting(!p.pasting)}>{p.has ? 'paste rows' : 'Paste rows'}</button>
        {p.has
          ? <button type="button" class="link" onClick={p.onAway}>put the list away</button>
          : <button type="button" class="link" onClick={p.onExample}>try an invented one</button>}
      </div>
      {p.pasting ? <PasteRows onFile={p.onFile} /> : null}
    </>
  );
}

const EXAMPLE = 'code,name,hex\nSL-54,Keeper’s blue,#1f4e8c';

/** Keys and pastes in here are the field's own, not the sheet's. */
function PasteRows({ onFile }: { onFile: (file: Blob, fileName: string) => void }) {
  const [text, setText] = useState('');
  return (
    <div class="paste-rows">
      <label>
        <span class="field-label">rows of the list, its header first</span>
        <textarea
          rows={5} value={text} placeholder={EXAMPLE} spellcheck={false} autofocus
          onInput={(e) => setText(e.currentTarget.value)} onPaste={(e) => e.stopPropagation()} onKeyDown={(e) => e.stopPropagation()}
        />
      </label>
      <button type="button" class="solid" disabled={!text.trim()} onClick={() => onFile(new Blob([text], { type: 'text/csv' }), '')}>Read these rows</button>
    </div>
  );
}

/** What was read; of what went wrong, each line. */
function News({ news, inUse, onWhite }: { news: ListNews; inUse: ColourList | undefined; onWhite: (w: White) => void }) {
  const { read, refused } = news;
  const kept = inUse && read?.list !== inUse ? `“${inUse.name}” stays in use.` : '';
  if (refused) return <div class="list-news bad" role="alert"><p><b>{refused.what}</b> {refused.do}</p>{kept ? <p>{kept}</p> : null}</div>;
  if (!read || (read.list !== inUse && read.list.entries.length > 0)) return null;
  if (read.needsWhite) return <WhichWhite words={read.words} kept={kept} onWhite={onWhite} />;
  return (
    <div class={read.list.entries.length > 0 ? 'list-news' : 'list-news bad'} role="status">
      <p><b>{news.fileName || 'Pasted rows'}:</b> {read.words} {kept}</p>
      {read.problems.length > 0 ? <LineFaults problems={read.problems} more={read.more} open={read.list.entries.length === 0} /> : null}
    </div>
  );
}

function WhichWhite({ words, kept, onWhite }: { words: string; kept: string; onWhite: (w: White) => void }) {
  return (
    <div class="list-news bad" role="alert">
      <p>{words} Which is it?</p>
      <div class="two">
        <button type="button" class="plain" onClick={() => onWhite('D50')}>D50, as charts and print have it</button>
        <button type="button" class="plain" onClick={() => onWhite('D65')}>D65, as screens have it</button>
      </div>
      {kept ? <p>{kept}</p> : null}
    </div>
  );
}

function LineFaults({ problems, more, open }: { problems: readonly LineProblem[]; more: number; open: boolean }) {
  const n = problems.length + more;
  return (
    <details class="more" open={open}>
      <summary>{n === 1 ? 'One line' : `${n} lines`} to look at</summary>
      <ol class="line-faults" tabIndex={0} aria-label="What is wrong, line by line">
        {problems.map((f, i) => (
          <li key={i}>
            <span class="line-place">{placeWords(f)}{f.kept ? ' · kept' : ''}</span>
            {' '}{f.what} <span class="line-do">{f.do}</span>
          </li>
        ))}
      </ol>
      {more > 0 ? <p class="hint">… and {more} more like these.</p> : null}
    </details>
  );
}

function Beside(p: MakerListProps & { list: ColourList; codes: Codes }) {
  const find = (code: string) => p.list.entries.find((e) => e.code.toLowerCase() === code.toLowerCase());
  const open = p.codes.rows.filter((r) => !r.taken && r.nearest[0]);
  const nearest = open.flatMap((r) => (r.nearest[0] ? [{ flat: r.flat, entry: r.nearest[0].entry }] : []));
  return (
    <>
      <CodeRows codes={p.codes} find={find} onTake={(flat, entry, painted) => p.onTake([{ flat, entry }], painted)} onOff={p.onOff} />
      <OneCode codes={p.codes} onTake={p.onTake} />
      {nearest.length > 1 ? (
        <fieldset>
          <legend>{open.length === p.codes.rows.length ? 'all' : 'the other'} nearest codes at once</legend>
          <div class="two">
            <button type="button" class="plain" onClick={() => p.onTake(nearest, false)}>Codes only</button>
            <button type="button" class="plain" onClick={() => p.onTake(nearest, true)}>Codes and colours</button>
          </div>
        </fieldset>
      ) : null}
    </>
  );
}

function fallsOn(codes: Codes, flat: number): string | undefined {
  const row = codes.rows.find((r) => r.flat === flat);
  return row?.taken?.code ?? row?.nearest[0]?.entry.code;
}

/** Flats that fall on one code, and how each could have its own. */
function OneCode({ codes, onTake }: { codes: Codes; onTake: MakerListProps['onTake'] }) {
  if (codes.shared.length === 0) return null;
  const parted = codes.apart.filter((a) => codes.shared.some((c) => c.flats.includes(a.flat)) || a.match.entry.code !== fallsOn(codes, a.flat));
  const fresh = codes.apart.filter((a) => codes.rows.find((r) => r.flat === a.flat)?.taken?.code !== a.match.entry.code)
    .map((a) => ({ flat: a.flat, entry: a.match.entry }));
  return (
    <div class="one-code">
      {codes.shared.map((c) => <p key={c.code}>{c.words} If that is well, join them and have one enamel fewer.</p>)}
      {parted.length > 0 ? (
        <>
          <ul>
            {parted.map((a) => {
              const row = codes.rows.find((r) => r.flat === a.flat);
              return row ? (
                <li key={a.flat}><Pair own={row.rgb} other={a.match.entry.rgb} /> <span>{row.name}</span> <Tag code={a.match.entry.code} written={false} /> <span class="code-far">{a.match.distance}</span></li>
              ) : null;
            })}
          </ul>
          <p class="hint">{codes.apartWords}</p>
          <button type="button" class="plain" onClick={() => onTake(fresh, false)}>Write a code each</button>
        </>
      ) : <p class="hint">{codes.apartWords}</p>}
    </div>
  );
}

function Reasons({ codes, notes }: { codes: Codes; notes: readonly string[] }) {
  return (
    <Why>
      <p>The left half of each dab is your colour, the right half the list’s. Nearness is CIEDE2000 under D65: below 1 it is called the same, below 2 hard to tell, below 5 close, below 10 clearly different, and past that another colour. These words are this tool’s own; no standard sets them.</p>
      <p>CIELAB given for D50 is brought to D65 by Bradford adaptation, for the 2-degree observer. A code each is the choice with the least sum of differences.</p>
      <CodeNumbers codes={codes} />
      {notes.map((n) => <p key={n}>{n}</p>)}
      <p>A screen cannot show fired enamel: before ordering, hold the maker’s own chart or a sample against a print.</p>
    </Why>
  );
}
