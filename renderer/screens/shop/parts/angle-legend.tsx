import look from './parts.module.css';

/** A bend of 60°, seen from its end: where the flange would go straight on, where it goes, and the two angles between. */
const AT = { x: 46, y: 34 };
const TURN = 60;
const FLANGE = 32;
const ARC = { turned: 17, included: 11 };

const along = (degrees: number, far: number): string => {
  const angle = (degrees * Math.PI) / 180;
  const place = (value: number): string => String(Math.round(value * 100) / 100);
  return `${place(AT.x + far * Math.cos(angle))} ${place(AT.y - far * Math.sin(angle))}`;
};

/** Which angle is which: once beside a bend list, whose rows give both. */
export const AngleLegend = () => (
  <p className={look.legend}>
    <svg viewBox="0 4 96 32" width="96" height="32" aria-hidden fill="none" stroke="currentColor">
      <path d={`M ${along(180, FLANGE)} L ${AT.x} ${AT.y} L ${along(TURN, FLANGE)}`} strokeWidth="2" />
      <path d={`M ${AT.x} ${AT.y} L ${along(0, FLANGE)}`} strokeWidth="0.8" strokeDasharray="3 2" />
      <path d={`M ${along(0, ARC.turned)} A ${ARC.turned} ${ARC.turned} 0 0 0 ${along(TURN, ARC.turned)}`} />
      <path
        d={`M ${along(TURN, ARC.included)} A ${ARC.included} ${ARC.included} 0 0 0 ${along(180, ARC.included)}`}
      />
      <g stroke="none" fill="currentColor" fontSize="8">
        <text x="66" y="26">
          turned
        </text>
        <text x="2" y="22">
          included
        </text>
      </g>
    </svg>
    Turned: from straight on. Included: between the flanges. Together 180°.
  </p>
);
