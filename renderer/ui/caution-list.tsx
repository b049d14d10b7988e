import type { Cautions } from '../../core/report/cautions.ts';

/** Cautions as they stand on screens and paper: who has the last word, then point by point. */
export const CautionList = ({ cautions: { governs, points } }: { cautions: Cautions }) => (
  <>
    <strong>{governs}</strong>
    <ul>
      {points.map((point) => (
        <li key={point}>{point}</li>
      ))}
    </ul>
  </>
);
