import { Button } from '@mantine/core';
import { useQueryClient } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useEffect, useState } from 'react';
import { useBooking } from '../../api/use-booking.js';
import { useText } from '../../text/text-provider.js';
import { notify } from '../../ui/notice-store.js';
import { useReport } from '../../ui/use-report.js';
import { useTyped } from '../../ui/use-typed.js';
import { type Order, orderQuery } from './api/get-order.js';
import { changeOrder } from './api/save-order.js';
import { type Draft, draftBody, draftOf } from './draft.js';
import { DraftFields, useDraftForm } from './draft-form.js';
import css from './orders.module.css';
import { ProposedList } from './proposed-list.js';

const route = getRouteApi('/in/ordering/orders/$orderId');

interface Props {
  readonly order: Order;
  /** Whether something is typed that is not saved. */
  readonly onTyped: (typed: boolean) => void;
}

/**
 * The lines of a draft, to be written anew. What is typed belongs to the order as it was opened: a
 * change by somebody else is not mixed into it, and the service refuses to overwrite it.
 */
export function DraftEditor({ order, onTyped }: Props) {
  const [opened, setOpened] = useState(order);
  return (
    <div className={css.editor}>
      <Editor key={opened.version} order={opened} onTyped={onTyped} onOpen={setOpened} />
      <ProposedList order={order} />
    </div>
  );
}

function Editor({ order, onTyped, onOpen }: Props & { readonly onOpen: (order: Order) => void }) {
  const w = useText().orders.draft;
  const typed = useTyped();
  const navigate = route.useNavigate();
  const { edit } = route.useSearch();
  const queries = useQueryClient();
  const report = useReport();
  const [initial] = useState(() => draftOf(order, typed));
  const { book } = useBooking({
    send: (draft: Draft) => changeOrder(order.id, { ...draftBody(draft), version: order.version }),
    changes: [['orders']],
  });
  const form = useDraftForm({
    initial,
    send: book,
    onDone: (saved) => {
      notify({ tone: 'done', text: w.saved });
      if (edit !== undefined) void navigate({ search: {}, replace: true });
      onOpen(saved);
    },
  });
  const dirty = JSON.stringify(form.values) !== JSON.stringify(initial);
  useEffect(() => {
    onTyped(dirty);
    return () => onTyped(false);
  }, [dirty, onTyped]);
  const again = () =>
    void queries
      .fetchQuery({ ...orderQuery(order.id), staleTime: 0 })
      .then(onOpen)
      .catch(report);
  return (
    <DraftFields
      form={form}
      submit={w.save}
      untouched={!dirty}
      freight={order.freightByTerms ? typed(order.freight) : undefined}
      hint={order.state === 'approved' ? w.takesApprovalBack : undefined}
    >
      {form.rest.length > 0 && (
        <Button variant="default" onClick={again}>
          {w.discard}
        </Button>
      )}
    </DraftFields>
  );
}
