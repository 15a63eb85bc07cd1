import type { ReactNode } from 'react';
import { useText } from '../../text/text-provider.js';
import { type Column, DataTable } from '../../ui/data-table.js';
import { RowButton } from '../../ui/row-button.js';
import { StatusMark } from '../../ui/status-mark.js';
import { Day, Moment, Money } from '../../ui/values.js';
import type { Balance } from './api/balances.js';
import css from './fees.module.css';

interface Props {
  readonly label: string;
  readonly rows: readonly Balance[];
  /** The day as of which it is looked at. */
  readonly on: string;
  /** The entries that count, where others are shown as well. */
  readonly counts?: ReadonlySet<string>;
  readonly onChart?: (chart: string) => void;
  readonly stale: boolean;
  readonly cursor: string | undefined;
  readonly nextCursor: string | null;
  readonly onCursor: (cursor: string | undefined) => void;
  readonly empty: ReactNode;
}

export function BalanceTable({ on, counts, onChart, ...table }: Props) {
  const w = useText().balances;
  const { columns } = w;
  const chart: Column<Balance> = {
    id: 'chart',
    head: columns.chart,
    cell: ({ chartReference }) => <strong>{chartReference}</strong>,
  };
  const state: Column<Balance> = {
    id: 'state',
    head: columns.state,
    cell: ({ id }) =>
      counts?.has(id) ? (
        <StatusMark tone="good">{w.counts}</StatusMark>
      ) : (
        <StatusMark tone="quiet">{w.earlier}</StatusMark>
      ),
  };
  const open: Column<Balance> = {
    id: 'open',
    head: '',
    align: 'end',
    cell: ({ chartReference }) => (
      <RowButton label={w.open(chartReference)} onClick={() => onChart?.(chartReference)}>
        {w.look}
      </RowButton>
    ),
  };
  return (
    <div className={css.table}>
      <DataTable
        {...table}
        rowKey={({ id }) => id}
        columns={[
          ...(counts ? [] : [chart]),
          { id: 'plan', head: columns.plan, cell: ({ plan }) => plan.name },
          {
            id: 'asOf',
            head: columns.asOf,
            cell: ({ asOf }) => <AsOf asOf={asOf} on={on} />,
          },
          ...(counts ? [state] : []),
          {
            id: 'by',
            head: columns.by,
            wideOnly: true,
            cell: ({ recordedBy, recordedAt }) => (
              <>
                {recordedBy}
                <span className={css.under}>
                  <Moment value={recordedAt} />
                </span>
              </>
            ),
          },
          {
            id: 'deductible',
            head: columns.deductible,
            align: 'end',
            cell: ({ deductibleLeft }) => <Money value={deductibleLeft} />,
          },
          {
            id: 'maximum',
            head: columns.maximum,
            align: 'end',
            cell: ({ maximumLeft }) =>
              maximumLeft === null ? (
                <span className={css.quiet}>{w.noMaximumShort}</span>
              ) : (
                <Money value={maximumLeft} />
              ),
          },
          ...(onChart ? [open] : []),
        ]}
      />
    </div>
  );
}

/** A plan's year has often begun anew since then. */
export const isOfEarlierYear = (asOf: string, on: string) => asOf.slice(0, 4) < on.slice(0, 4);

export function AsOf({ asOf, on }: { readonly asOf: string; readonly on: string }) {
  const w = useText().balances;
  return (
    <>
      <Day value={asOf} />
      {isOfEarlierYear(asOf, on) && (
        <span className={css.under}>
          <StatusMark tone="caution">{w.lastYear}</StatusMark>
        </span>
      )}
    </>
  );
}
