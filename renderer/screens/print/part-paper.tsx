import { blankOf } from '../../../core/part/blank.ts';
import { dimensioned } from '../../../core/part/dimensions.ts';
import { formingOf, blankBasisOf } from '../../../core/part/forming.ts';
import { routingOf } from '../../../core/planning/routing.ts';
import { routingWords } from '../../../core/report/routing-words.ts';
import { checkPart } from '../../../core/limits/limits.ts';
import { setUpOn } from '../../../core/planning/set-up.ts';
import { extraOf } from '../../../core/planning/blanks.ts';
import { blanksWords } from '../../../core/report/blank-words.ts';
import { bendListOf, movesSentence } from '../../../core/report/bend-words.ts';
import { ROLLED_ALONG } from '../../../core/report/rolling-words.ts';
import { toolSetWords } from '../../../core/report/tool-words.ts';
import { cautionsAlong } from '../../../core/report/cautions.ts';
import { metalWords } from '../../../core/shop/metal-name.ts';
import type { Gauge, Material } from '../../../core/material/material.ts';
import { termsOf } from '../../../core/shop/line-terms.ts';
import type { OrderLine, WorkOrder } from '../../../core/shop/order.ts';
import type { Part } from '../../../core/part/part.ts';
import { sentence } from '../../../core/result.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatDayAndClock } from '../../../core/time/wall.ts';
import type { Instant } from '../../../core/units/brand.ts';
import { formatCutSize, formatThickness } from '../../../core/units/length.ts';
import { CautionList } from '../../ui/caution-list.tsx';
import { Notes } from '../../ui/notes.tsx';
import { AngleLegend } from '../shop/parts/angle-legend.tsx';
import { PartDrawing } from './part-drawing.tsx';
import styles from './part-paper.module.css';
import paper from './print.module.css';
import { ColumnHeads } from '../../ui/column-heads.tsx';

/** A part in a metal, and the order line that it is made for where there is one. */
export interface PartOnPaper {
  readonly part: Part;
  readonly material: Material;
  readonly gauge: Gauge;
  readonly lengthMm: number;
  readonly line: { readonly line: OrderLine; readonly order: WorkOrder } | null;
}

interface Props extends PartOnPaper {
  shop: Shop;
  now: Instant;
}

const measuredWords = {
  outside: 'over the outside',
  inside: 'inside',
  apex: 'to the apex of the bends',
} as const;

/** What goes along with a part: drawing, blank, bend list, what to look at first, cautions. */
export function PartPaper(props: Props) {
  const { shop, part, line, now } = props;
  const { units, timeZone, name } = shop.settings;
  const notes = line ? termsOf(line.order, line.line).notes : [];
  return (
    <section
      className={units === 'in' ? paper.letter : paper.a4}
      aria-label={line ? `Traveller of line ${line.line.id}` : `Drawing of ${part.name}`}
    >
      <div className={paper.head}>
        <h1>{line ? `Line ${line.line.id}: ${part.name}` : part.name}</h1>
        <span>{line ? line.order.customer : `part ${part.id}`}</span>
        <span>{`${name}, printed ${formatDayAndClock(now, timeZone)}`}</span>
      </div>
      <div className={paper.cautions}>
        <CautionList cautions={cautionsAlong(routingOf(part))} />
      </div>
      <Facts {...props} />
      {notes.length > 0 && (
        <div className={paper.note}>
          <strong>Note</strong>
          <Notes notes={notes} />
        </div>
      )}
      <Drawn {...props} />
      <Bends {...props} />
      <LookFirst {...props} />
      {part.note && <p className={styles.note}>{part.note}</p>}
    </section>
  );
}

/** How many blanks there are for them, where that is more. */
function blanksOfLine(shop: Shop, part: Part, pieces: number): (readonly [string, string])[] {
  const extra = extraOf(shop.settings, part, pieces);
  const blanks = pieces + extra.setUp + extra.spare;
  return blanks > pieces ? [['Blanks', blanksWords(blanks, extra)]] : [];
}

function Facts({ shop, part, material, gauge, lengthMm, line }: Props) {
  const { timeZone } = shop.settings;
  const blank = blankOf({ id: part.id, lengthMm }, part, material, gauge, blankBasisOf(shop));
  const colourId = line?.line.colourId;
  const colour = shop.colour.find(({ id }) => id === colourId)?.name ?? colourId;
  const facts: (readonly [string, string])[] = [
    ...(line
      ? ([
          ['Pieces', String(line.line.quantity)],
          ...blanksOfLine(shop, part, line.line.quantity),
          ['Due', formatDayAndClock(termsOf(line.order, line.line).due, timeZone)],
        ] as const)
      : []),
    [
      'Metal',
      `${metalWords({ gauge: gauge.label, colour, material: material.name })}, ${formatThickness(gauge.thicknessMm, shop.settings)}`,
    ],
    ...(blank.ok
      ? ([['Blank, girth × length', formatCutSize(blank.value.girthMm, lengthMm, shop.settings)]] as const)
      : []),
    ['Rolled along', ROLLED_ALONG],
    ['Lengths are given', measuredWords[part.profile.measured]],
    ...(part.steps.length > 0 ? ([['Steps', routingWords(shop, part, line?.line.id ?? null)]] as const) : []),
    ...toolFacts(shop, part, material, gauge, lengthMm),
  ];
  return (
    <dl className={styles.facts}>
      {facts.map(([term, text]) => (
        <div key={term}>
          <dt>{term}</dt>
          <dd>{text}</dd>
        </div>
      ))}
    </dl>
  );
}

/** What each brake with tools on record sets up for it. */
const toolFacts = (
  shop: Shop,
  part: Props['part'],
  material: Props['material'],
  gauge: Props['gauge'],
  lengthMm: number,
): (readonly [string, string])[] =>
  shop.machine
    .filter(({ stage }) => stage === 'brake')
    .flatMap((machine) => {
      const { tools } = setUpOn(shop, machine, { part, material, gauge }, lengthMm);
      return tools ? [[`Set up on ${machine.name}`, toolSetWords(tools, shop.settings)] as const] : [];
    });

function Drawn({ shop, part, material, gauge }: Props) {
  const drawn = dimensioned(part.profile, formingOf(material, gauge, blankBasisOf(shop)));
  if (!drawn.ok) return <p className={styles.note}>{sentence(drawn.issues)}</p>;
  return (
    <PartDrawing
      dimensioned={drawn.value}
      thicknessMm={gauge.thicknessMm}
      units={shop.settings}
      label={`Cross-section of ${part.name}, to scale`}
    />
  );
}

function Bends({ shop, part, material, gauge }: Props) {
  const { order, rows, note } = bendListOf(part, material, gauge, blankBasisOf(shop));
  if (rows.length === 0) return <p className={styles.note}>Sold flat: nothing is bent.</p>;
  return (
    <>
      <div className={styles.titled}>
        <h2 className={styles.title}>{`Bend list. ${movesSentence(order)}`}</h2>
        <AngleLegend />
      </div>
      <table className={`${paper.paper} ${styles.bends}`} aria-label="Bend list">
        <thead>
          <tr className={paper.columns}>
            <ColumnHeads
              heads={[
                'No.',
                'Before it',
                'Step',
                'Direction',
                'Angle',
                'Painted side',
                'Edge at the gauge',
                'Done',
              ]}
            />
          </tr>
        </thead>
        <tbody>
          {rows.map((row, i) => (
            <tr key={row.step} className={paper.row}>
              <td className={paper.place}>{i + 1}</td>
              <td>{row.before || '–'}</td>
              <td>
                <strong>{row.step}</strong>
                {row.collides && ' ▲ may meet the tools: prove it first'}
              </td>
              <td>{row.direction}</td>
              <td>{row.angle}</td>
              <td>{row.paint}</td>
              <td>{row.back}</td>
              <td>
                <span className={paper.tick} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {note && <p className={styles.note}>{`▲ ${note}`}</p>}
    </>
  );
}

/** What speaks against the part on each brake: of one that cannot make it the first reason, all of them are on its screen. */
function LookFirst({ shop, part, material, gauge, lengthMm }: Props) {
  const asked = { material, gauge, lengthMm, partRules: shop.settings.partRules, ...blankBasisOf(shop) };
  const found = shop.machine
    .filter(({ stage }) => stage === 'brake')
    .flatMap((machine) => {
      const findings = checkPart(part, asked, machine);
      const stop = findings.find(({ severity }) => severity === 'stop');
      return (stop ? [stop] : findings).map((finding) => ({ machine: machine.name, ...finding }));
    });
  if (found.length === 0) return null;
  return (
    <>
      <h2 className={styles.title}>Check first</h2>
      <ul className={styles.found}>
        {found.map(({ machine, rule, severity, message, advice }) => (
          <li key={`${machine} ${rule} ${message}`}>
            <strong>{`${machine}${severity === 'stop' ? ', cannot' : ''}:`}</strong> {message} {advice}
          </li>
        ))}
      </ul>
    </>
  );
}
