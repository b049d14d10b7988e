import type { LucideIcon } from 'lucide-react';
import type { ReactNode } from 'react';
import styles from './states.module.css';

/** Nothing yet: what would stand here and how to get it. */
export function EmptyState({
  icon: Icon,
  title,
  children,
}: {
  icon?: LucideIcon;
  title: string;
  children?: ReactNode;
}) {
  return (
    <div className={styles.state}>
      {Icon && <Icon size={32} strokeWidth={1.25} aria-hidden />}
      <h2>{title}</h2>
      {children && <div className={styles.words}>{children}</div>}
    </div>
  );
}

/** A view that waits. @param doing what for: "Reading the shop", or "Working out the plan" where something is computed */
export const Waiting = ({ doing }: { doing: string }) => (
  <div className={styles.state} role="status">
    <p>{doing}…</p>
  </div>
);

/** Something failed: what happened, what was kept, what to do. */
export function SentenceError({ message, action }: { message: string; action?: ReactNode }) {
  return (
    <div className={styles.trouble} role="alert">
      <p>{message}</p>
      {action}
    </div>
  );
}
