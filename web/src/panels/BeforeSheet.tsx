// Before drawing: a sentence that is filled in, the canvas it asks for, and the
// guide to draw over. Data in, wishes out.
import type { Canvas, Need } from '../engine/wire.gen';
import type { Kept, Wish } from '../state/plan';
import { LengthField } from '../widgets/LengthField';
import { CountField } from '../widgets/TextField';
import { Why } from '../widgets/basic';
import { FINENESS, plannedSays } from '../words/before';
import { FILL_WORDS, MAKING_WORDS } from '../words/words';

export interface BeforeProps {
  wish: Wish;
  canvas: Canvas | undefined;
  /** Numbers and picture are those of an earlier wish. */
  late: boolean;
  picture: { url: string; words: string } | undefined;
  problem: string;
  planned: Kept | undefined;
  copied: boolean;
  bounds: { least: number; most: number };
  onSize: (mm: number) => void;
  onMaking: (m: Wish['making']) => void;
  onFill: (f: Wish['fill']) => void;
  onOwn: (own: Wish['own']) => void;
  /** Changes the canvas as it then is: its other side may have been read since. */
  onSide: (side: Partial<NonNullable<Wish['own']>>) => void;
  onSave: (onWhite: boolean) => void;
  onCopy: () => void;
  onForget: () => void;
  onClose: () => void;
}

export function BeforeSheet(p: BeforeProps) {
  const { canvas } = p;
  return (
    <div class="before">
      <header class="before-head">
        <h2 id="before-title" tabIndex={-1} autofocus>Before you draw</h2>
        <button type="button" class="close" onClick={p.onClose} aria-label="Close">✕</button>
      </header>
      <div class="before-words">
        <Sentence {...p} />
        {p.problem ? <p class="complaint" role="alert">{p.problem}</p> : null}
        {canvas ? (
          <div class={p.late ? 'before-answer late-answer' : 'before-answer'}>
            <Answer canvas={canvas} />
            <ul class="needs" aria-label="What the drawing needs">{canvas.needs.map((n) => <NeedRow key={n.key} need={n} />)}</ul>
            <Reasons canvas={canvas} />
          </div>
        ) : null}
      </div>
      <Picture {...p} />
      <Acts {...p} />
    </div>
  );
}

/** What is wished for, read as one sentence. */
function Sentence(p: BeforeProps) {
  const { wish } = p;
  return (
    <div class="wish">
      <p class="wish-line">
        <span>A pin of</span>
        <LengthField label="Longer side of the pin" hideLabel mm={wish.mm} least={p.bounds.least} most={p.bounds.most} onLength={p.onSize} />
        <span>on its longer side,</span>
        <Pick label="How the metal is made" value={wish.making} words={MAKING_WORDS} onPick={p.onMaking} />
        <span>with</span>
        <Pick label="How it is filled" value={wish.fill} words={FILL_WORDS} onPick={p.onFill} />
      </p>
      <OwnCanvas {...p} />
    </div>
  );
}

function Pick<T extends string>(p: { label: string; value: T; words: Record<T, string>; onPick: (v: T) => void }) {
  const all = Object.keys(p.words) as T[];
  return (
    <select class="wish-pick" aria-label={p.label} value={p.value} onChange={(e) => { const v = all.find((x) => x === e.currentTarget.value); if (v) p.onPick(v); }}>
      {all.map((v) => <option key={v} value={v}>{p.words[v]}</option>)}
    </select>
  );
}

/** The canvas: the recommended one, until the artist has another. */
function OwnCanvas({ wish, canvas, onOwn, onSide }: BeforeProps) {
  const { own } = wish;
  if (!own) {
    return (
      <p class="wish-line quiet-line">
        <span>drawn on the canvas recommended here.</span>
        <button type="button" class="link" onClick={() => onOwn({ w: canvas?.w ?? 2000, h: canvas?.h ?? 2000 })}>I have a canvas of my own</button>
      </p>
    );
  }
  return (
    <p class="wish-line">
      <span>drawn on my canvas of</span>
      <CountField label="Width of the canvas" hideLabel unit="px" value={own.w} least={1} most={MOST_SIDE} onCount={(w) => onSide({ w })} />
      <span>by</span>
      <CountField label="Height of the canvas" hideLabel unit="px" value={own.h} least={1} most={MOST_SIDE} onCount={(h) => onSide({ h })} />
      <button type="button" class="link" onClick={() => onOwn(undefined)}>take the one recommended</button>
    </p>
  );
}

/** No number of more digits is a side of a canvas; the engine has the word on what is one. */
const MOST_SIDE = 99_999;

function Answer({ canvas: c }: { canvas: Canvas }) {
  const f = FINENESS[c.fineness];
  return (
    <>
      <p class="before-canvas"><b>{c.w} × {c.h} px</b><span>{c.scale}</span></p>
      <p class={`before-says ${f.class}`}><span aria-hidden="true" class="verdict-mark">{f.mark}</span> {c.says}</p>
    </>
  );
}

function NeedRow({ need: n }: { need: Need }) {
  return (
    <li>
      <span class="need-what">{n.what}</span>
      <b class="need-px">{n.size}</b>
      <span class="need-mm">{n.beside}</span>
    </li>
  );
}

function Reasons({ canvas: c }: { canvas: Canvas }) {
  return (
    <Why>
      {c.why ? <p>{c.why}</p> : null}
      <p>The pin itself is measured, not the canvas: let it fill the box of {c.box} along its longer side, and keep detail {c.safe}.</p>
      <ul class="notes">{c.needs.map((n) => <li key={n.key}><b>{n.what} {n.size}.</b> {n.why}</li>)}</ul>
      <p>The limits are common practice of the trade; put your own maker’s in under Metal, and they count here too.</p>
    </Why>
  );
}

/** Below so many px a guide is shown larger than it is: then its pixels are to be seen. */
const SHOWN = 500;

function Picture({ picture, late, canvas }: BeforeProps) {
  return (
    <figure class="before-guide">
      <div class={late ? 'guide-cloth late-answer' : 'guide-cloth'} style={canvas ? { aspectRatio: `${canvas.w} / ${canvas.h}` } : undefined}>
        {picture ? <img src={picture.url} alt={picture.words} class={canvas && Math.max(canvas.w, canvas.h) < SHOWN ? 'coarse' : undefined} /> : null}
      </div>
      <figcaption>Open it as the lowest layer of your canvas, draw above it, and hide it before you export.</figcaption>
    </figure>
  );
}

function Acts(p: BeforeProps) {
  return (
    <footer class="before-acts">
      <div class="two">
        <button type="button" class="solid" onClick={() => p.onSave(false)} disabled={Boolean(p.problem)}>Save the guide (PNG)</button>
        <button type="button" class="plain" onClick={() => p.onSave(true)} disabled={Boolean(p.problem)}>on white</button>
        <button type="button" class="plain" onClick={p.onCopy} disabled={Boolean(p.problem)}>{p.copied ? 'Copied ✓' : 'Copy the numbers'}</button>
      </div>
      {p.planned ? (
        <p class="hint">{plannedSays(p.planned)} <button type="button" class="link" onClick={p.onForget}>forget this</button></p>
      ) : null}
    </footer>
  );
}
