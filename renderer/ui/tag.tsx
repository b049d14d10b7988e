import { Check, Circle, Diamond, Triangle } from 'lucide-react';
import type { ReactNode } from 'react';
import { classes } from './classes.ts';
import styles from './tag.module.css';

/** A state in a word; the shape says it again for those who do not see the colour. */
const shapes = { late: Triangle, warn: Diamond, fine: Check, plain: Circle, accent: Circle } as const;
export type TagLook = keyof typeof shapes;

export function Tag({ look = 'plain', children }: { look?: TagLook; children: ReactNode }) {
  const Shape = shapes[look];
  const filled = look === 'fine' || look === 'plain' ? 'none' : 'currentColor';
  return (
    <span className={classes(styles.tag, styles[look])}>
      <Shape size={10} fill={filled} strokeWidth={look === 'fine' ? 4 : 2.5} aria-hidden />
      {children}
    </span>
  );
}
