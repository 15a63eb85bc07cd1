import { type KeyboardEvent, useRef, useState } from 'react';
import type { IsoTooth, Surface } from '#lib/dentition';
import { useText } from '../../../text/text-provider.js';
import { Says } from '../parts/chips.js';
import css from './surface-diagram.module.css';
import { asCheckbox, GROUP } from './svg-roles.js';
import { faceOfLetter, facesOf, movedFrom, type Side } from './tooth-faces.js';

/** 156 wide: each face is at least 44 across. */
const SHAPES: Readonly<
  Record<Side, { readonly path: string; readonly x: number; readonly y: number }>
> = {
  top: { path: 'M10 4H146Q130 30 108 50H48Q26 30 10 4Z', x: 78, y: 28 },
  bottom: { path: 'M10 152H146Q130 126 108 106H48Q26 126 10 152Z', x: 78, y: 128 },
  left: { path: 'M4 10Q30 26 50 48V108Q30 130 4 146Z', x: 25, y: 78 },
  right: { path: 'M152 10Q126 26 106 48V108Q126 130 152 146Z', x: 131, y: 78 },
  middle: { path: 'M54 54H102V102H54Z', x: 78, y: 78 },
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
