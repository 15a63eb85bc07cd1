import { Button } from '@mantine/core';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useMay } from '../../../app/session.js';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { type Column, DataTable } from '../../../ui/data-table.js';
import { FilterSelect, Filters } from '../../../ui/filters.js';
import { Section } from '../../../ui/section.js';
import { Amount, Day } from '../../../ui/values.js';
import type { PriceChange, PriceReport, Repriced } from '../api/report-prices.js';
import { ExactMoney } from '../exact-money.js';
import { fullNameOf } from '../full-name.js';
import { SignedMoney } from '../signed-money.js';
import { PriceLine } from './price-line.js';
import css from './prices-screen.module.css';

const route = getRouteApi('/in/costs/prices');

const [FEW, MORE] = [20, 200];

interface Props {
  readonly report: PriceReport;
  readonly stale: boolean;
}

/** '+12.5 %'. */
function useSignedShare() {
  const format = useFormat();
  return (share: string) => `${share.startsWith('-') ? '' : '+'}${format.percent(share)}`;
}

/** One row a consumable, the one whose price cost most more first. */
export function Consumables({ report, stale }: Props) {
  const t = useText();
  const words = t.costReports.prices;
  const share = useSignedShare();
  const { show } = route.useSearch();
  const navigate = route.useNavigate();
  const limit = Number(show ?? FEW);
  const price = (value: string, { consumable }: Repriced) => (
    <PerUnit price={value} unit={consumable.unit} />
  );
  return (
    <Section title={words.byConsumable} hint={words.byConsumableHint}>
      <DataTable<Repriced>
        label={words.byConsumable}
        rows={report.consumables.slice(0, limit)}
        rowKey={(row) => row.consumable.id}
        stale={stale}
        columns={[
          {
            ...{ id: 'name', head: words.consumable },
            cell: (row) => (
              <Link
                to="/costs/prices"
                search={(old) => ({ ...old, consumableId: row.consumable.id })}
                hash="changes"
              >
                {fullNameOf(row.consumable)}
              </Link>
            ),
          },
          {
            ...{ id: 'line', head: words.line },
            cell: (row) => <PriceLine of={row} report={report} />,
          },
          {
            ...{ id: 'before', head: words.before, align: 'end', wideOnly: true },
            cell: (row) => price(row.priceBefore, row),
          },
          {
            ...{ id: 'now', head: words.now, align: 'end' },
            cell: (row) => price(row.priceNow, row),
          },
          { id: 'change', head: words.change, align: 'end', cell: (row) => share(row.change) },
          {
            ...{ id: 'effect', head: words.effect, align: 'end' },
            cell: (row) => <SignedMoney value={row.effect} />,
          },
        ]}
      />
      {report.consumables.length > limit && (
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
          {t.costs.table.more}
        </Button>
      )}
    </Section>
  );
}

interface Change extends PriceChange {
  readonly of: Repriced['consumable'];
}

/** Each new price with the delivery that brought it, the latest first. */
export function Changes({ report, stale }: Props) {
  const t = useText();
  const words = t.costReports.prices;
  const { consumableId } = route.useSearch();
  const navigate = route.useNavigate();
  const columns = useChangeColumns();
  const rows = report.consumables
    .filter(({ consumable }) => consumableId === undefined || consumable.id === consumableId)
    .flatMap(({ consumable, changes }) =>
      changes.map((each): Change => ({ ...each, of: consumable })),
    )
    .sort((a, b) => b.receivedOn.localeCompare(a.receivedOn));
  const cut = consumableId === undefined && rows.length > FEW;
  const latest = cut ? ` ${words.latest(FEW)}` : '';
  return (
    <div id="changes">
      <Section title={words.changes} hint={`${words.changesHint}${latest}`}>
        <div className={css.filter}>
          <Filters>
            <FilterSelect
              label={words.consumable}
              value={consumableId}
              choices={report.consumables.map(({ consumable }) => ({
                value: consumable.id,
                label: fullNameOf(consumable),
              }))}
              onChoose={(id) =>
                void navigate({
                  search: (old) => ({ ...old, consumableId: id }),
                  replace: true,
                  resetScroll: false,
                })
              }
            />
          </Filters>
        </div>
        <DataTable<Change>
          label={words.changes}
          rows={consumableId === undefined ? rows.slice(0, FEW) : rows}
          rowKey={(row) => `${row.of.id} ${row.receivedOn}`}
          stale={stale}
          columns={columns}
        />
      </Section>
    </div>
  );
}

function useChangeColumns(): Column<Change>[] {
  const t = useText();
  const may = useMay();
  const words = t.costReports.prices;
  const share = useSignedShare();
  const end = { align: 'end' } as const;
  return [
    { id: 'day', head: words.day, cell: (row) => <Day value={row.receivedOn} /> },
    { id: 'name', head: words.consumable, cell: (row) => fullNameOf(row.of) },
    {
      ...{ id: 'supplier', head: words.delivery },
      cell: (row) =>
        may('deliveries.read') ? (
          <Link to="/shelves/deliveries/$deliveryId" params={{ deliveryId: row.deliveryId }}>
            {row.supplierName}
          </Link>
        ) : (
          row.supplierName
        ),
    },
    {
      ...{ id: 'before', head: words.before, wideOnly: true, ...end },
      cell: (row) => <ExactMoney value={row.priceBefore} />,
    },
    { id: 'price', head: words.price, ...end, cell: (row) => <ExactMoney value={row.price} /> },
    { id: 'change', head: words.change, ...end, cell: (row) => share(row.change) },
    {
      ...{ id: 'used', head: words.used, ...end },
      cell: (row) => <Amount value={row.used} unit={row.of.unit} />,
    },
    {
      ...{ id: 'effect', head: words.effect, ...end },
      cell: (row) => <SignedMoney value={row.effect} />,
    },
  ];
}

function PerUnit({ price, unit }: { readonly price: string; readonly unit: string }) {
  const t = useText();
  const format = useFormat();
  return (
    <span className={css.per}>
      <ExactMoney value={price} />
      <small> {t.costReports.prices.per(format.unitName('1', unit))}</small>
    </span>
  );
}
