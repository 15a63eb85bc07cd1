import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { useMay } from '../../app/session.js';
import { Loaded } from '../../ui/loaded.js';
import { holdingQuery } from './api/list-holdings.js';
import { CountView } from './count/count-view.js';
import { HoldingSheet } from './holding/holding-sheet.js';
import { UndoDialog } from './ledger/undo-dialog.js';
import { useShelfScan } from './parts/use-shelf-scan.js';
import { ConsumableView } from './stock/consumable-view.js';
import { Overview } from './stock/overview.js';

const route = getRouteApi('/in/shelves');

/** What is on the shelves: the overview, one consumable, one holding at its side, or a count. */
export function ShelvesScreen() {
  const { holdingId, do: action } = route.useSearch();
  const may = useMay();
  // A scan leads elsewhere; whoever counts would lose what they have counted.
  const counts = action === 'count' && holdingId === undefined && may('stock.handle');
  return counts ? <CountView /> : <Looking />;
}

function Looking() {
  const { consumableId, holdingId, undo } = route.useSearch();
  const navigate = route.useNavigate();
  const { button, note } = useShelfScan();
  const closeUndo = () =>
    void navigate({ search: (old) => ({ ...old, undo: undefined }), replace: true });
  return (
    <>
      {note}
      {holdingId !== undefined ? (
        <OneHolding holdingId={holdingId} scan={button} />
      ) : consumableId !== undefined ? (
        <ConsumableView consumableId={consumableId} scan={button} />
      ) : (
        <Overview scan={button} />
      )}
      {undo !== undefined && <UndoDialog movementId={undo} onClose={closeUndo} />}
    </>
  );
}

interface HoldingProps {
  readonly holdingId: string;
  readonly scan: ReactNode;
}

/** A holding that the address names, over the consumable that it is of. */
function OneHolding({ holdingId, scan }: HoldingProps) {
  const { consumableId } = route.useSearch();
  const query = useQuery(holdingQuery(holdingId));
  const of = query.data?.consumable.id ?? consumableId;
  return (
    <>
      {of === undefined ? (
        query.data === null && <Overview scan={scan} />
      ) : (
        <ConsumableView consumableId={of} scan={scan} />
      )}
      <Loaded query={query}>{(holding) => <HoldingSheet holding={holding} />}</Loaded>
    </>
  );
}
