import type { LucideIcon } from 'lucide-react';
import { Button, type ButtonProps } from 'react-aria-components';
import { classes } from '../../ui/classes.ts';
import { KeyHint } from '../../ui/key-hint.tsx';
import styles from './floor.module.css';

interface Props extends Omit<ButtonProps, 'className' | 'children'> {
  look?: 'primary' | 'usual';
  icon: LucideIcon;
  keys?: string;
  /** Where there is little room its picture says it alone. */
  brief?: boolean;
  children: string;
}

interface LesserProps {
  icon: LucideIcon;
  keys: string;
  children: string;
  onPress: () => void;
}

/** A button for a gloved hand. */
export const BigButton = ({ look = 'usual', icon: Icon, keys, brief = false, children, ...rest }: Props) => (
  <Button
    {...rest}
    aria-label={children}
    className={classes(styles.big, look === 'primary' && styles.main, brief && styles.brief)}
  >
    <Icon size={24} aria-hidden />
    <span>{children}</span>
    {keys && <KeyHint keys={keys} />}
  </Button>
);

/** One for a gloved hand too, but less than the main ones beside it. */
export const LesserButton = ({ icon: Icon, keys, children, onPress }: LesserProps) => (
  <Button className={styles.smaller ?? ''} aria-label={children} onPress={onPress}>
    <Icon size={18} aria-hidden /> {children} <KeyHint keys={keys} />
  </Button>
);
