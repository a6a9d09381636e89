import type { ComponentChildren } from 'preact';
import { useRef, useState } from 'preact/hooks';
import type { ProofRound } from '../engine/wire.gen';
import type { Work } from '../state/store';
import { Section, Why } from '../widgets/basic';
import { dayWords } from '../words/calendar';
import { proofSays, roundWords } from '../words/proof';

export interface ProofProps {
  rounds: readonly ProofRound[];
  inHand: ProofRound | undefined;
  toChange: number;
  work: Work | undefined;
  fault: string;
  onFile: (file: File, photo: boolean) => void;
  onTake: (id: string) => void;
  onDrop: (id: string) => void;
  onOpen: (open: boolean) => void;
  children?: ComponentChildren;
}

export function ProofPanel(p: ProofProps) {
  const fails = p.inHand?.differences.some((d) => d.verdict === 'fails') ?? false;
  return (
    <Section id="proof" title="Proof" says={proofSays(p.inHand, p.toChange)} alarm={fails && p.toChange > 0} onOpen={p.onOpen}>
      <Bring first={p.rounds.length === 0} onFile={p.onFile} />
      {p.rounds.length > 0 ? <Rounds {...p} /> : null}
      {p.fault ? <p class="warn" role="alert">{p.fault}</p> : null}
      {p.work ? <Working work={p.work} /> : null}
      {p.children}
      <Why ask="how is it held against the pin?">
        <p>The pin is looked for in the picture by its outline, turned, sized and mirrored until its edges lie on those of the proof; then lines, areas and colours are compared one by one, in mm and by CIEDE2000. A proof is a drawing on a screen: its colours say which enamel is meant, not how it will look when fired.</p>
        <p>The proof is the contract. What is not seen on it is not made, so look once more yourself: text, codes and notes on it are not read.</p>
      </Why>
    </Section>
  );
}

function Bring({ first, onFile }: { first: boolean; onFile: (f: File, photo: boolean) => void }) {
  const [over, setOver] = useState(false);
  const stop = (e: DragEvent) => { e.preventDefault(); e.stopPropagation(); };
  return (
    <div
      class={over ? 'proof-bring over' : 'proof-bring'}
      onDragOver={(e) => { stop(e); setOver(true); }} onDragLeave={() => setOver(false)}
      onDrop={(e) => { stop(e); setOver(false); const f = e.dataTransfer?.files[0]; if (f) onFile(f, false); }}
    >
      <Door label={first ? 'Bring a proof' : 'Bring another proof'} of="The maker’s proof" solid={first} accept="image/*,application/pdf,.pdf" onFile={(f) => onFile(f, false)} />
      <Door label="Photograph of a finished pin" of="Photograph of a finished pin" solid={false} accept="image/*" onFile={(f) => onFile(f, true)} />
      <span class="hint">A proof as a picture or a PDF, or drop it here. A pin on plain paper, from above, in even light. It stays on this device.</span>
    </div>
  );
}

function Door(p: { label: string; of: string; solid: boolean; accept: string; onFile: (f: File) => void }) {
  const input = useRef<HTMLInputElement>(null);
  const change = (el: HTMLInputElement) => {
    const file = el.files?.[0];
    if (file) p.onFile(file);
    el.value = '';
  };
  return (
    <>
      <button type="button" class={p.solid ? 'solid' : 'plain'} onClick={() => input.current?.click()}>{p.label}</button>
      <input ref={input} type="file" class="unseen" tabIndex={-1} aria-label={p.of} accept={p.accept} onChange={(e) => change(e.currentTarget)} />
    </>
  );
}

function Rounds({ rounds, inHand, onTake, onDrop }: ProofProps) {
  return (
    <ul class="proof-rounds" aria-label="Proofs of this version">
      {rounds.map((r) => (
        <li key={r.id}>
          <button type="button" class="link" aria-pressed={r.id === inHand?.id} onClick={() => onTake(r.id)}>{roundWords(r)}</button>
          <span class="hint">{[r.name, r.dated && dayWords(r.dated)].filter(Boolean).join(', ')}</span>
          <button type="button" class="close" aria-label={`Put away ${roundWords(r)}`} onClick={() => onDrop(r.id)}>✕</button>
        </li>
      ))}
    </ul>
  );
}

function Working({ work }: { work: Work }) {
  return (
    <p class="proof-work" aria-live="polite">
      <label>{work.doing} <progress max={1} value={work.share > 0 ? work.share : undefined} /></label>
      {work.stop ? <button type="button" class="plain" onClick={work.stop}>Stop</button> : null}
    </p>
  );
}
