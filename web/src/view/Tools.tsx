// The few tools at the head of the sheet.
import { isDark, turnTheme, theme } from '../state/theme';
import * as s from '../state/store';
import { later } from './later';

const Keeping = later(() => import('./Keeping'));

export function Tools() {
  const h = s.history.value;
  const back = h?.past.at(-1)?.what;
  const on = h?.future[0]?.what;
  const turn = () => {
    s.spot.value = undefined;
    s.turned.value = !s.turned.value;
  };
  const hold = (v: boolean) => () => (s.holding.value = v);
  void theme.value;
  return (
    <div class="tools" role="toolbar" aria-label="Sheet">
      <div class="maker"><span class="brass">badgewright</span><span class="stays">Stays on this device.</span><Keeping /></div>
      <button type="button" class="tool" onClick={turn} aria-pressed={s.turned.value}><TurnIcon /> {s.turned.value ? 'Front' : 'Turn over'}</button>
      <button
        type="button" class="tool" aria-pressed={s.holding.value} disabled={s.turned.value}
        onPointerDown={hold(true)} onPointerUp={hold(false)} onPointerLeave={hold(false)} onPointerCancel={hold(false)}
        onKeyDown={(e) => (e.key === ' ' || e.key === 'Enter') && (s.holding.value = true)} onKeyUp={hold(false)} onBlur={hold(false)}
        onContextMenu={(e) => e.preventDefault()}
      >Hold: as brought</button>
      <button type="button" class="tool icon" disabled={!back} onClick={s.goBack} aria-label={back ? `Undo: ${back}` : 'Undo'} title={back ? `Undo: ${back}` : 'Undo'}>
        <svg viewBox="0 0 20 20" aria-hidden="true"><path d="M4 8h8a4 4 0 010 8H8M4 8l3.5-3.5M4 8l3.5 3.5" /></svg>
      </button>
      <button type="button" class="tool icon" disabled={!on} onClick={s.goForward} aria-label={on ? `Redo: ${on}` : 'Redo'} title={on ? `Redo: ${on}` : 'Redo'}>
        <svg viewBox="0 0 20 20" aria-hidden="true"><path d="M16 8H8a4 4 0 000 8h4M16 8l-3.5-3.5M16 8l-3.5 3.5" /></svg>
      </button>
      <button type="button" class="tool icon theme" onClick={turnTheme} aria-label={isDark() ? 'Light' : 'Dark'} title={isDark() ? 'Light' : 'Dark'}>
        <svg viewBox="0 0 20 20" aria-hidden="true"><circle cx="10" cy="10" r="4.2" /><path d="M10 2v2M10 16v2M2 10h2M16 10h2M4.3 4.3l1.5 1.5M14.2 14.2l1.5 1.5M15.7 4.3l-1.5 1.5M5.8 14.2l-1.5 1.5" /></svg>
      </button>
    </div>
  );
}

function TurnIcon() {
  return <svg viewBox="0 0 20 20" aria-hidden="true"><path d="M10 3v14M13 6c3 0 4 2 4 4s-1 4-4 4M7 6c-3 0-4 2-4 4s1 4 4 4M13 14l2-2M13 14l2 2" /></svg>;
}
