// The section of the parcel and what comes after it, kept up while it is on the
// page.
import { signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Parcel as Counted, ParcelUsual, StockRow } from '../engine/wire.gen';
import { ParcelClaim } from '../panels/ParcelClaim';
import { ParcelCount, ParcelRows } from '../panels/ParcelCount';
import { ParcelLedger } from '../panels/ParcelLedger';
import { ParcelSome } from '../panels/ParcelSome';
import { ParcelNumbers, ParcelTerms } from '../panels/ParcelTerms';
import { sentenceOf } from '../state/desk';
import { bookOf, freshParcel, missingRows, namesOf, orderedAgain, parcelsOf, withParcel, withPlans, withoutMove, withoutParcel } from '../state/parcel';
import * as a from '../state/parcelAsk';
import * as c from '../state/parcelCount';
import { copyClaim, savePhotos } from '../state/parcelCopy';
import { addPhoto, photos } from '../state/photos';
import * as s from '../state/store';
import { Section, Why } from '../widgets/basic';
import { parcelSays, title } from '../words/parcel';
import '../style/parcel.css';

const photoFault = signal('');

async function takePhoto(file: File): Promise<void> {
  try {
    c.withPhoto(await addPhoto(file));
    photoFault.value = '';
  } catch (err) {
    photoFault.value = sentenceOf(err);
  }
}

function begin(usual: ParcelUsual): void {
  c.flush();
  const p = s.asked.value;
  if (!p) return;
  const fresh = freshParcel(p, usual, a.today());
  s.change((q) => withParcel(q, fresh), 'A parcel has come');
  c.choose(fresh.id);
  // The thumb finds the targets where the eye is.
  setTimeout(() => {
    const box = document.querySelector<HTMLElement>('#parcel .counting');
    box?.focus({ preventScroll: true });
    box?.scrollIntoView({ block: 'end' });
  });
}

export default function Parcel() {
  useEffect(() => {
    const stops = [a.followParcel(), c.flushOnLeave()];
    return () => stops.forEach((stop) => stop());
  }, []);
  const p = s.asked.value;
  if (!p) return null;
  const parcel = c.parcel.value;
  const answer = a.counted.value?.answer;
  const ledger = a.ledger.value?.answer;
  const verdict = answer?.tally?.all.verdict.kind;
  const moves = p.plans?.ledger?.moves.length ?? 0;
  const says = parcelSays(parcel, answer, ledger, moves);
  return (
    <Section id="parcel" title="Parcel" says={says} alarm={verdict === 'over' && moves === 0} onOpen={(open) => (a.parcelOpen.value = open)}>
      {a.problem.value ? <p class="warn">{a.problem.value}</p> : null}
      {answer && parcel ? <InHand parcel={parcel} /> : null}
      {answer ? <Doors parcel={parcel} usual={answer.usual} /> : null}
      {answer ? (
        <ParcelSome
          look={a.look.value} answer={a.looked.value?.answer} plan={a.planAsked.value} planned={a.planned.value} usual={answer.usual}
          onLook={(change) => (a.look.value = { ...a.look.value, ...change })} onPlan={(ask) => (a.planAsked.value = ask)}
        />
      ) : null}
      {answer && (parcelsOf(p).length > 0 || p.plans?.ledger) ? <Kept usual={answer.usual} /> : null}
    </Section>
  );
}

/** The parcel in hand: counted, judged, claimed. */
function InHand({ parcel }: { parcel: Counted }) {
  const answer = a.counted.value?.answer;
  const tally = answer?.tally;
  const fault = answer?.faults[0];
  const claim = a.claim.value?.parcel.id === parcel.id ? a.claim.value : undefined;
  const p = s.asked.value;
  const missing = p ? missingRows(p, parcel) : [];
  return (
    <>
      {fault ? <p class="warn" role="alert">{fault.what}</p> : null}
      <ParcelCount
        parcel={parcel} at={c.rowAt.value} flaws={answer?.flaws ?? []} says={tally?.says ?? ''} naming={c.naming.value}
        canUndo={c.canUndo.value} last={c.lastFlawed.value} photoFault={photoFault.value}
        onVersion={(at) => { c.naming.value = false; c.inHand.value = at; }}
        onTap={c.tap} onFlaw={c.nameFlaw} onUndo={c.takeBack} onComplete={c.finish} onPhoto={(file) => void takePhoto(file)}
      />
      {missing.length > 0 ? <p><button type="button" class="link" onClick={() => c.setParcel((o) => ({ ...o, rows: [...o.rows, ...missing] }), 'Added what was ordered since')}>add {missing.map((r) => r.name).join(', ')}</button></p> : null}
      {tally && tally.all.graded > 0 ? (
        <>
          <ParcelRows rows={tally.rows} all={tally.all} />
          {tally.cautions.length > 0 ? <ul class="cautions">{tally.cautions.map((t) => <li key={t} class="grave">{t}</li>)}</ul> : null}
          {tally.money ? <p>{tally.money.says}{tally.money.leftSays ? ` ${tally.money.leftSays}` : ''}</p> : null}
          {tally.tells ? <p>{tally.tells}</p> : null}
          <Why>{tally.all.verdict.why.map((w) => <p key={w}>{w}</p>)}<p>Seconds and rejects count against the share agreed alike; pieces missing are told apart from it.</p></Why>
          <ParcelClaim
            claim={claim?.claim} late={claim?.parcel !== parcel} photos={photos.value}
            onWrite={() => void a.askClaim()} onCopy={copyClaim} onSavePhotos={savePhotos}
          />
        </>
      ) : <p class="hint">Look at each piece in good light, front, back and post, and lay it on its pile with a tap. Posts are sharp: leave the clutches on while you count, and keep open pins away from children.</p>}
      <ParcelTerms parcel={parcel} onChange={c.setParcel} />
      <ParcelNumbers parcel={parcel} onChange={c.setParcel} />
    </>
  );
}

/** A parcel that has come, and those that came before. */
function Doors({ parcel, usual }: { parcel: Counted | undefined; usual: ParcelUsual }) {
  const all = s.asked.value ? parcelsOf(s.asked.value) : [];
  return (
    <p class="row-acts">
      <button type="button" class={parcel ? 'plain' : 'solid'} onClick={() => begin(usual)}>{parcel ? 'Another parcel has come' : 'A parcel has come'}</button>
      {all.length > 1 ? (
        <select aria-label="Parcel in hand" class="which" value={parcel?.id} onChange={(e) => c.choose(e.currentTarget.value)}>
          {all.map((o, i) => <option key={o.id} value={o.id}>{title(o, i)}</option>)}
        </select>
      ) : null}
      {parcel ? <button type="button" class="link" onClick={() => { c.choose(undefined); s.change((q) => withoutParcel(q, parcel.id), 'Took a parcel out'); }}>take this parcel out</button> : null}
    </p>
  );
}

function Kept({ usual }: { usual: ParcelUsual }) {
  const p = s.asked.value;
  if (!p) return null;
  const again = (r: StockRow) => s.change((q) => orderedAgain(q, r.design, r.reorder?.dieAge ?? 0), `${r.name} ordered again`);
  return (
    <ParcelLedger
      ledger={a.ledger.value?.answer} book={bookOf(p, usual)} names={namesOf(p)} today={a.today()} refused={a.refusedMove.value} byCalendar={p.plans?.calendar !== undefined}
      onEnter={a.enter} onAgain={again}
      onOut={(at) => s.change((q) => withPlans(q, { ledger: withoutMove(bookOf(q, usual), at) }), 'Taken out of the book')}
      onBook={(change, what) => s.change((q) => withPlans(q, { ledger: { ...bookOf(q, usual), ...change } }), what)}
    />
  );
}
