import { formatMoney } from '#lib/measure';
import { useSession } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { type Column, DataTable } from '../../ui/data-table.js';
import { StatusMark } from '../../ui/status-mark.js';
import { Day, Moment, Money } from '../../ui/values.js';
import type { Rate } from './api/rates.js';
import css from './fees.module.css';
import { hoursOf, rateOf } from './rate.js';
import { usePrecise } from './use-precise.js';

interface Props {
  readonly items: readonly Rate[];
  /** The id of the one that counts today. */
  readonly current: string | undefined;
}

export function RateTable({ items, current }: Props) {
  const w = useText().rates;
  const columns = useColumns(current);
  return (
    <div className={css.table}>
      <DataTable
        label={w.history}
        columns={columns}
        rows={items}
        rowKey={({ id }) => id}
        marked={current}
      />
    </div>
  );
}

function useColumns(current: string | undefined): Column<Rate>[] {
  const w = useText().rates;
  const format = useFormat();
  const precise = usePrecise();
  const heads = w.columns;
  const perHour = (rate: Rate) => {
    const made = rateOf(rate.yearlyCost, BigInt(rate.practicalMinutes));
    return made === undefined ? null : precise.money(formatMoney(made.perHour));
  };
  const hours = (rate: Rate) => format.number(hoursOf(rate.practicalMinutes));
  return [
    { id: 'from', head: heads.from, cell: (rate) => <From rate={rate} current={current} /> },
    {
      id: 'by',
      head: heads.by,
      wideOnly: true,
      cell: ({ recordedBy, recordedAt }) => (
        <>
          {recordedBy.name}
          <span className={css.under}>
            <Moment value={recordedAt} />
          </span>
        </>
      ),
    },
    {
      id: 'yearly',
      head: heads.yearly,
      align: 'end',
      cell: ({ yearlyCost }) => <Money value={yearlyCost} />,
    },
    {
      id: 'capacity',
      head: heads.capacity,
      align: 'end',
      cell: (rate) => (
        <>
          <span className={css.nowrap}>{w.hours(hours(rate), hours(rate) === '1')}</span>
          <span className={css.under}>
            {w.minutes(format.number(String(rate.practicalMinutes)))}
          </span>
        </>
      ),
    },
    {
      id: 'assistant',
      head: heads.assistant,
      align: 'end',
      cell: (rate) => <Assistant rate={rate} />,
    },
    {
      id: 'minute',
      head: heads.minute,
      align: 'end',
      cell: ({ ratePerMinute }) => precise.money(ratePerMinute),
    },
    { id: 'hour', head: heads.hour, align: 'end', cell: perHour },
  ];
}

function Assistant({ rate }: { readonly rate: Rate }) {
  const w = useText().rates;
  const format = useFormat();
  const precise = usePrecise();
  const { assistantRate, assistantPracticalMinutes: minutes } = rate;
  if (assistantRate === null) return <span className={css.quiet}>{w.assistantIncluded}</span>;
  const hours = minutes === null ? undefined : format.number(hoursOf(minutes));
  return (
    <>
      {precise.money(assistantRate)}
      {hours !== undefined && <span className={css.under}>{w.hours(hours, hours === '1')}</span>}
    </>
  );
}

interface FromProps {
  readonly rate: Rate;
  readonly current: string | undefined;
}

function From({ rate, current }: FromProps) {
  const { validFrom, note } = rate;
  return (
    <>
      <Day value={validFrom} />
      <span className={css.under}>
        <State rate={rate} current={current} />
      </span>
      {note !== null && <span className={css.under}>{note}</span>}
    </>
  );
}

function State({ rate, current }: FromProps) {
  const w = useText().rates.standing;
  const { today } = useSession();
  if (rate.id === current) return <StatusMark tone="good">{w.counts}</StatusMark>;
  if (rate.validFrom > today) return <StatusMark tone="accent">{w.later}</StatusMark>;
  return <StatusMark tone="quiet">{w.past}</StatusMark>;
}
