// The card at the spot that was touched: which one, and what its acts do to the project.
import type { ComponentChildren } from 'preact';
import type { Check, Edit, Finding, Flat, Gap } from '../engine/wire.gen';
import { colourOf, withFinish, withHandEdit } from '../state/colouring';
import { countFor, drawnIn, fillOf, lineAcross, moreByEdit, moreEnamels, piecesOf, roomForMore, splitOf, withArea, withRecipe, type Seen, type Under, type Wish } from '../state/hands';
import { begun, type LineKind } from '../state/line';
import { choosing, chooseParts } from '../state/parts';
import { drawingOf, withDesign, withSize } from '../state/project';
import * as s from '../state/store';
import { FinishChoice } from '../widgets/FinishChoice';
import { mendsBySize } from '../words/findings';
import { FINISH_WORDS } from '../words/finish';
import { filledWords, madeWords } from '../words/hands';
import { AreaPart, type AreaActs } from './AreaPart';
import { EyeCard } from './EyeCards';
import { FindingCard } from './FindingCard';
import { FindingRepairs } from './FindingRepairs';
import { FlatCard } from './FlatCard';
import { PartsQuestion } from './PartsQuestion';
import { go } from './go';
import { LineButtons } from './LineButtons';
import type { Mapping } from './place';
import { OpenCard } from './OpenCard';
import { Popover } from './Popover';
import type { Room } from './useRoom';

const close = () => (s.spot.value = undefined);

interface CardProps {
  check: Check;
  room: Room;
  /** Where the working raster lies on the sheet, once it does. */
  map: Mapping | undefined;
}

export function SpotCard({ check, room, map }: Partial<Pick<CardProps, 'check'>> & Omit<CardProps, 'check'>) {
  const spot = s.spot.value;
  if (!spot || !check || s.turned.value) return null;
  const all = { check, room, map };
  switch (spot.kind) {
    case 'flat':
      return spot.flat < 0 ? <BuiltSpot {...all} spot={spot} /> : <FlatSpot {...all} spot={spot} />;
    case 'open':
      return <OpenSpot {...all} spot={spot} />;
    case 'unread':
    case 'pair':
      return <EyeCard spot={spot} names={{ flats: check.flats.flats, plating: s.plating.value }} room={room} map={map} />;
    case 'finding':
      return <FindingSpot {...all} spot={spot} />;
    default:
      return null;
  }
}

type SpotOf<K extends s.Spot['kind']> = Extract<s.Spot, { kind: K }>;

function Card({ spot, name, title, room, bare, children }: Pick<CardProps, 'room'> & { spot: s.Spot; name: string; title: string; bare?: ReturnType<typeof middleOf>; children: ComponentChildren }) {
  return <Popover key={name} at={spot} room={room} bare={bare} title={title} onClose={close}>{children}</Popover>;
}

function FlatSpot({ check, room, map, spot }: CardProps & { spot: SpotOf<'flat'> }) {
  const { flats } = check;
  const flat = flats.flats.find((f) => f.id === spot.flat);
  if (!flat) return null;
  const { under } = spot;
  const seen = seenNow(check);
  // An edit speaks of the colours as they are shown, so it goes with their count.
  const edit = (e: Edit, what: string, shut = false) => {
    const more = moreByEdit(flat, e);
    s.change((p) => {
      const next = withHandEdit(p, { ...e, count: seen.asked });
      return more === 0 ? next : withDesign(next, { colours: countFor(seen, more) });
    }, what);
    if (shut) close();
  };
  const pieces = piecesOf(flats, flat.id);
  return (
    <Card spot={spot} name={`flat${flat.id}`} title={flat.name} room={room} bare={middleOf(under?.gap, check, map)}>
      <FlatCard
        flat={flat} code={flats.codes?.find((c) => c.flat === flat.id)} others={flats.flats.filter((f) => f.id !== flat.id)}
        starting={s.hello.value?.starting ?? []} plating={s.plating.value} pieces={pieces} onEdit={edit}
        finish={(
          <FinishChoice
            role={flat.role} finishes={s.hello.value?.finishes.find((q) => q.role === flat.role)?.finishes ?? []}
            value={colourOf(s.version.value, flat.id)?.finish ?? ''}
            onPick={(f) => s.change((p) => withFinish(p, flat.id, f), `${flat.name}: ${FINISH_WORDS[f]}`)}
          />
        )}
        area={under ? (
          <AreaPart
            key={`${under.x} ${under.y}`} flat={flat} under={under} pieces={pieces} lineDrawing={ofLinesAlone()} {...coloursFor(seen, flat, under)}
            {...areaActs(seen, flat, under)} onLine={(kind) => startLine(kind, under)}
          />
        ) : undefined}
      />
    </Card>
  );
}

function BuiltSpot({ room, spot }: CardProps & { spot: SpotOf<'flat'> }) {
  const { under } = spot;
  return (
    <Card spot={spot} name="built" title="Built metal" room={room}>
      <div class="card-body">
        <p>No line of the drawing: it was built, or drawn by hand.</p>
        {under ? <LineButtons metal onLine={(kind) => startLine(kind, under)} /> : null}
        <button type="button" class="plain" onClick={() => { close(); go('metal'); }}>To what is built</button>
      </div>
    </Card>
  );
}

function OpenSpot({ check, room, map, spot }: CardProps & { spot: SpotOf<'open'> }) {
  const { gap, under } = spot;
  const seen = seenNow(check);
  return (
    <Card spot={spot} name="open" title="The line does not close here" room={room} bare={middleOf(gap, check, map)}>
      <OpenCard
        gap={gap} {...coloursFor(seen, undefined, under)}
        onFill={(rgb, name) => fill(seen, undefined, under, { rgb, role: 'enamel' }, true, filledWords(name, true))}
        onLine={(kind) => startLine(kind, under)}
      />
    </Card>
  );
}

function FindingSpot({ check, room, spot }: CardProps & { spot: SpotOf<'finding'> }) {
  const finding = check.findings[spot.index];
  if (!finding) return null;
  const [flat, other] = [finding.flat, finding.other].map((id) => check.flats.flats.find((f) => f.id === id));
  const n = check.findings.length;
  return (
    <Card spot={spot} name={`spot${spot.index}`} title={`Trouble spot ${spot.index + 1} of ${n}`} room={room}>
      <FindingCard
        finding={finding} flat={flat} other={other} growTo={check.growTo.mm > 0 && mendsBySize(finding) ? check.growTo : undefined}
        shrinkTo={check.shrinkTo.mm > 0 && finding.kind === 'long-arm' ? check.shrinkTo : undefined}
        asks={asksParts(finding) ? <PartsQuestion busy={choosing.value} onHang={() => void chooseParts('dangle').then(close)} /> : undefined}
        repairs={s.shown.value ? <FindingRepairs project={s.shown.value.project} finding={finding} onDone={close} /> : undefined}
        onSize={(to, what) => { s.change((p) => withSize(p, to.mm), `${what} to ${to.inMM}`); close(); }}
        onFlat={() => flat && (s.spot.value = { kind: 'flat', flat: flat.id, x: spot.x, y: spot.y })}
        onList={() => { close(); go('metal'); }}
        onStep={(by) => (s.spot.value = { ...spot, index: (spot.index + by + n) % n })}
      />
    </Card>
  );
}

/** A part stands alone, and it is not a speck. */
const asksParts = (f: Finding) => f.kind === 'loose-part' && f.count === 1;

function seenNow(check: Check): Seen {
  return { flats: check.flats, asked: s.shownDesign.value?.colours ?? check.flats.count, most: s.hello.value?.maxCount ?? check.flats.count };
}

/** True for a drawing that came with one colour at most beside its lines. */
function ofLinesAlone(): boolean {
  const id = s.shown.value && drawingOf(s.shown.value.project);
  const opened = id ? s.opened.value[id] : undefined;
  return opened !== undefined && opened.suggested <= 1;
}

/** The colours an area can be filled with, its own left out. */
function coloursFor(seen: Seen, flat: Flat | undefined, under: Under) {
  const { flats } = seen;
  const enamels = flats.flats.filter((f) => f.role === 'enamel' && f.id !== flat?.id);
  return {
    enamels: enamels.map((f) => ({ name: f.name, rgb: f.rgb, drawn: drawnIn(flats, f) })),
    starting: s.hello.value?.starting ?? [],
    most: roomForMore(seen, flat, under) ? undefined : seen.most,
  };
}

function areaActs(seen: Seen, flat: Flat, under: Under): Omit<AreaActs, 'onLine'> {
  const { gap } = under;
  const closed = (side: boolean) => side && gap !== undefined;
  return {
    onFill: (rgb, name, side) => fill(seen, flat, under, { rgb, role: 'enamel' }, side, filledWords(name, closed(side))),
    onRole: (role, side) => fill(seen, flat, under, { role }, side, madeWords(role, closed(side))),
    onSplit: (side) => {
      const more = flat.role === 'enamel' ? 1 : 0;
      act(seen, splitOf(under, flat, side, seen.asked), more, closed(side) ? gap : undefined, `Split an area off ${flat.name}`);
    },
    onClose: () => {
      if (gap) s.change((p) => withRecipe(p, lineAcross(gap)), 'Closed a gap');
      close();
    },
  };
}

function fill(seen: Seen, flat: Flat | undefined, under: Under, wish: Wish, side: boolean, what: string): void {
  const more = moreEnamels(seen.flats, flat, under, wish, side);
  act(seen, fillOf(under, flat, wish, side, seen.asked), more, side ? under.gap : undefined, what);
}

function act(seen: Seen, edit: Edit, more: number, closing: Gap | undefined, what: string): void {
  s.change((p) => withArea(p, edit, countFor(seen, more), closing), what);
  close();
}

function startLine(kind: LineKind, under: Under): void {
  s.spot.value = { kind: 'line', x: 0, y: 0, draft: begun(kind, [under.x, under.y], under.width) };
}

function middleOf(gap: Gap | undefined, check: Check, map: Mapping | undefined) {
  if (!gap || !map) return undefined;
  const [x0, y0, x1, y1] = gap.ends;
  return map.toSheet(((x0 + x1) / 2) * check.flats.w, ((y0 + y1) / 2) * check.flats.h);
}
