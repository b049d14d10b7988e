import { LocateFixed, Maximize2, ZoomIn, ZoomOut } from 'lucide-react';
import { Toolbar } from 'react-aria-components';
import { IconButton } from '../ui/icon-button.tsx';
import styles from './gantt.module.css';
import { FARTHEST_S, NEAREST_S, spanOf, zoomed, type Scale } from './scale.ts';
import { ZOOM_STEP } from './use-board-keys.ts';

interface Props {
  scale: Scale;
  look: (scale: Scale) => void;
  fit: () => void;
  goToNow: () => void;
}

export function ZoomTools({ scale, look, fit, goToNow }: Props) {
  const span = spanOf(scale);
  const zoom = (factor: number) => look(zoomed(scale, factor, scale.width / 2));
  return (
    <Toolbar aria-label="Zoom" className={styles.tools ?? ''}>
      <IconButton
        small
        label="Zoom in"
        keys="+"
        icon={ZoomIn}
        isDisabled={span <= NEAREST_S}
        onPress={() => zoom(ZOOM_STEP)}
      />
      <IconButton
        small
        label="Zoom out"
        keys="-"
        icon={ZoomOut}
        isDisabled={span >= FARTHEST_S}
        onPress={() => zoom(1 / ZOOM_STEP)}
      />
      <IconButton small label="See the whole plan" keys="0" icon={Maximize2} onPress={fit} />
      <IconButton small label="Go to now" keys="T" icon={LocateFixed} onPress={goToNow} />
    </Toolbar>
  );
}
