import { cautionsFor } from '../../../core/report/cautions.ts';
import { FIRST_MINUTES, FIRST_STEPS, type FirstStep } from '../../../core/report/first-minutes.ts';
import { placeOf } from '../../router.ts';
import { Dialog } from '../../ui/dialog.tsx';
import styles from './first-minutes.module.css';

const PLACES: Readonly<Record<FirstStep['at'], readonly string[]>> = {
  shop: ['shop', 'set-up', 'shop'],
  machines: ['shop', 'set-up', 'machines'],
  metals: ['shop', 'set-up', 'metals'],
  sheets: ['shop', 'set-up', 'sheets'],
  parts: ['shop', 'parts'],
  orders: ['shop', 'set-up', 'orders'],
  board: ['board'],
  print: ['print', 'dispatch'],
};

interface Props {
  isOpen: boolean;
  onClose: () => void;
  /** There is a shop: each step leads to its place. */
  leads: boolean;
}

/** The way from an empty shop to a printed dispatch list, in the words of README. */
export function FirstMinutes({ isOpen, onClose, leads }: Props) {
  return (
    <Dialog title={FIRST_MINUTES} isOpen={isOpen} onClose={onClose}>
      <ol className={styles.steps}>
        {FIRST_STEPS.map(({ at, title, says }) => (
          <li key={at}>
            <h3>{title}</h3>
            <p>
              {says.split('*').map((text, i) => (i % 2 === 1 ? <b key={text}>{text}</b> : text))}
              {leads && (
                <>
                  {' '}
                  <a href={placeOf(...PLACES[at])} onClick={onClose} aria-label={`Go there: ${title}`}>
                    Go there
                  </a>
                </>
              )}
            </p>
          </li>
        ))}
      </ol>
      <p className={styles.caution}>{cautionsFor('shear').governs}</p>
    </Dialog>
  );
}
