// The section of the papers, kept up while it is on the page.
import { useEffect } from 'preact/hooks';
import { bill } from '../state/bill';
import * as a from '../state/papers';
import * as card from '../state/papersCard';
import * as pics from '../state/papersPictures';
import * as save from '../state/papersSave';
import * as s from '../state/store';
import { dayOf } from '../state/today';
import { PapersCard } from '../panels/PapersCard';
import { Act, Paper } from '../panels/PapersDesk';
import { PaperUnits, PapersMessage } from '../panels/PapersMessage';
import { PapersPictures } from '../panels/PapersPictures';
import { CardThumb, LayersThumb, ListsThumb, MessageThumb, PictureThumb, SpecThumb } from '../panels/PapersThumbs';
import { Section, Why } from '../widgets/basic';
import { inTheWay, papersSays } from '../words/papers';
import '../style/papers.css';

export default function Papers() {
  useEffect(() => {
    const stops = [a.followPapers(), a.followPin(), pics.followPreview()];
    return () => stops.forEach((stop) => stop());
  }, []);
  const p = s.asked.value;
  const d = s.design.value;
  if (!p || !d) return null;
  const standing = { check: s.shown.value?.check, project: p, quote: bill.value.quote };
  const way = inTheWay(standing);
  return (
    <Section id="papers" title="Papers" says={papersSays(standing, d.name)} alarm={way.length > 0} onOpen={(open) => (a.papersOpen.value = open)}>
      {way.length > 1 ? <ul class="notes">{way.map((w) => <li key={w}>{w}</li>)}</ul> : null}
      {a.problem.value ? <p class="warn" role="alert">{a.problem.value}</p> : null}
      {a.papersOpen.value ? <Desk /> : null}
      <Why>
        <p>A maker makes what stands in the papers and nothing else: what is not in them is guessed. Every length is the drawing’s own at this size, and the day on a paper is today’s where you are.</p>
        <p>The lists are CSV (RFC 4180) in UTF-8. A name that begins with = + - or @ gets an apostrophe in front, so that no spreadsheet takes it for a formula; figures stay figures.</p>
      </Why>
    </Section>
  );
}

function Desk() {
  const p = s.asked.value;
  if (!p) return null;
  const w = a.written.value;
  const making = save.making.value;
  const set = (change: Parameters<typeof a.withPapers>[1], what: string) => s.change((q) => a.withPapers(q, change), what);
  const ground = pics.groundOf(p);
  const pixels = pics.pixelsOf(p);
  const pictures = (all: boolean, shop: boolean) => void save.savePictures(all, pixels, shop ? ground : undefined);
  return (
    <ul class={a.late.value ? 'papers behind' : 'papers'}>
      <Paper
        id="paper-spec" title="Spec sheet" thumb={<SpecThumb curves={a.curves.value} asked={askedHere(w)} />}
        says="The drawing to make the pin by: all a drafter needs on its first page, front and back at true size."
        acts={<Act solid name="spec" making={making} onAct={() => void save.saveSpec()}>Save (PDF)</Act>}
        moreWords="paper and units" more={<PaperUnits plan={a.planOf(p)} onPlan={set} />}
      />
      <Paper
        id="paper-message" title="Message to a maker" thumb={<MessageThumb inquiry={w?.inquiry} />}
        says="Asks for a quote and a proof, with all a maker needs; two gaps are yours to fill."
        acts={<Act name="message" making={making} onAct={() => { if (w) void save.copied(w.inquiry.body).then((t) => (s.said.value = t)); }}>Copy</Act>}
        moreWords="read it, choose its units" more={<PapersMessage inquiry={w?.inquiry} plan={a.planOf(p)} today={dayOf(new Date())} onPlan={set} onCopy={save.copied} />}
      />
      <Paper
        id="paper-layers" title="Layers" thumb={<LayersThumb curves={a.curves.value} />}
        says="Outline, metal and each colour as clean curves at true size, for the maker’s own program."
        acts={<>
          <Act name="layers svg" making={making} onAct={() => void save.saveLayers(false)}>Save (SVG)</Act>
          <Act name="layers pdf" making={making} onAct={() => void save.saveLayers(true)}>Save (PDF)</Act>
        </>}
      />
      <Lists making={making} />
      <Paper
        id="paper-card" title="Backing card" thumb={<CardThumb answer={a.laid.value?.answer} pin={a.pinPicture.value} />}
        says={a.laid.value?.answer.laid.says ?? 'What the pin is sold on.'}
        acts={<Act name="card pdf" making={making} onAct={() => void save.saveCard(true)}>Save (PDF)</Act>}
        moreWords="design it"
        more={<PapersCard answer={a.laid.value?.answer} pin={a.pinPicture.value} fault={card.pictureFault.value} making={making} onCard={card.changeCard} onPicture={(f) => void card.bringPicture(f)} onSave={(pdf) => void save.saveCard(pdf)} />}
      />
      <Paper
        id="paper-pictures" title="Pictures" thumb={<PictureThumb url={pics.preview.value} pin={a.pinPicture.value} />}
        says="The struck pin for a shop page, on a plain ground or cut out on nothing."
        acts={<>
          <Act name="one shop" making={making} onAct={() => pictures(false, true)}>On a ground</Act>
          <Act name="one cut-out" making={making} onAct={() => pictures(false, false)}>Cut out</Act>
        </>}
        moreWords="size, ground and shadow"
        more={<PapersPictures ground={ground} pixels={pixels} preview={pics.preview.value} versions={a.placesOf(p).length} making={making}
          onGround={(change, what) => set({ ground: { ...ground, ...change } }, what)} onPixels={(px) => set({ pixels: px }, `Pictures of ${px} px`)} onSave={pictures} />}
      />
    </ul>
  );
}

/** What is asked for of the version on the sheet. */
function askedHere(w: a.Written | undefined) {
  const at = s.at.value;
  const i = w ? a.placesOf(w.project).findIndex((o) => o.design === at.design && o.version === at.version) : -1;
  return w?.asked[i];
}

function Lists({ making }: { making: string }) {
  const one = (kind: Parameters<typeof save.saveList>[0], words: string) => <Act name={kind} making={making} onAct={() => void save.saveList(kind)}>{words}</Act>;
  return (
    <Paper
      id="paper-lists" title="Lists" thumb={<ListsThumb asked={a.written.value?.asked ?? []} />}
      says="For a spreadsheet (CSV): the colours with their codes, what is open, and the money. For your calendar (iCalendar): the order’s days."
      acts={<>{one('colours', 'Colours')}{one('spots', 'Trouble spots')}{one('quote', 'Quote')}{one('left', 'What is left')}<Act name="days" making={making} onAct={() => void save.saveDays()}>Calendar</Act></>}
    />
  );
}
