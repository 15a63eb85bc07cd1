import { useQueries, useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useMay } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { DataTable } from '../../ui/data-table.js';
import { Dialog } from '../../ui/dialog.js';
import { SearchSelectField } from '../../ui/fields.js';
import { Loaded } from '../../ui/loaded.js';
import { RowButton } from '../../ui/row-button.js';
import { Section } from '../../ui/section.js';
import { plannedItemsQuery } from './api/planned-items.js';
import { type PresentationTerms, presentationTermsQuery } from './api/planning-settings.js';
import { packsQuery } from './api/suppliers.js';
import { nameOf } from './names.js';
import css from './parts.module.css';
import { PriceListForm } from './price-list-form.js';

const route = getRouteApi('/in/setup/ordering');

/** How the packs of a consumable are sold. */
export function PriceListSection() {
  const w = useText().orderingSettings;
  const { of } = route.useSearch();
  const navigate = route.useNavigate();
  const items = useQuery(plannedItemsQuery).data?.items ?? [];
  return (
    <Section title={w.prices} hint={w.pricesHint}>
      <div className={css.narrow}>
        <SearchSelectField
          label={w.consumable}
          name="of"
          value={of ?? ''}
          error={undefined}
          choices={items.map(({ consumable }) => ({
            ...{ value: consumable.id, label: nameOf(consumable) },
          }))}
          onValue={(id) =>
            void navigate({
              search: (old) => ({ ...old, of: id === '' ? undefined : id, pack: undefined }),
              resetScroll: false,
              replace: true,
            })
          }
        />
      </div>
      {of === undefined ? <p className={css.words}>{w.pickFirst}</p> : <Packs of={of} />}
    </Section>
  );
}

interface Row {
  readonly id: string;
  readonly name: string;
  readonly terms: PresentationTerms | undefined;
}

function Packs({ of }: { readonly of: string }) {
  const w = useText().orderingSettings;
  const packs = useQuery(packsQuery(of));
  return (
    <Loaded query={packs}>
      {({ items }) => {
        const used = items.filter((pack) => pack.active);
        return used.length === 0 ? (
          <p className={css.words}>{w.noPacks}</p>
        ) : (
          <PackTable packs={used} />
        );
      }}
    </Loaded>
  );
}

interface TableProps {
  readonly packs: readonly { readonly id: string; readonly name: string }[];
}

function PackTable({ packs }: TableProps) {
  const w = useText().orderingSettings;
  const may = useMay();
  const format = useFormat();
  const { pack: edited } = route.useSearch();
  const navigate = route.useNavigate();
  const open = (pack: string | undefined) =>
    void navigate({ search: (old) => ({ ...old, pack }), resetScroll: false });
  const answers = useQueries({ queries: packs.map(({ id }) => presentationTermsQuery(id)) });
  const rows = packs.map(({ id, name }, i): Row => ({ id, name, terms: answers[i]?.data?.terms }));
  const row = rows.find((each) => each.id === edited);
  const write = may('ordering.manage');
  const list = ({ prices }: PresentationTerms) =>
    prices.length === 0
      ? w.noList
      : prices
          .map((each) =>
            w.from(format.number(String(each.fromPacks)), format.money(each.packPrice)),
          )
          .join(' · ');
  return (
    <>
      <DataTable
        label={w.prices}
        rows={rows}
        rowKey={(each) => each.id}
        marked={edited}
        columns={[
          { id: 'name', head: w.pack, cell: ({ name }) => <strong>{name}</strong> },
          {
            ...{ id: 'least', head: w.least, align: 'end' as const },
            cell: ({ terms }) => terms && format.number(String(terms.minimumPacks)),
          },
          { id: 'list', head: w.list, cell: ({ terms }) => terms && list(terms) },
          {
            ...{ id: 'change', head: '', align: 'end' as const },
            cell: ({ id, name }) =>
              write && (
                <RowButton label={w.changePack(name)} onClick={() => open(id)}>
                  {w.change}
                </RowButton>
              ),
          },
        ]}
      />
      <Dialog
        title={row?.name ?? ''}
        size="lg"
        opened={write && row?.terms !== undefined}
        onClose={() => open(undefined)}
      >
        {row?.terms && (
          <PriceListForm
            key={row.id}
            pack={row}
            terms={row.terms}
            onClose={() => open(undefined)}
          />
        )}
      </Dialog>
    </>
  );
}
