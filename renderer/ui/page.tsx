import type { ReactNode } from 'react';
import styles from './page.module.css';

/** A screen's title row, its actions at the end, and the rest below, scrolling by itself. */
export function Page({
  title,
  lead,
  actions,
  children,
}: {
  title: string;
  lead?: string;
  actions?: ReactNode;
  children: ReactNode;
}) {
  return (
    <div className={styles.page}>
      <header className={styles.head}>
        <div>
          <h1 className={styles.title}>{title}</h1>
          {lead && <p className={styles.lead}>{lead}</p>}
        </div>
        {actions && <div className={styles.actions}>{actions}</div>}
      </header>
      <div className={styles.body}>{children}</div>
    </div>
  );
}

/** A framed part of a page. */
export function Panel({
  title,
  actions,
  children,
}: {
  title?: string;
  actions?: ReactNode;
  children: ReactNode;
}) {
  return (
    <section className={styles.panel}>
      {title && (
        <header className={styles.panelHead}>
          <h2>{title}</h2>
          {actions}
        </header>
      )}
      {children}
    </section>
  );
}
