import { useSession } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { FilterDay, FilterSelect } from '../../ui/filters.js';
import { daysOf, PERIODS, type Period, periodOf } from './periods.js';

interface Days {
  readonly from?: string | undefined;
  readonly to?: string | undefined;
}

interface Props extends Days {
  /** What the report takes when no day is given; all time unless it says otherwise. */
  readonly all?: string;
  readonly onChange: (days: Days) => void;
}

/** A period by its name, or from one day to another. */
export function PeriodFilter({ from, to, all, onChange }: Props) {
  const t = useText();
  const { today } = useSession();
  const words = t.costs.filter;
  const named = periodOf({ from, to }, today);
  const own = named === undefined && (from ?? to) !== undefined;
  const choices: { value: Period | 'own'; label: string }[] = PERIODS.map((period) => ({
    value: period,
    label: t.costs.periods[period],
  }));
  if (own) choices.push({ value: 'own', label: words.ownDays });
  const choose = (value: Period | 'own' | undefined) => {
    if (value === 'own') return;
    onChange(value === undefined ? { from: undefined, to: undefined } : daysOf(value, today));
  };
  return (
    <>
      <FilterSelect
        label={words.period}
        value={own ? 'own' : named}
        all={all ?? words.allTime}
        choices={choices}
        onChoose={choose}
      />
      <FilterDay label={words.from} value={from} onChoose={(day) => onChange({ from: day })} />
      <FilterDay label={words.to} value={to} onChoose={(day) => onChange({ to: day })} />
    </>
  );
}
