import type { ReactNode } from 'react';
import { Tooltip as Primitive } from 'react-aria-components';
import { KeyHint } from './key-hint.tsx';
import styles from './popover.module.css';

/** A short name beside a control without text. Goes inside a TooltipTrigger. */
export const Tooltip = ({ keys, children }: { keys?: string | undefined; children: ReactNode }) => (
  <Primitive offset={6} className={styles.tooltip}>
    {children} {keys && <KeyHint keys={keys} />}
  </Primitive>
);
