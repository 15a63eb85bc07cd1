import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useBooking } from '../../api/use-booking.js';
import { useText } from '../../text/text-provider.js';
import { ButtonLink } from '../../ui/button-link.js';
import { EmptyState } from '../../ui/empty-state.js';
import { PageHead } from '../../ui/page-head.js';
import { suppliersQuery } from './api/list-goods.js';
import { createOrder } from './api/save-order.js';
import { type Draft, draftBody, EMPTY_DRAFT } from './draft.js';
import { DraftFields, useDraftForm } from './draft-form.js';

/** An order that somebody begins by hand. */
export function NewOrderScreen() {
  const t = useText();
  const w = t.orders.draft;
  const navigate = useNavigate();
  const suppliers = useQuery(suppliersQuery);
  const { book } = useBooking({
    send: (draft: Draft, key) => createOrder(draftBody(draft), key),
    changes: [['orders']],
  });
  const form = useDraftForm({
    initial: EMPTY_DRAFT,
    send: book,
    onDone: ({ id }) => void navigate({ to: '/ordering/orders/$orderId', params: { orderId: id } }),
  });
  return (
    <>
      <PageHead title={w.title} lead={w.lead} />
      {suppliers.data?.length === 0 ? (
        <EmptyState title={w.noSuppliers} hint={w.noSuppliersHint}>
          <ButtonLink to="/setup/suppliers">{w.toSuppliers}</ButtonLink>
        </EmptyState>
      ) : (
        <DraftFields form={form} submit={w.begin}>
          <ButtonLink to="/ordering/orders" variant="default">
            {t.ui.cancel}
          </ButtonLink>
        </DraftFields>
      )}
    </>
  );
}
