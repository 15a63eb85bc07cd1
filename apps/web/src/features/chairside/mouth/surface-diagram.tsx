import { type KeyboardEvent, useRef, useState } from 'react';
import type { IsoTooth, Surface } from '#lib/dentition';
import { useText } from '../../../text/text-provider.js';
import { Says } from '../parts/chips.js';
import css from './surface-diagram.module.css';
import { asCheckbox, GROUP } from './svg-roles.js';
import { faceOfLetter, facesOf, movedFrom, type Side } from './tooth-faces.js';

interface Shape {
  readonly path: string;
  readonly x: number;
  readonly y: number;
}

/** 156 wide: each face is at least 44 across. */
const SHAPES: Readonly<Record<Side, Shape>> = {
  top: { path: 'M20 4H136Q147 4 140 12L107 47H49L16 12Q9 4 20 4Z', x: 78, y: 27 },
  bottom: { path: 'M20 152H136Q147 152 140 144L107 109H49L16 144Q9 152 20 152Z', x: 78, y: 129 },
  left: { path: 'M4 20V136Q4 147 12 140L47 107V49L12 16Q4 9 4 20Z', x: 26, y: 78 },
  right: { path: 'M152 20V136Q152 147 144 140L109 107V49L144 16Q152 9 152 20Z', x: 130, y: 78 },
  middle: {
    path: 'M54 51H102Q105 51 105 54V102Q105 105 102 105H54Q51 105 51 102V54Q51 51 54 51Z',
    x: 78,
    y: 78,
  },
};

const ORDER: readonly Side[] = ['top', 'left', 'middle', 'right', 'bottom'];

interface Props {
  readonly id: string;
  readonly label: string;
  readonly tooth: IsoTooth;
  readonly surfaces: readonly Surface[];
  readonly error: string | undefined;
  readonly onToggle: (surface: Surface) => void;
}

/** The faces of one tooth. One stop of the Tab key; letters work as well. */
export function SurfaceDiagram({ id, label, tooth, surfaces, error, onToggle }: Props) {
  const t = useText();
  const [stop, setStop] = useState<Side>('middle');
  const drawing = useRef<SVGSVGElement>(null);
  const faces = facesOf(tooth);
  const onKey = (event: KeyboardEvent, side: Side) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const next = movedFrom(side, event.key);
    const letter = event.key.length === 1 ? faceOfLetter(tooth, event.key) : undefined;
    if (event.key === ' ' || event.key === 'Enter') onToggle(faces[side]);
    else if (letter !== undefined) onToggle(letter);
    else if (next === undefined) return;
    else {
      setStop(next);
      drawing.current?.querySelector<SVGGElement>(`[data-side="${next}"]`)?.focus();
    }
    event.preventDefault();
  };
  return (
    <div className={css.field}>
      <svg
        ref={drawing}
        id={id}
        className={css.diagram}
        viewBox="0 0 156 156"
        {...GROUP}
        aria-label={label}
        aria-describedby={`${id}-says`}
      >
        {ORDER.map((side) => (
          <g
            key={side}
            className={css.face}
            {...asCheckbox({
              label: t.chairside.restoration.surfaces[faces[side]],
              isOn: surfaces.includes(faces[side]),
              isStop: side === stop,
              onPress: () => {
                setStop(side);
                onToggle(faces[side]);
              },
              onKey: (event) => onKey(event, side),
            })}
            aria-invalid={error !== undefined}
            data-side={side}
          >
            <path d={SHAPES[side].path} />
            <text x={SHAPES[side].x} y={SHAPES[side].y} dy="0.35em">
              {faces[side]}
            </text>
          </g>
        ))}
      </svg>
      <Says id={id} hint={t.chairside.restoration.facesHint} error={error} />
    </div>
  );
}
