// Light or dark: the system's choice until the person makes one.
import { signal } from '@preact/signals';

export type Theme = 'system' | 'light' | 'dark';
const KEEP = 'badgewright.theme';

function kept(): Theme {
  try {
    const v = localStorage.getItem(KEEP);
    return v === 'light' || v === 'dark' ? v : 'system';
  } catch {
    return 'system';
  }
}

export const theme = signal<Theme>(kept());

export function isDark(): boolean {
  return theme.value === 'dark' || (theme.value === 'system' && matchMedia('(prefers-color-scheme: dark)').matches);
}

export function applyTheme(): void {
  const root = document.documentElement;
  if (theme.value === 'system') delete root.dataset['theme'];
  else root.dataset['theme'] = theme.value;
}

export function turnTheme(): void {
  theme.value = isDark() ? 'light' : 'dark';
  try {
    localStorage.setItem(KEEP, theme.value);
  } catch {
    // Not kept, then; the page is still turned.
  }
  applyTheme();
}
