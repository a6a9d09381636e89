// The section of the maker's proof, kept up while it is on the page.
import { signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { ProofRound } from '../engine/wire.gen';
import { ProofBeside } from '../panels/ProofBeside';
import { ProofColours } from '../panels/ProofColours';
import { ProofLetter } from '../panels/ProofLetter';
import { ProofList } from '../panels/ProofList';
import { ProofOver } from '../panels/ProofOver';
import { ProofPanel } from '../panels/ProofPanel';
import { ProofSaid } from '../panels/ProofSaid';
import { ProofSheet } from '../panels/ProofSheet';
import * as d from '../state/proofDesk';
import * as w from '../state/proofLetter';
import * as r from '../state/proofs';
import * as s from '../state/store';
import { Choice } from '../widgets/basic';
import { pagesWords } from '../words/proof';
import '../style/proof.css';

type Face = 'over' | 'sheet';

const open = signal(false);
/** Where nobody chose, what lies badly is seen on its sheet. */
const face = signal<Face | undefined>(undefined);
const pickedNo = signal<number | undefined>(undefined);

const set = (id: string, change: (o: ProofRound) => ProofRound, what: string) => s.change((p) => r.changedProof(p, id, change), what);

/** A place on the front is walked to where it is seen. */
function pick(number: number | undefined) {
  pickedNo.value = number;
  if (number === undefined) return;
  face.value = 'over';
  document.querySelector('#proof .proof-over')?.scrollIntoView({ block: 'nearest' });
}

export default function Proof() {
  const round = d.inHand.value;
  useEffect(() => {
    pickedNo.value = undefined;
    face.value = undefined;
    if (open.value && round && !d.now.value) void d.take(round.id);
  }, [round?.id, open.value]);
  if (!s.asked.value) return null;
  return (
    <ProofPanel
      rounds={d.all.value} inHand={round} toChange={round ? r.toChange(round).length : 0} work={d.work.value} fault={d.fault.value}
      onFile={(f, photo) => void d.bring(f, photo)} onTake={(id) => void d.take(id)} onOpen={(o) => (open.value = o)}
      onDrop={(id) => s.change((p) => r.withoutProof(p, id), 'Put away a proof')}
    >
      {round ? <InHand round={round} /> : null}
    </ProofPanel>
  );
}

function InHand({ round }: { round: ProofRound }) {
  const c = d.now.value;
  const name = s.design.value?.name ?? '';
  const pages = d.pagesOf(round.id);
  return (
    <>
      {d.late.value ? <p class="warn">You changed the pin since this proof was held against it. <button type="button" class="link" onClick={() => void d.again(round.id, {}, 'Held the proof against the pin again')}>hold it against the pin as it is now</button></p> : null}
      {pages > 1 ? (
        <label class="field"><span class="field-label">{pagesWords(pages)}</span>
          <select value={c?.shot.page ?? 1} onChange={(e) => void d.takePage(round.id, Number(e.currentTarget.value))}>
            {Array.from({ length: pages }, (_, i) => <option key={i} value={i + 1}>page {i + 1}</option>)}
          </select>
        </label>
      ) : null}
      {c ? <Pictures round={round} c={c} /> : null}
      {round.fit && !round.fit.good ? <p class="hint">What differs is told once the pin lies well on the picture.</p> : <Differences round={round} c={c} name={name} />}
      <Beside round={round} />
      {c ? <ProofColours colours={c.result.colours} codes={s.shown.value?.check.flats.codes ?? []} /> : null}
      {c && !round.photo ? (
        <ProofSaid
          said={round.said} tolerances={c.result.tolerances} maker={round.maker ?? ''} dated={round.dated ?? ''}
          onMaker={(maker) => set(round.id, (o) => ({ ...o, maker }), `From ${maker || 'a maker'}`)}
          onSaid={(change, what) => d.say(round.id, change, what)}
          onTolerances={(tolerances) => void d.again(round.id, { tolerances }, 'Other tolerances')}
        />
      ) : null}
    </>
  );
}

function Differences({ round, c, name }: { round: ProofRound; c: d.Compared | undefined; name: string }) {
  return (
    <>
      <ProofList
        round={round} notes={c?.result.notes ?? []} picked={pickedNo.value} onPick={pick}
        onChoice={(n, choice, what) => set(round.id, (o) => r.withChoice(o, n, choice), what)}
      />
      <ProofLetter
        toChange={r.toChange(round).length} letter={w.letter.value?.round.id === round.id ? w.letter.value.letter : undefined} late={w.letter.value?.round !== round}
        onWrite={() => void w.write(round, name)} onMarks={() => void w.saveMarks(round, name)}
      />
    </>
  );
}

const facesOf = (photo: boolean): { value: Face; label: string }[] => [{ value: 'over', label: 'over each other' }, { value: 'sheet', label: photo ? 'the photograph' : 'the maker’s sheet' }];

function Pictures({ round, c }: { round: ProofRound; c: d.Compared }) {
  const poor = !c.result.fit.good;
  const seen = face.value ?? (poor ? 'sheet' : 'over');
  return (
    <>
      <p class={poor ? 'warn' : 'hint'}>{c.result.fit.words}</p>
      <Choice legend="See" value={seen} options={facesOf(Boolean(round.photo))} onPick={(f) => (face.value = f)} />
      {seen === 'over' && c.looks ? <ProofOver shown={c.looks.shown} asked={c.looks.asked} differences={poor ? [] : round.differences} picked={pickedNo.value} onPick={pick} /> : null}
      {seen === 'sheet' ? (
        <ProofSheet
          pixels={c.shot.pixels} laid={c.laid} measure={round.said.measure} perMM={c.shot.perMM} photo={Boolean(round.photo)} white={round.white}
          onWhite={(white) => void d.again(round.id, { white }, 'Marked white paper')}
          onHow={(how, what) => d.layBy(round.id, how, what)} onMeasure={(measure, what) => d.say(round.id, (said) => ({ ...said, measure }), what)}
        />
      ) : null}
    </>
  );
}

function Beside({ round }: { round: ProofRound }) {
  const others = d.all.value.filter((o) => o.id !== round.id);
  const b = w.beside.value?.id === round.id ? w.beside.value : undefined;
  return (
    <ProofBeside
      others={others} with={others.find((o) => o.id === b?.with)} makers={b?.makers ?? false} pairs={b?.pairs}
      onWith={(id) => void w.hold(round, others.find((o) => o.id === id))}
    />
  );
}

