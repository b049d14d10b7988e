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

export interface ToastWords {
  /** A whole sentence. */
  text: string;
  look?: 'news' | 'trouble';
  /** One thing to do about it, e.g. Undo. */
  action?: { label: string; act: () => void };
}

const SHOWN_MS = 6_000;
const queue = new Queue<ToastWords>({ maxVisibleToasts: 3 });

/** Say something in the corner. News goes by itself; trouble stays until it is closed or something newer is said. */
export const toast = (words: ToastWords): void => {
  for (const { key, content } of queue.visibleToasts) if (content.look === 'trouble') queue.close(key);
  queue.add(words, words.look === 'trouble' ? {} : { timeout: SHOWN_MS });
};

/** A refusal as a toast. */
export const toastError = (error: Error): void => toast({ text: error.message, look: 'trouble' });

/** Where toasts appear: once, in the shell. */
export const ToastCorner = () => (
  <Region queue={queue} className={styles.corner ?? ''}>
    {({ toast: shown }) => {
      const { text, look = 'news', action } = shown.content;
      return (
        <PrimitiveToast toast={shown} className={classes(styles.toast, styles[look])}>
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
