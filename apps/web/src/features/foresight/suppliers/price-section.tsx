import { VisuallyHidden } from '@mantine/core';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { type Column, DataTable } from '../../../ui/data-table.js';
import { micro } from '../../../ui/drawn.js';
import { EmptyState } from '../../../ui/empty-state.js';
import { Section } from '../../../ui/section.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { Day } from '../../../ui/values.js';
import type { PricedConsumable, PricedOffer, Suppliers } from '../api/compare-suppliers.js';
import { nameOf } from '../name-of.js';
import css from './price-section.module.css';

const route = getRouteApi('/in/ordering/suppliers');

interface Row {
  readonly of: PricedConsumable;
  readonly offer: PricedOffer;
  /** The first offer of its consumable bears the name. */
  readonly first: boolean;
}

/** The same consumable at different suppliers, per stock unit, the cheapest first. */
export function PriceSection({ data }: { readonly data: Suppliers }) {
  const t = useText();
  const { prices } = route.useSearch();
  const words = t.foresight.suppliers.prices;
  const all = prices === 'all';
  const shown = all ? data.consumables : data.consumables.filter((each) => each.offers.length > 1);
  const rows = shown.flatMap((of) =>
    of.offers.map((offer, i): Row => ({ of, offer, first: i === 0 })),
  );
  return (
    <Section
      title={words.title}
      hint={words.hint}
      aside={
        <Link
          className="tb-screen-only"
          to="/ordering/suppliers"
          search={(old) => ({ ...old, prices: all ? undefined : ('all' as const) })}
          resetScroll={false}
          replace
        >
          {all ? words.onlyShared : words.all}
        </Link>
      }
    >
      <DataTable<Row>
        label={words.title}
        rows={rows}
        rowKey={({ of, offer }) => `${of.consumable.id} ${offer.supplier.id}`}
        columns={useColumns()}
        empty={<EmptyState title={words.empty} hint={words.emptyHint} />}
      />
    </Section>
  );
}

function useColumns(): Column<Row>[] {
  const t = useText();
  const format = useFormat();
  const words = t.foresight.suppliers.prices;
  const signed = (share: string) => `${Number(share) > 0 ? '+' : ''}${format.percent(share)}`;
  const end = { align: 'end' } as const;
  return [
    {
      ...{ id: 'name', head: words.consumable },
      cell: ({ of, first }) =>
        first ? (
          <span className={css.first}>{nameOf(of.consumable)}</span>
        ) : (
          // Heard with every row, seen once.
          <VisuallyHidden>{nameOf(of.consumable)}</VisuallyHidden>
        ),
    },
    {
      ...{ id: 'supplier', head: words.supplier },
      cell: ({ offer, of }) => (
        <span className={css.supplier}>
          {offer.supplier.name}
          {offer.cheapest && of.offers.length > 1 && (
            <StatusMark tone="good">{words.cheapest}</StatusMark>
          )}
        </span>
      ),
    },
    {
      ...{ id: 'unit', head: words.perUnit, ...end },
      cell: ({ offer, of }) =>
        words.per(exact(offer.unitPrice, format), format.unitName('1', of.consumable.unit)),
    },
    {
      ...{ id: 'above', head: words.above, ...end },
      cell: ({ offer }) => (offer.cheapest ? '–' : signed(offer.aboveCheapest)),
    },
    {
      ...{ id: 'change', head: words.change, ...end },
      cell: ({ offer }) => (offer.change === null ? '–' : signed(offer.change)),
    },
    {
      ...{ id: 'pack', head: words.pack, wideOnly: true },
      cell: ({ offer }) => `${offer.presentation}, ${format.money(offer.packPrice)}`,
    },
    {
      ...{ id: 'paid', head: words.paid, wideOnly: true },
      cell: ({ offer }) => (offer.paidOn === null ? words.listPrice : <Day value={offer.paidOn} />),
    },
  ];
}

/** A price per piece may be a fraction of a cent. */
function exact(unitPrice: string, format: ReturnType<typeof useFormat>): string {
  const small = micro(unitPrice) < 1_000_000n;
  return small ? `${format.number(unitPrice)} ${format.currency}` : format.money(unitPrice);
}
