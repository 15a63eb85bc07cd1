import { useQuery } from '@tanstack/react-query';
import { useBooking } from '../../../api/use-booking.js';
import { useMay } from '../../../app/session.js';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { ConfirmReversal } from '../../../ui/confirm-reversal.js';
import { notify } from '../../../ui/notice-store.js';
import { SHELF_CHANGES } from '../api/changes.js';
import { movementQuery } from '../api/list-movements.js';
import { placesQuery } from '../api/list-places.js';
import { reverseMovement } from '../api/reverse-movement.js';
import { canReverse, sentenceOf } from './words.js';

interface Props {
  /** The movement that the address names. */
  readonly movementId: string;
  readonly onClose: () => void;
}

/** Asks for the reason, then books the counter-entry of one movement. */
export function UndoDialog({ movementId, onClose }: Props) {
  const t = useText();
  const format = useFormat();
  const may = useMay();
  const movement = useQuery(movementQuery(movementId)).data;
  const places = useQuery(placesQuery).data ?? [];
  const { book } = useBooking({ send: reverseMovement, changes: SHELF_CHANGES });
  if (!movement || !may('stock.handle') || !canReverse(movement)) return null;
  const reverse = async (note: string) => {
    await book({ id: movementId, note });
    notify({ tone: 'done', text: t.shelves.done.undone });
  };
  const what = sentenceOf(movement, places, format, t);
  return <ConfirmReversal opened onClose={onClose} what={what} reverse={reverse} />;
}
