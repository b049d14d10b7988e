import { storedChoice } from '../ui/stored-choice.ts';

/** What the user chose: follow the system, or one look for good. */
export const theme = storedChoice('foldweek.theme', ['system', 'light', 'dark'], 'system');
export type ThemeChoice = (typeof theme.choices)[number];

const systemDark = () => window.matchMedia('(prefers-color-scheme: dark)');

function paint(): void {
  const choice = theme.read();
  const dark = choice === 'system' ? systemDark().matches : choice === 'dark';
  document.documentElement.dataset.theme = dark ? 'dark' : 'light';
}

/** Paint the first frame in the right look and follow the system from then on. Call once, before React draws. */
export function startTheme(): void {
  paint();
  systemDark().addEventListener('change', paint);
}

export function chooseTheme(choice: ThemeChoice): void {
  theme.write(choice);
  paint();
}
