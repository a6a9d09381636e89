// Money comes from the engine as exact text; here it is only shown.

/** Puts the wanted number of decimals on exact decimal text, without arithmetic on it. */
export function fixed(text: string, digits: number): string {
  const [whole = '0', part = ''] = text.split('.');
  if (digits === 0) return whole;
  return part.length >= digits ? `${whole}.${part}` : `${whole}.${part.padEnd(digits, '0')}`;
}

export function money(text: string, currency: string, digits: number): string {
  return `${currency} ${fixed(text, digits)}`;
}

/** A rate as a person types it: "1.25" or "1,25"; nothing below zero. */
export function parseRate(text: string): string | undefined {
  const t = text.trim().replace(',', '.');
  return /^\d{1,9}(\.\d{1,6})?$/.test(t) ? t : undefined;
}
