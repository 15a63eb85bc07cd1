import { Button } from '@mantine/core';
import type { ReactNode } from 'react';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { type Column, DataTable } from '../../ui/data-table.js';
import { Section } from '../../ui/section.js';
import type { Choice } from './choice.js';
import { useGroupColumns } from './group-columns.js';
import { type Group, type GroupedRow, keyOfRow } from './groups.js';

const FEW = 50;

/** What the address says about the table. */
export interface TableSearch<Sort extends string> {
  readonly sort?: Sort | undefined;
  readonly show?: string | undefined;
}

interface Props<Row extends GroupedRow, Sort extends string> {
  /** In the order of `sort`. */
  readonly rows: readonly Row[];
  readonly groups: readonly Group[];
  readonly choice: Choice;
  readonly figures: readonly Column<Row, Sort>[];
  readonly sort: Sort;
  /** Sorting by the first column, where the report can. */
  readonly byName?: Sort;
  readonly show: string | undefined;
  readonly stale: boolean;
  readonly hint?: ReactNode;
  readonly onChange: (part: TableSearch<Sort>) => void;
}

/** Every figure of a grouped report; a row leads to the restorations behind it. */
export function GroupedTable<Row extends GroupedRow, Sort extends string>(props: Props<Row, Sort>) {
  const t = useText();
  const format = useFormat();
  const { rows, groups, choice, figures, sort, byName, show, stale, hint, onChange } = props;
  const names = useGroupColumns<Row>(groups, choice).map(
    ({ sort: _none, ...column }, at): Column<Row, Sort> =>
      at === 0 && byName !== undefined ? { ...column, sort: byName } : column,
  );
  const limit = Number(show ?? FEW);
  return (
    <Section
      title={t.costs.table.title}
      aside={t.costs.table.rows(format.number(String(rows.length)))}
      {...(hint === undefined ? {} : { hint })}
    >
      <DataTable<Row, Sort>
        label={t.costs.table.title}
        columns={[...names, ...figures]}
        rows={rows.slice(0, limit)}
        rowKey={keyOfRow}
        sort={sort}
        stale={stale}
        onSort={(by) => onChange({ sort: by, show: undefined })}
      />
      {rows.length > limit && (
        <Button
          variant="default"
          mt="md"
          className="tb-screen-only"
          onClick={() => onChange({ show: String(limit + 200) })}
        >
          {t.costs.table.more}
        </Button>
      )}
    </Section>
  );
}
