import { Button } from '@mantine/core';
import { getRouteApi } from '@tanstack/react-router';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { type Column, DataTable } from '../../../ui/data-table.js';
import { Section } from '../../../ui/section.js';
import { Money } from '../../../ui/values.js';
import type { ReplayedItem, ReplaySide } from '../api/replays.js';
import { nameOf } from '../name-of.js';
import css from './proof.module.css';

const route = getRouteApi('/in/ordering/proof');

const [FEW, MORE] = [25, 200];

/** Item by item, what differs most first; computed above, as before below. */
export function ItemTable({ items }: { readonly items: readonly ReplayedItem[] }) {
  const t = useText();
  const { show } = route.useSearch();
  const navigate = route.useNavigate();
  const words = t.foresight.proof.items;
  const limit = Number(show ?? FEW);
  return (
    <Section title={words.title} hint={words.hint}>
      <DataTable<ReplayedItem>
        label={words.title}
        rows={items.slice(0, limit)}
        rowKey={(row) => row.consumable.id}
        columns={useColumns()}
      />
      {items.length > limit && (
        <Button
          variant="default"
          mt="md"
          className="tb-screen-only"
          onClick={() =>
            void navigate({
              search: (old) => ({ ...old, show: String(limit + MORE) }),
              replace: true,
              resetScroll: false,
            })
          }
        >
          {words.more}
        </Button>
      )}
    </Section>
  );
}

function useColumns(): Column<ReplayedItem>[] {
  const t = useText();
  const format = useFormat();
  const words = t.foresight.proof.items;
  const n = (value: number) => format.number(String(value));
  const both = (head: string, cell: (side: ReplaySide) => React.ReactNode) => ({
    ...{ id: head, head, align: 'end' as const },
    cell: ({ computed, old }: ReplayedItem) => (
      <span className={css.both}>
        <span>{cell(computed)}</span>
        <span className={css.before}>{cell(old)}</span>
      </span>
    ),
  });
  return [
    {
      ...{ id: 'name', head: words.item },
      cell: ({ consumable, oldRule }) => (
        <span className={css.item}>
          {nameOf(consumable)}
          <small>{words.rules[oldRule]}</small>
        </span>
      ),
    },
    {
      ...{ id: 'which', head: words.which },
      cell: () => (
        <span className={css.both}>
          <span>{t.foresight.proof.pairs.computed}</span>
          <span className={css.before}>{t.foresight.proof.pairs.old}</span>
        </span>
      ),
    },
    both(words.days, (side) => n(side.stockOutDays)),
    both(words.waste, (side) => <Money value={side.wastedValue} />),
    both(words.stock, (side) => <Money value={side.averageValue} />),
    { ...both(words.orders, (side) => n(side.orders)), wideOnly: true },
  ];
}
