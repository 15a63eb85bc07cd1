import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useText } from '../../../text/text-provider.js';
import { FilterDay, FilterSelect, Filters } from '../../../ui/filters.js';
import { lotQuery } from '../api/get-lot.js';
import { oneSummaryQuery } from '../api/list-summary.js';
import { Chip, Chips } from '../parts/chip.js';
import { nameOf } from '../parts/what.js';

const route = getRouteApi('/in/shelves/movements');
const PATH = '/shelves/movements';

const ACCOUNTS = ['supplier', 'location', 'visit', 'waste', 'count', 'return'] as const;

export function MovementFilters() {
  const { filter, accounts } = useText().movements;
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const change = (part: Partial<typeof search>) =>
    void navigate({ search: (old) => ({ ...old, cursor: undefined, ...part }), replace: true });
  return (
    <>
      <Filters>
        <FilterSelect
          label={filter.account}
          value={search.account}
          choices={ACCOUNTS.map((account) => ({ value: account, label: accounts[account] }))}
          onChoose={(account) => change({ account })}
        />
        <FilterDay label={filter.from} value={search.from} onChoose={(from) => change({ from })} />
        <FilterDay label={filter.to} value={search.to} onChoose={(to) => change({ to })} />
      </Filters>
      <Only />
    </>
  );
}

/** What the address narrows the ledger to besides. */
function Only() {
  const { layerId, lotId, consumableId, visitId } = route.useSearch();
  if (!layerId && !lotId && !consumableId && !visitId) return null;
  return (
    <Chips>
      {layerId !== undefined && <OnlyLayer />}
      {lotId !== undefined && <OnlyLot lotId={lotId} />}
      {consumableId !== undefined && <OnlyConsumable consumableId={consumableId} />}
      {visitId !== undefined && <OnlyVisit />}
    </Chips>
  );
}

function OnlyLayer() {
  const { only } = useText().movements;
  return (
    <Chip
      from={PATH}
      to={PATH}
      search={(old) => ({ ...old, layerId: undefined, cursor: undefined })}
    >
      {only.layer}
    </Chip>
  );
}

function OnlyLot({ lotId }: { readonly lotId: string }) {
  const { movements, ui } = useText();
  const lot = useQuery(lotQuery(lotId)).data;
  return (
    <Chip from={PATH} to={PATH} search={(old) => ({ ...old, lotId: undefined, cursor: undefined })}>
      {movements.only.lot(lot ? (lot.lotNumber ?? ui.notStated) : '…')}
    </Chip>
  );
}

function OnlyConsumable({ consumableId }: { readonly consumableId: string }) {
  const { only } = useText().movements;
  const row = useQuery(oneSummaryQuery(consumableId)).data;
  return (
    <Chip
      from={PATH}
      to={PATH}
      search={(old) => ({ ...old, consumableId: undefined, cursor: undefined })}
    >
      {only.consumable(row ? nameOf(row.consumable) : '…')}
    </Chip>
  );
}

function OnlyVisit() {
  const { only } = useText().movements;
  return (
    <Chip
      from={PATH}
      to={PATH}
      search={(old) => ({ ...old, visitId: undefined, cursor: undefined })}
    >
      {only.visit}
    </Chip>
  );
}
