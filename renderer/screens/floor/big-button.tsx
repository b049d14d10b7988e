import type { LucideIcon } from 'lucide-react';
import { Button, type ButtonProps } from 'react-aria-components';
import { classes } from '../../ui/classes.ts';
import { KeyHint } from '../../ui/key-hint.tsx';
import styles from './floor.module.css';

interface Props extends Omit<ButtonProps, 'className' | 'children'> {
  look?: 'primary' | 'usual';
  icon: LucideIcon;
  keys?: string;
  children: string;
}

/** A button for a gloved hand. */
export const BigButton = ({ look = 'usual', icon: Icon, keys, children, ...rest }: Props) => (
  <Button {...rest} aria-label={children} className={classes(styles.big, look === 'primary' && styles.main)}>
    <Icon size={24} aria-hidden />
    <span>{children}</span>
    {keys && <KeyHint keys={keys} />}
  </Button>
);
