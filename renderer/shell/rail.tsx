import { usePlace, placeOf } from '../router.ts';
import { screenAt, screens } from '../routes.tsx';
import styles from './shell.module.css';

/** The way between the screens. */
export function Rail() {
  const here = screenAt(usePlace()) ?? screens[0];
  return (
    <nav className={styles.rail} aria-label="Screens">
      {screens.map(({ path, label, icon: Icon }) => (
        <a
          key={path}
          href={placeOf(path)}
          className={styles.railItem}
          aria-current={path === here?.path ? 'page' : undefined}
        >
          <Icon size={20} strokeWidth={1.75} aria-hidden />
          <span>{label}</span>
        </a>
      ))}
    </nav>
  );
}
