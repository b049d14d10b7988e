import { Label, Radio, RadioGroup } from 'react-aria-components';
import { chooseTheme, theme, type ThemeChoice } from '../../styles/theme.ts';
import styles from './settings.module.css';

const words: Readonly<Record<ThemeChoice, string>> = {
  system: 'As the system',
  light: 'Light',
  dark: 'Dark',
};

/** The window's theme, light or dark; kept in this window only, not in the shop's file. */
export function Look() {
  const chosen = theme.use();
  return (
    <section className={styles.panel}>
      <RadioGroup
        className={styles.radios ?? ''}
        value={chosen}
        onChange={(value) => chooseTheme(value as ThemeChoice)}
      >
        <Label className={styles.heading ?? ''}>Theme</Label>
        {theme.choices.map((choice) => (
          <Radio key={choice} value={choice} className={styles.radio ?? ''}>
            {words[choice]}
          </Radio>
        ))}
      </RadioGroup>
    </section>
  );
}
