// Each colour with a leader to its area, as on a technical drawing.
import type { Flat, Flats, Plating } from '../engine/wire.gen';
import { look } from '../widgets/look';
import { flatTitle, roleWords } from '../words/words';
import { spread, type Box, type Mapping, type Point } from './place';

export interface Callout {
  flat: Flat;
  spot: Point;
  side: 'left' | 'right';
  y: number;
  /** What a maker's list calls it. */
  code: string | undefined;
}

/** Height kept between two callouts, px: a touch target. */
export const CALLOUT_GAP = 60;

/** Sorts flats to the side they lie on, evens the sides out and sets heights. */
export function layCallouts(flats: Flats, map: Mapping, pin: Box, leftRoom: number, rightRoom: number): Callout[] {
  const all = flats.flats.flatMap((flat) => {
    const s = flats.spots.find((q) => q.flat === flat.id);
    return s ? [{ flat, spot: map.toSheet(s.x, s.y), code: codeOf(flats, flat.id) }] : [];
  });
  const byX = [...all].sort((a, b) => a.spot.x - b.spot.x);
  const middle = pin.x + pin.w / 2;
  const wanted = byX.filter((c) => c.spot.x < middle).length;
  const least = Math.floor(byX.length / 2) - 1;
  const left = Math.min(Math.max(wanted, least), byX.length - least);
  return [...column(byX.slice(0, left), 'left', leftRoom), ...column(byX.slice(left), 'right', rightRoom)];
}

/** What a maker's list calls a flat. */
export function codeOf(flats: Flats, id: number): string | undefined {
  return flats.codes?.find((c) => c.flat === id)?.code;
}

function column(part: Pick<Callout, 'flat' | 'spot' | 'code'>[], side: 'left' | 'right', room: number): Callout[] {
  const sorted = [...part].sort((a, b) => a.spot.y - b.spot.y);
  const ys = spread(sorted.map((c) => c.spot.y - CALLOUT_GAP / 2), CALLOUT_GAP, Math.max(0, room - CALLOUT_GAP));
  return sorted.map((c, i) => ({ ...c, side, y: (ys[i] ?? 0) + CALLOUT_GAP / 2 }));
}

interface Props {
  callouts: readonly Callout[];
  width: number;
  margin: number;
  plating: Plating | undefined;
  onFlat: (id: number, at: Point) => void;
}

export function Leaders({ callouts, width, margin }: Pick<Props, 'callouts' | 'width' | 'margin'>) {
  return (
    <g class="leaders" aria-hidden="true">
      {callouts.map((c) => {
        const x = c.side === 'left' ? margin : width - margin;
        const elbow = c.side === 'left' ? x + 16 : x - 16;
        return (
          <g key={c.flat.id}>
            <path d={`M${x} ${c.y}H${elbow}L${c.spot.x} ${c.spot.y}`} class="halo" />
            <path d={`M${x} ${c.y}H${elbow}L${c.spot.x} ${c.spot.y}`} />
            <circle cx={c.spot.x} cy={c.spot.y} r={3.2} />
          </g>
        );
      })}
    </g>
  );
}

export function CalloutLabels({ callouts, width, margin, plating, onFlat }: Props) {
  return (
    <ul class="callouts" aria-label="Colours of the pin">
      {callouts.map((c) => (
        <li
          key={`${c.side} ${c.flat.id}`}
          class={`callout ${c.side}`}
          style={{ top: `${c.y}px`, width: `${margin - 6}px`, ...(c.side === 'left' ? { left: '0px' } : { left: `${width - margin + 6}px` }) }}
        >
          <FlatButton flat={c.flat} code={c.code} plating={plating} onClick={() => onFlat(c.flat.id, c.spot)} />
        </li>
      ))}
    </ul>
  );
}

interface ButtonProps {
  flat: Flat;
  code: string | undefined;
  plating: Plating | undefined;
  onClick: () => void;
}

export function FlatButton({ flat, code, plating, onClick }: ButtonProps) {
  return (
    <button type="button" onClick={onClick}>
      <span class={`swatch ${flat.role}`} style={look(flat, plating)} aria-hidden="true" />
      <span class="callout-words">
        <span class="flat-name">{flatTitle(flat, plating)}<span class="unseen">, </span></span>
        <span class="role">{roleWords(flat)}{code ? <> · <span class="flat-code">{code}</span></> : null}<span class="unseen">: change</span></span>
      </span>
    </button>
  );
}
