// Designs side by side; the one on the sheet with its versions.
import { useEffect, useRef } from 'preact/hooks';
import type { Design, Plating, Version } from '../engine/wire.gen';
import type { Place } from '../state/project';
import { Canvas } from '../widgets/Canvas';
import { plural } from '../words/words';
import type { Opening } from './DesignCards';

type Picture = { pixels: ImageData } | undefined;

interface Props {
  designs: readonly Design[];
  at: Place;
  platings: readonly Plating[];
  card: Opening;
  /** The version at a place as struck, small. */
  chipOf: (at: Place) => Picture;
  onTurn: (at: Place) => void;
  /** One version more of the design on the sheet. */
  onMore: () => void;
  onCard: (card: Opening) => void;
  /** What was taken out last, while that can be undone at once. */
  removed: string | undefined;
  onBack: () => void;
}

export function DesignStrip(p: Props) {
  return (
    <nav class="strip" aria-label="Designs and versions of this order">
      <ul class="strip-row">
        {p.designs.map((d, i) => (i === p.at.design ? <Current key={d.id} {...p} design={d} /> : <Other key={d.id} {...p} design={d} no={i} />))}
        <li>
          <button type="button" class="strip-more" aria-expanded={p.card === 'add'} onClick={() => p.onCard('add')}>+ design</button>
        </li>
        {p.removed ? <li class="strip-back" role="status">{p.removed}. <button type="button" class="link" onClick={p.onBack}>put it back</button></li> : null}
      </ul>
    </nav>
  );
}

function Other({ design, no, chipOf, onTurn }: Props & { design: Design; no: number }) {
  const place = { design: no, version: 0 };
  const n = design.versions.length;
  return (
    <li>
      <button type="button" class="strip-design" onClick={() => onTurn(place)}>
        <Small picture={chipOf(place)} />
        <span class="strip-name">{design.name}{n > 1 ? <small>{plural(n, 'version')}</small> : null}</span>
        <span class="unseen">: lay it on the sheet</span>
      </button>
    </li>
  );
}

function Current(p: Props & { design: Design }) {
  const { design, at } = p;
  const alone = design.versions.length === 1;
  return (
    <li class="strip-now">
      <button type="button" class="strip-design now" aria-expanded={p.card === 'design'} onClick={() => p.onCard('design')}>
        {alone ? null : <span class="strip-label small-caps">design</span>}
        <span class="strip-name">{design.name}</span>
        <span class="unseen">, on the sheet: rename, copy, take out</span>
        <Turned />
      </button>
      <ul class="strip-versions">
        {design.versions.map((v, i) => <Chip key={v.id} {...p} version={v} place={{ design: at.design, version: i }} />)}
        <li><button type="button" class="strip-more" onClick={p.onMore}>+ version</button></li>
      </ul>
    </li>
  );
}

function Chip(p: Props & { version: Version; place: Place }) {
  const { version: v, place } = p;
  const now = place.version === p.at.version;
  const ref = useRef<HTMLLIElement>(null);
  // The strip scrolls inside itself; the page stays where it is.
  useEffect(() => {
    const [li, strip] = [ref.current, ref.current?.closest('.strip')];
    if (!now || !li || !strip) return;
    const [a, b] = [li.getBoundingClientRect(), strip.getBoundingClientRect()];
    if (a.left < b.left || a.right > b.right) strip.scrollLeft += a.left - b.left;
  }, [now]);
  const plating = p.platings.find((x) => x.id === v.plating)?.name ?? v.plating;
  return (
    <li ref={ref}>
      <button
        type="button" class={now ? 'strip-chip now' : 'strip-chip'} aria-current={now ? 'true' : undefined} aria-expanded={now ? p.card === 'version' : undefined}
        onClick={() => (now ? p.onCard('version') : p.onTurn(place))}
      >
        <Small picture={p.chipOf(place)} />
        <span class="strip-name">{v.name}<small>{plating} · {v.quantity}</small></span>
        <span class="unseen"> pins{now ? ', on the sheet: change, copy, take out' : ': lay them on the sheet'}</span>
        {now ? <Turned /> : null}
      </button>
    </li>
  );
}

/** Says that more opens below. */
const Turned = () => <svg class="strip-mark" viewBox="0 0 10 6" aria-hidden="true"><path d="M1 1l4 4 4-4" /></svg>;

function Small({ picture }: { picture: Picture }) {
  return <span class="strip-picture" aria-hidden="true">{picture ? <Canvas shot={picture} label="" /> : null}</span>;
}
