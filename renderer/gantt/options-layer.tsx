import { stepWord } from '../../core/part/stage.ts';
import { stageOfOperation } from '../../core/shop/order.ts';
import { memo } from 'react';
import { metalWords } from '../../core/shop/metal-name.ts';
import { formatDuration } from '../../core/units/duration.ts';
import { barBox, type Geometry } from './geometry.ts';
import { barsIn, type Bar, type Lane } from './lanes.ts';
import { endOf, xOf, type Scale } from './scale.ts';

/** The bar's element, for aria-activedescendant. */
export const barId = (operation: string): string => `bar-${operation}`;

/** What a screen reader says of a bar; the side panel has the rest. */
function barName(bar: Bar): string {
  const step = stepWord[stageOfOperation(bar.operation)];
  const late = bar.tardiness > 0 && `${formatDuration(bar.tardiness)} late`;
  const words = [
    `${bar.lineId} ${step}`,
    bar.partName,
    `${bar.quantity} pieces`,
    metalWords({ gauge: bar.gauge, colour: bar.colourName }),
  ];
  return [...words, late, bar.pinned && 'pinned', bar.started && 'started'].filter(Boolean).join(', ');
}

/** With more bars in sight than this, only the selected one is told of: they are hairlines then. */
const MOST = 300;

interface Props {
  lanes: readonly Lane[];
  scale: Scale;
  geometry: Geometry;
  selected: string | null;
  chosen: readonly string[];
}

/** The bars as a list box a lane, for assistive technology: nothing of it is seen. */
export const OptionsLayer = memo(function OptionsLayer(props: Props) {
  const { lanes, scale, geometry, selected, chosen } = props;
  const isChosen = new Set(chosen);
  const inSight = lanes.map((lane) => barsIn(lane, scale.from, endOf(scale)));
  const few = inSight.reduce((sum, bars) => sum + bars.length, 0) <= MOST;
  return lanes.map((lane, i) => (
    <g
      key={lane.machine.id}
      role="listbox"
      aria-multiselectable
      aria-label={`${lane.machine.name} queue`}
      transform={`translate(0 ${i * geometry.laneHeight})`}
      fill="none"
      pointerEvents="all"
    >
      {(few ? (inSight[i] ?? []) : lane.bars.filter((bar) => bar.operation === selected)).map((bar) => (
        <rect
          key={bar.operation}
          id={barId(bar.operation)}
          role="option"
          aria-label={barName(bar)}
          aria-selected={isChosen.has(bar.operation)}
          aria-posinset={bar.position + 1}
          aria-setsize={lane.bars.length}
          x={xOf(scale, bar.start)}
          y={barBox(geometry, bar).y}
          width={(bar.end - bar.start) / scale.perPixel}
          height={barBox(geometry, bar).height}
        />
      ))}
    </g>
  ));
});
