import { getRouteApi, useNavigate } from '@tanstack/react-router';
import { useText } from '../../../text/text-provider.js';
import { notify } from '../../../ui/notice-store.js';
import type { Holding } from '../api/list-holdings.js';

const route = getRouteApi('/in/shelves');

/** After a booking: the sheet closes, a notice says what was done and how to undo it. */
export function useBooked(holding: Holding) {
  const t = useText();
  const here = route.useNavigate();
  const navigate = useNavigate();
  const consumableId = holding.consumable.id;
  return (text: string, movementId?: string) => {
    const close = { holdingId: undefined, do: undefined, consumableId };
    void here({ search: (old) => ({ ...old, ...close }), replace: true });
    const run = () => void navigate({ to: '/shelves', search: { consumableId, undo: movementId } });
    const action = movementId === undefined ? {} : { action: { label: t.shelves.undo, run } };
    notify({ tone: 'done', text, ...action });
  };
}
