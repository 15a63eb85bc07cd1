import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useMay } from '../../app/session.js';
import { Loaded } from '../../ui/loaded.js';
import { holdingQuery } from './api/list-holdings.js';
import { CountView } from './count/count-view.js';
import { HoldingSheet } from './holding/holding-sheet.js';
import { UndoDialog } from './ledger/undo-dialog.js';
import { ConsumableView } from './stock/consumable-view.js';
import { Overview } from './stock/overview.js';

const route = getRouteApi('/in/shelves');

/** What is on the shelves: the overview, one consumable, one holding at its side, or a count. */
export function ShelvesScreen() {
  const { consumableId, holdingId, do: action, undo } = route.useSearch();
  const navigate = route.useNavigate();
  const may = useMay();
  const closeUndo = () =>
    void navigate({ search: (old) => ({ ...old, undo: undefined }), replace: true });
  if (action === 'count' && holdingId === undefined && may('stock.handle')) return <CountView />;
  return (
    <>
      {holdingId !== undefined ? (
        <OneHolding holdingId={holdingId} />
      ) : consumableId !== undefined ? (
        <ConsumableView consumableId={consumableId} />
      ) : (
        <Overview />
      )}
      {undo !== undefined && <UndoDialog movementId={undo} onClose={closeUndo} />}
    </>
  );
}

/** A holding that the address names, over the consumable that it is of. */
function OneHolding({ holdingId }: { readonly holdingId: string }) {
  const { consumableId } = route.useSearch();
  const query = useQuery(holdingQuery(holdingId));
  const of = query.data?.consumable.id ?? consumableId;
  return (
    <>
      {of === undefined ? (
        query.data === null && <Overview />
      ) : (
        <ConsumableView consumableId={of} />
      )}
      <Loaded query={query}>{(holding) => <HoldingSheet holding={holding} />}</Loaded>
    </>
  );
}
