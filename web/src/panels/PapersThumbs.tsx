// Small drawings of the papers: of what stands in them, where it stands.
import type { ComponentChildren } from 'preact';
import type { Asked, CardLaid, Inquiry, Shapes } from '../engine/wire.gen';
import type { PinPicture } from '../state/papers';
import { hexOf } from '../state/project';
import { CardView } from './PapersCardView';

/** A sheet of paper, A4 at half a millimetre a unit. */
function Sheet({ children }: { children: ComponentChildren }) {
  return (
    <svg class="paper-thumb" viewBox="-2 -2 109 152.5" aria-hidden="true">
      <rect class="paper-ground" width="105" height="148.5" />
      {children}
    </svg>
  );
}

const INK = '#4a4d52';
const FAINT = '#c9c6bf';

/** The message: its lines as long as they are. */
export function MessageThumb({ inquiry }: { inquiry: Inquiry | undefined }) {
  const lines = (inquiry?.body ?? '').split('\n').slice(0, 46);
  return (
    <Sheet>
      {lines.map((l, i) => {
        const indent = l.length - l.trimStart().length;
        const gap = inquiry?.gaps.some((g) => l.includes(g));
        return l.trim() ? <rect key={i} x={9 + indent * 1.2} y={10 + i * 2.9} width={Math.min(87 - indent * 1.2, l.trim().length * 1.05)} height="1.4" fill={gap ? '#c08a1e' : i === 0 ? INK : '#8b8e93'} /> : null;
      })}
    </Sheet>
  );
}

/** The layers: outline, metal and colours, lifted off each other. */
export function LayersThumb({ curves }: { curves: Shapes | undefined }) {
  if (!curves) return <Sheet>{null}</Sheet>;
  const k = 62 / Math.max(curves.w, curves.h);
  const layers = [
    { d: curves.outline.d, fill: '#9b9ea3' },
    ...curves.enamel.map((e) => ({ d: e.d, fill: hexOf(e.rgb) })),
    { d: curves.metal.d, fill: hexOf(curves.metal.rgb) },
  ];
  const step = 62 / Math.max(1, layers.length - 1);
  return (
    <Sheet>
      {layers.map((l, i) => (
        <g key={i} transform={`translate(${52.5} ${118 - i * step}) scale(${k} ${k * 0.42}) rotate(-30) translate(${-curves.w / 2} ${-curves.h / 2})`}>
          <path d={l.d} fill={l.fill} fill-rule="evenodd" stroke={INK} stroke-width={0.15 / k} />
        </g>
      ))}
    </Sheet>
  );
}

/** The lists: the colours, row by row. */
export function ListsThumb({ asked }: { asked: readonly Asked[] }) {
  const rows = asked.flatMap((a) => a.colours).slice(0, 17);
  return (
    <Sheet>
      <rect x="8" y="9" width="89" height="5" fill={FAINT} />
      {rows.map((c, i) => {
        const y = 17.5 + i * 7.5;
        return (
          <g key={i}>
            <rect x="8" y={y} width="5" height="5" fill={hexOf(c.rgb)} stroke={INK} stroke-width="0.3" />
            <rect x="16" y={y + 1.6} width={Math.min(30, c.name.length * 1.9)} height="1.8" fill={INK} />
            <rect x="50" y={y + 1.6} width="13" height="1.8" fill="#8b8e93" />
            <rect x="70" y={y + 1.6} width={c.code ? 14 : 5} height="1.8" fill="#8b8e93" />
            <path d={`M8 ${y + 6.3}h89`} stroke={FAINT} stroke-width="0.4" />
          </g>
        );
      })}
    </Sheet>
  );
}

export function CardThumb({ answer, pin }: { answer: CardLaid | undefined; pin: PinPicture | undefined }) {
  return answer ? <div class="paper-thumb"><CardView answer={answer} pin={pin} still /></div> : <Sheet>{null}</Sheet>;
}

/** The pin on its ground, and cut out. */
export function PictureThumb({ url, pin }: { url: string; pin: PinPicture | undefined }) {
  if (url) return <img class="paper-thumb" src={url} alt="" />;
  return pin ? <img class="paper-thumb" src={pin.url} alt="" /> : <Sheet>{null}</Sheet>;
}

/** The first page of the spec sheet: the front numbered, the colours, true size, facts and the proving bar. */
export function SpecThumb({ curves, asked }: { curves: Shapes | undefined; asked: Asked | undefined }) {
  if (!curves || !asked) return <Sheet>{null}</Sheet>;
  const large = Math.min(46 / curves.w, 58 / curves.h);
  const small = Math.min(0.5, 34 / curves.w, 26 / curves.h);
  const lines = [34, 30, 26, 37, 22, 31];
  return (
    <Sheet>
      <rect x="6" y="6.5" width="34" height="3" fill={INK} />
      <path d="M6 13h93M6 82h93M6 111h93M6 126h93M6 137h93" stroke={INK} stroke-width="0.4" />
      <g transform={`translate(8 18) scale(${large})`}><Art curves={curves} /></g>
      {asked.colours.slice(0, 10).map((c, i) => (
        <g key={i}>
          <rect x="60" y={18 + i * 5} width="4" height="3.4" fill={hexOf(c.rgb)} stroke={INK} stroke-width="0.25" />
          <rect x="67" y={19 + i * 5} width={Math.min(18, c.name.length * 1.1)} height="1.3" fill={INK} />
          <rect x="88" y={19 + i * 5} width="9" height="1.3" fill="#8b8e93" />
        </g>
      ))}
      <g transform={`translate(10 85) scale(${small})`}><Art curves={curves} /></g>
      <g transform={`translate(${16 + 2 * curves.w * small} 85) scale(${-small} ${small})`}><path d={curves.outline.d} fill="#e6e3dd" fill-rule="evenodd" stroke={INK} stroke-width="0.6" /></g>
      {lines.map((w, i) => <rect key={i} x={i % 2 ? 54 : 6} y={114 + Math.floor(i / 2) * 3.6} width={w} height="1.3" fill="#8b8e93" />)}
      <rect x="6" y="129" width="88" height="1.3" fill="#8b8e93" />
      <rect x="6" y="132.4" width="80" height="1.3" fill="#8b8e93" />
      {[0, 1, 2, 3, 4].map((i) => <rect key={i} x={6 + i * 5} y="140" width="5" height="2" fill={i % 2 ? '#fff' : '#111'} stroke="#111" stroke-width="0.3" />)}
    </Sheet>
  );
}

function Art({ curves }: { curves: Shapes }) {
  return (
    <>
      <path d={curves.outline.d} fill={hexOf(curves.metal.rgb)} fill-rule="evenodd" />
      {[...curves.enamel, ...curves.printed].map((e) => <path key={`${e.role} ${e.flat}`} d={e.d} fill={hexOf(e.rgb)} fill-rule="evenodd" />)}
    </>
  );
}
