// Lengths and masses in words: every number shows its unit.

export const MM_PER_INCH = 25.4;

const trim = (s: string) => (s.includes('.') ? s.replace(/0+$/, '').replace(/\.$/, '') : s);

/** "32 mm", "0.18 mm". */
export function mm(v: number, digits = Math.abs(v) < 10 ? 2 : 1): string {
  return `${trim(v.toFixed(digits))} mm`;
}

/** "1.26 in". */
export function inches(v: number): string {
  return `${(v / MM_PER_INCH).toFixed(2)} in`;
}

/** "32 mm · 1.26 in". */
export function both(v: number): string {
  return `${mm(v)} · ${inches(v)}`;
}

export function grams(v: number): string {
  return `${v.toFixed(v < 10 ? 1 : 0)} g`;
}

/** Reads "32", "32 mm", "3.2cm", "1.25 in", `1.25"`, "1 1/4 in"; a bare number is mm. */
export function parseLength(text: string): number | undefined {
  const t = text.trim().toLowerCase().replace(',', '.');
  const m = /^(?:(\d+(?:\.\d+)?|\.\d+)(?!\d*\/))?\s*(?:(\d+)\/(\d+))?\s*(mm|cm|in|inch|inches|"|″)?$/.exec(t);
  if (!m || (!m[1] && !m[2])) return undefined;
  const part = m[2] && m[3] ? Number(m[2]) / Number(m[3]) : 0;
  const v = Number(m[1] ?? 0) + part;
  const unit = m[4] ?? 'mm';
  const scale = unit === 'mm' ? 1 : unit === 'cm' ? 10 : MM_PER_INCH;
  return Number.isFinite(v) && v > 0 ? v * scale : undefined;
}
