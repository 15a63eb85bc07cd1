import { useFormat } from '../app/use-format.js';
import { useText } from '../text/text-provider.js';
import css from './values.module.css';

interface AmountProps {
  readonly value: string;
  readonly unit: string;
  /** Only for a glance, the exact amount being a hover away. */
  readonly rough?: boolean;
}

/** A quantity with its unit, the unit in a smaller voice: 0.4 g. */
export function Amount({ value, unit, rough = false }: AmountProps) {
  const format = useFormat();
  const exact = format.number(value);
  return (
    <span className={css.value} title={rough ? exact : undefined}>
      {rough ? format.roughly(value) : exact}
      <span className={css.unit}>{`\u00a0${format.unitName(value, unit)}`}</span>
    </span>
  );
}

/** Money of the practice; null where nobody knows. */
export function Money({ value }: { readonly value: string | null }) {
  const format = useFormat();
  const t = useText();
  if (value === null) return <span className={css.none}>{t.ui.none}</span>;
  return <span className={css.value}>{format.money(value)}</span>;
}

/** A day of the calendar ('2026-05-04'); null where none is stated. */
export function Day({ value }: { readonly value: string | null }) {
  const format = useFormat();
  const t = useText();
  if (value === null) return <span className={css.none}>{t.ui.notStated}</span>;
  return (
    <time className={css.value} dateTime={value}>
      {format.day(value)}
    </time>
  );
}

/** A moment, in the time zone of the practice. */
export function Moment({ value }: { readonly value: string }) {
  const format = useFormat();
  return (
    <time className={css.value} dateTime={value}>
      {format.instant(value)}
    </time>
  );
}

/** A lot number in letters that cannot be confused; a lot may legally state none. */
export function LotNumber({ value }: { readonly value: string | null }) {
  const t = useText();
  if (value === null) return <span className={css.none}>{t.ui.notStated}</span>;
  return <span className={css.code}>{value}</span>;
}
