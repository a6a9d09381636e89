// Lengths and masses in words: every number shows its unit. What the engine
// has put into words already is taken as it says it.

const trim = (s: string) => (s.includes('.') ? s.replace(/0+$/, '').replace(/\.$/, '') : s);

/** "32 mm", "0.18 mm". */
export function mm(v: number, digits = Math.abs(v) < 10 ? 2 : 1): string {
  return `${trim(v.toFixed(digits))} mm`;
}

/** "0.18 mm²". */
export function mm2(v: number): string {
  return `${trim(v.toFixed(Math.abs(v) < 10 ? 2 : 0))} mm²`;
}

export function grams(v: number): string {
  return `${v.toFixed(v < 10 ? 1 : 0)} g`;
}
