import type { LucideIcon } from 'lucide-react';
import { Button as Primitive, TooltipTrigger, type ButtonProps } from 'react-aria-components';
import styles from './button.module.css';
import { classes } from './classes.ts';
import { Tooltip } from './tooltip.tsx';

interface Props extends Omit<ButtonProps, 'className' | 'children'> {
  /** What it does: the accessible name and the tooltip. */
  label: string;
  /** Keys that do the same, shown in the tooltip, e.g. "Ctrl+Z". */
  keys?: string;
  icon: LucideIcon;
  small?: boolean;
}

export function IconButton({ label, keys, icon: Icon, small = false, ...rest }: Props) {
  return (
    <TooltipTrigger delay={500}>
      <Primitive
        {...rest}
        aria-label={label}
        className={classes(styles.button, styles.quiet, styles.iconOnly, small && styles.small)}
      >
        <Icon size={small ? 16 : 18} aria-hidden />
      </Primitive>
      <Tooltip keys={keys}>{label}</Tooltip>
    </TooltipTrigger>
  );
}
