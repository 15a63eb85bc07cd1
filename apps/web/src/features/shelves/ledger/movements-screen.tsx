import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useMay } from '../../../app/session.js';
import { useText } from '../../../text/text-provider.js';
import { Caution } from '../../../ui/caution.js';
import { DataTable } from '../../../ui/data-table.js';
import { EmptyState } from '../../../ui/empty-state.js';
import { Loaded } from '../../../ui/loaded.js';
import { PageHead } from '../../../ui/page-head.js';
import { PrintButton } from '../../../ui/print-button.js';
import { movementsQuery } from '../api/list-movements.js';
import { placesQuery } from '../api/list-places.js';
import { ShelvesNav } from '../parts/shelves-nav.js';
import { LayerPanel } from './layer-panel.js';
import { useMovementColumns } from './movement-columns.js';
import { MovementFilters } from './movement-filters.js';
import { UndoDialog } from './undo-dialog.js';

const route = getRouteApi('/in/shelves/movements');

/** The ledger; of one delivery line with its balance above. */
export function MovementsScreen() {
  const { movements } = useText();
  const { undo, ...asked } = route.useSearch();
  const navigate = route.useNavigate();
  const page = useQuery(movementsQuery(asked));
  const places = useQuery(placesQuery).data ?? [];
  const columns = useMovementColumns(places, useMay()('stock.handle'));
  const closeUndo = () =>
    void navigate({ search: (old) => ({ ...old, undo: undefined }), replace: true });
  return (
    <>
      <PageHead title={movements.title} lead={movements.lead}>
        <PrintButton />
      </PageHead>
      <ShelvesNav />
      <MovementFilters />
      {asked.layerId !== undefined && <LayerPanel layerId={asked.layerId} />}
      <Loaded query={page}>
        {(data) => (
          <DataTable
            label={movements.list}
            columns={columns}
            rows={data.items}
            rowKey={(row) => row.id}
            marked={undo}
            cursor={asked.cursor}
            nextCursor={data.nextCursor}
            onCursor={(to) => void navigate({ search: (old) => ({ ...old, cursor: to }) })}
            stale={page.isPlaceholderData}
            empty={<EmptyState title={movements.empty} hint={movements.emptyHint} />}
          />
        )}
      </Loaded>
      {undo !== undefined && <UndoDialog movementId={undo} onClose={closeUndo} />}
      <Caution />
    </>
  );
}
