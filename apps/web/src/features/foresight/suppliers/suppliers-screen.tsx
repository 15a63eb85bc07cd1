import { useQuery } from '@tanstack/react-query';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { ButtonLink } from '../../../ui/button-link.js';
import { Caution } from '../../../ui/caution.js';
import { type Column, DataTable } from '../../../ui/data-table.js';
import { EmptyState } from '../../../ui/empty-state.js';
import { Loaded } from '../../../ui/loaded.js';
import { PageHead } from '../../../ui/page-head.js';
import { Section } from '../../../ui/section.js';
import { Money } from '../../../ui/values.js';
import { type Supplier, type Suppliers, suppliersQuery } from '../api/compare-suppliers.js';
import { LeadStrips } from './lead-strips.js';
import { PriceSection } from './price-section.js';

/** The suppliers side by side: price, lead time, reliability, and what was spent. */
export function SuppliersScreen() {
  const t = useText();
  const query = useQuery(suppliersQuery);
  const words = t.foresight.suppliers;
  return (
    <>
      <PageHead title={words.title} lead={words.lead} />
      <Loaded query={query}>
        {(data) =>
          data.suppliers.length === 0 ? (
            <EmptyState title={words.empty} hint={words.emptyHint}>
              <ButtonLink to="/setup/suppliers">{words.toSuppliers}</ButtonLink>
            </EmptyState>
          ) : (
            <>
              <SideBySide data={data} />
              <LeadStrips suppliers={data.suppliers} />
              <PriceSection data={data} />
            </>
          )
        }
      </Loaded>
      <Caution />
    </>
  );
}

function SideBySide({ data }: { readonly data: Suppliers }) {
  const t = useText();
  const format = useFormat();
  const words = t.foresight.suppliers;
  return (
    <Section
      title={words.sideBySide}
      hint={words.since(format.day(data.since), format.day(data.asOf))}
    >
      <DataTable<Supplier>
        label={words.sideBySide}
        rows={data.suppliers}
        rowKey={(row) => row.supplier.id}
        columns={useColumns()}
      />
    </Section>
  );
}

function useColumns(): Column<Supplier>[] {
  const t = useText();
  const format = useFormat();
  const words = t.foresight.suppliers;
  const n = (value: number) => format.number(String(value));
  const ofAll = (part: number, all: number) =>
    all === 0 ? words.notKnown : words.ofAll(n(part), n(all));
  const end = { align: 'end' } as const;
  return [
    { id: 'name', head: words.supplier, cell: ({ supplier }) => supplier.name },
    {
      ...{ id: 'spend', head: words.spend, ...end },
      cell: ({ spend }) => <Money value={spend} />,
    },
    {
      ...{ id: 'cheapest', head: words.cheapest, ...end },
      cell: ({ cheapest, shared }) => ofAll(cheapest, shared),
    },
    {
      ...{ id: 'inTime', head: words.inTime, ...end },
      cell: ({ reliability: { inTime, due } }) => ofAll(inTime, due),
    },
    {
      ...{ id: 'atOnce', head: words.atOnce, wideOnly: true, ...end },
      cell: ({ reliability, lead }) => ofAll(reliability.atOnce, lead.complete),
    },
    {
      ...{ id: 'faults', head: words.faults, ...end },
      cell: ({ reliability: { packs, damaged, missing } }) =>
        damaged + missing === 0
          ? ofAll(0, packs)
          : words.faulty(n(damaged), n(missing), n(packs + damaged + missing)),
    },
  ];
}
