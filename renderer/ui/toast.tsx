import { X } from 'lucide-react';
import {
  UNSTABLE_Toast as PrimitiveToast,
  UNSTABLE_ToastContent as Content,
  UNSTABLE_ToastQueue as Queue,
  UNSTABLE_ToastRegion as Region,
} from 'react-aria-components';
import { Button } from './button.tsx';
import { classes } from './classes.ts';
import { IconButton } from './icon-button.tsx';
import styles from './toast.module.css';

interface ToastWords {
  /** A whole sentence. */
  text: string;
  look?: 'news' | 'trouble';
  /** One thing to do about it, e.g. Undo. */
  action?: { label: string; act: () => void };
  /** How long it is shown; left out: as long as its look asks. */
  forMs?: number;
}

/** Trouble takes longer to read and to act on. Either stays while the pointer or the focus is on it. */
const SHOWN_MS = { news: 6_000, trouble: 20_000 } as const;
const queue = new Queue<ToastWords>({ maxVisibleToasts: 1 });

/** Say something in the message line. It goes by itself, or when something newer is said. */
export const toast = (words: ToastWords): void => {
  queue.clear();
  queue.add(words, { timeout: words.forMs ?? SHOWN_MS[words.look ?? 'news'] });
};

/** Take away what is said, because something newer stands where it lies. */
export const hushToast = (): void => {
  if (queue.visibleToasts.length > 0) queue.clear();
};

/** A refusal as a toast. */
export const toastError = (error: Error): void => toast({ text: error.message, look: 'trouble' });

/** A long sentence makes the message line taller, so that it never lies over what stands above (tokens.css). */
function makeRoom(element: HTMLElement | null): () => void {
  const { style } = document.documentElement;
  const sizes = new ResizeObserver(() => {
    if (element) style.setProperty('--said', `${element.offsetHeight}px`);
  });
  if (element) sizes.observe(element);
  return () => {
    sizes.disconnect();
    style.removeProperty('--said');
  };
}

/** Where toasts appear: the line at the foot of the window that every screen leaves free. */
export const ToastCorner = () => (
  <Region queue={queue} className={styles.corner ?? ''}>
    {({ toast: shown }) => {
      const { text, look = 'news', action } = shown.content;
      return (
        <PrimitiveToast toast={shown} ref={makeRoom} className={classes(styles.toast, styles[look])}>
          <Content className={styles.text ?? ''}>
            <span slot="title">{text}</span>
          </Content>
          {action && (
            <Button
              small
              onPress={() => {
                queue.close(shown.key);
                action.act();
              }}
            >
              {action.label}
            </Button>
          )}
          <IconButton label="Close" icon={X} small onPress={() => queue.close(shown.key)} />
        </PrimitiveToast>
      );
    }}
  </Region>
);
