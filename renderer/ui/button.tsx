import type { LucideIcon } from 'lucide-react';
import type { ReactNode } from 'react';
import { Button as Primitive, type ButtonProps as PrimitiveProps } from 'react-aria-components';
import styles from './button.module.css';
import { classes } from './classes.ts';

export interface ButtonProps extends Omit<PrimitiveProps, 'className' | 'children'> {
  /** `primary`: the one thing to do here. `danger`: takes something away. `quiet`: no border until it is touched. */
  look?: 'primary' | 'usual' | 'quiet' | 'danger';
  small?: boolean;
  icon?: LucideIcon;
  children: ReactNode;
}

export function Button({ look = 'usual', small = false, icon: Icon, children, ...rest }: ButtonProps) {
  return (
    <Primitive {...rest} className={classes(styles.button, styles[look], small && styles.small)}>
      {Icon && <Icon size={small ? 14 : 16} aria-hidden />}
      <span className={styles.text}>{children}</span>
    </Primitive>
  );
}
