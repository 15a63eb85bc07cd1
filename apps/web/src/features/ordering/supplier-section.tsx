import { useQueries, useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useMay } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { DataTable } from '../../ui/data-table.js';
import { Dialog } from '../../ui/dialog.js';
import { Loaded } from '../../ui/loaded.js';
import { RowButton } from '../../ui/row-button.js';
import { Section } from '../../ui/section.js';
import { Money } from '../../ui/values.js';
import type { SupplierLead } from './api/list-proposals.js';
import { type SupplyTerms, supplyTermsQuery } from './api/planning-settings.js';
import { suppliersQuery } from './api/suppliers.js';
import { LeadBars } from './lead-section.js';
import { leadWords } from './line-words.js';
import css from './parts.module.css';
import { SupplierTermsForm } from './supplier-terms-form.js';

const route = getRouteApi('/in/setup/ordering');

interface Row {
  readonly id: string;
  readonly name: string;
  readonly terms: SupplyTerms | undefined;
  readonly lead: SupplierLead | undefined;
}

/** What suppliers ask for, and how long they take. */
export function SupplierSection() {
  const w = useText().orderingSettings;
  const suppliers = useQuery(suppliersQuery);
  return (
    <Section title={w.suppliers} hint={w.suppliersHint}>
      <Loaded query={suppliers}>
        {({ items }) =>
          items.length === 0 ? (
            <p className={css.words}>{w.noSuppliers}</p>
          ) : (
            <SupplierTable suppliers={items} />
          )
        }
      </Loaded>
    </Section>
  );
}

interface TableProps {
  readonly suppliers: readonly { readonly id: string; readonly name: string }[];
}

function SupplierTable({ suppliers }: TableProps) {
  const t = useText();
  const w = t.orderingSettings;
  const may = useMay();
  const format = useFormat();
  const { supplier: edited } = route.useSearch();
  const navigate = route.useNavigate();
  const open = (supplier: string | undefined) =>
    void navigate({ search: (old) => ({ ...old, supplier }), resetScroll: false });
  const answers = useQueries({ queries: suppliers.map(({ id }) => supplyTermsQuery(id)) });
  const rows = suppliers.map(({ id, name }, i): Row => {
    const answer = answers[i]?.data;
    return { id, name, terms: answer?.terms, lead: answer?.lead };
  });
  const row = rows.find((each) => each.id === edited);
  const write = may('ordering.manage');
  return (
    <>
      <DataTable
        label={w.suppliers}
        rows={rows}
        rowKey={(each) => each.id}
        marked={edited}
        columns={[
          { id: 'name', head: w.columns.name, cell: ({ name }) => <strong>{name}</strong> },
          {
            ...{ id: 'lead', head: w.columns.lead },
            cell: ({ lead }) => lead && w.workdays(format.number(Number(lead.mean).toFixed(1))),
          },
          {
            ...{ id: 'known', head: w.columns.known, wideOnly: true },
            cell: ({ lead }) => lead && leadWords(lead, format, t),
          },
          {
            ...{ id: 'minimum', head: w.columns.minimum, align: 'end' as const },
            cell: ({ terms }) => terms && <Money value={terms.minimumOrder ?? null} />,
          },
          {
            ...{ id: 'freight', head: w.columns.freight },
            cell: ({ terms }) => terms && <Freight terms={terms} />,
          },
          ...(write
            ? [
                {
                  ...{ id: 'change', head: '', align: 'end' as const },
                  cell: ({ id, name }: Row) => (
                    <RowButton label={w.changeOf(name)} onClick={() => open(id)}>
                      {w.change}
                    </RowButton>
                  ),
                },
              ]
            : []),
        ]}
      />
      <Dialog
        title={w.termsOf(row?.name ?? '')}
        size="lg"
        opened={write && row?.terms !== undefined}
        onClose={() => open(undefined)}
      >
        {row?.terms && (
          <>
            {row.lead && <LeadBars lead={row.lead} />}
            <SupplierTermsForm
              key={row.id}
              supplier={row}
              terms={row.terms}
              onClose={() => open(undefined)}
            />
          </>
        )}
      </Dialog>
    </>
  );
}

function Freight({ terms }: { readonly terms: SupplyTerms }) {
  const w = useText().orderingSettings;
  const format = useFormat();
  const { freight, freeFreightFrom } = terms;
  if (!freeFreightFrom) return <Money value={freight} />;
  return w.freeFromWords(format.money(freight), format.money(freeFreightFrom));
}
