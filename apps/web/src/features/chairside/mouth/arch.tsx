import { type KeyboardEvent, useMemo, useRef, useState } from 'react';
import { formatTooth, type IsoTooth, isAnterior, type ToothNotation } from '#lib/dentition';
import { useText } from '../../../text/text-provider.js';
import { neighbour, opposite } from '../draft/next-tooth.js';
import { toothName } from '../words.js';
import css from './arch.module.css';
import { type PlacedTooth, placeTeeth, VIEW } from './arch-geometry.js';
import { asButton, GROUP } from './svg-roles.js';

interface Props {
  readonly primary: boolean;
  readonly notation: ToothNotation;
  readonly picked: ReadonlySet<IsoTooth>;
  readonly onPick: (tooth: IsoTooth) => void;
  readonly onPoint: (tooth: IsoTooth | undefined) => void;
}

const KEYS: Readonly<Record<string, (tooth: IsoTooth) => IsoTooth | undefined>> = {
  ArrowRight: (tooth) => neighbour(tooth, 1),
  ArrowLeft: (tooth) => neighbour(tooth, -1),
  ArrowUp: opposite,
  ArrowDown: opposite,
};

/** Both arches. One stop of the Tab key: arrows move inside, Space and Enter pick. */
export function Arch({ primary, notation, picked, onPick, onPoint }: Props) {
  const t = useText();
  const teeth = useMemo(() => placeTeeth(primary), [primary]);
  const [stop, setStop] = useState<IsoTooth>();
  const drawing = useRef<SVGSVGElement>(null);
  const first = teeth[primary ? 4 : 7]?.tooth;
  const current = teeth.some(({ tooth }) => tooth === stop) ? stop : first;
  const onKey = (event: KeyboardEvent, tooth: IsoTooth) => {
    if (event.key === ' ' || event.key === 'Enter') {
      event.preventDefault();
      onPick(tooth);
      return;
    }
    const next = KEYS[event.key]?.(tooth);
    if (next === undefined) return;
    event.preventDefault();
    setStop(next);
    drawing.current?.querySelector<SVGGElement>(`[data-tooth="${next}"]`)?.focus();
  };
  return (
    <svg
      ref={drawing}
      className={css.arch}
      viewBox={`0 0 ${VIEW.width} ${VIEW.height}`}
      {...GROUP}
      aria-label={t.chairside.mouth.title}
    >
      <text className={css.side} x="8" y="190">
        {t.chairside.mouth.right}
      </text>
      <text className={css.side} x={VIEW.width - 8} y="190" textAnchor="end">
        {t.chairside.mouth.left}
      </text>
      {teeth.map((placed) => (
        <Tooth
          key={placed.tooth}
          placed={placed}
          label={formatTooth(placed.tooth, notation)}
          name={toothName(t, placed.tooth)}
          isPicked={picked.has(placed.tooth)}
          isStop={placed.tooth === current}
          onPick={() => {
            setStop(placed.tooth);
            onPick(placed.tooth);
          }}
          onKey={(event) => onKey(event, placed.tooth)}
          onPoint={(pointed) => onPoint(pointed ? placed.tooth : undefined)}
        />
      ))}
    </svg>
  );
}

interface ToothProps {
  readonly placed: PlacedTooth;
  readonly label: string;
  readonly name: string;
  readonly isPicked: boolean;
  readonly isStop: boolean;
  readonly onPick: () => void;
  readonly onKey: (event: KeyboardEvent) => void;
  readonly onPoint: (pointed: boolean) => void;
}

function Tooth(props: ToothProps) {
  const { placed, label, name, isPicked, isStop, onPick, onKey, onPoint } = props;
  const { x, y, turn, width, depth } = placed;
  return (
    <g
      className={css.tooth}
      {...asButton({
        label: `${label}, ${name}`,
        isOn: isPicked,
        isStop,
        onPress: onPick,
        onKey,
        onPoint,
      })}
      data-tooth={placed.tooth}
    >
      <g transform={`translate(${x.toFixed(1)} ${y.toFixed(1)}) rotate(${turn.toFixed(1)})`}>
        <rect className={css.target} x={-width / 2 - 2} y={-50} width={width + 4} height={78} />
        <path className={css.crown} d={placed.outline} />
        <path className={css.relief} d={reliefOf(placed, width, depth)} />
      </g>
      <text
        className={css.number}
        x={placed.label.x.toFixed(1)}
        y={placed.label.y.toFixed(1)}
        dy="0.36em"
      >
        {label}
      </text>
    </g>
  );
}

/** An edge on front teeth, a fissure on back teeth. */
function reliefOf({ tooth }: PlacedTooth, width: number, depth: number): string {
  const w = width / 2;
  if (isAnterior(tooth))
    return `M${-w * 0.55} ${-depth * 0.04}Q0 ${-depth * 0.16} ${w * 0.55} ${-depth * 0.04}`;
  const across = width > 44 ? `M0 ${-depth * 0.2}V${depth * 0.2}` : '';
  return `M${-w * 0.5} 0Q${-w * 0.2} ${depth * 0.07} 0 0T${w * 0.5} 0${across}`;
}
