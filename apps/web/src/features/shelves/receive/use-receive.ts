import { useNavigate } from '@tanstack/react-router';
import { newKey } from '../../../api/idempotency.js';
import { useBooking } from '../../../api/use-booking.js';
import { useSession } from '../../../app/session.js';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { notify } from '../../../ui/notice-store.js';
import { useForm } from '../../../ui/use-form.js';
import { SHELF_CHANGES } from '../api/changes.js';
import type { Supplier } from '../api/list-suppliers.js';
import { receiveDelivery } from '../api/receive-delivery.js';
import { useKeep } from '../parts/kept.js';
import { checkDelivery, fieldOf, pathOf } from './check.js';
import {
  bodyOf,
  emptyLine,
  isUntouched,
  type Line,
  type Product,
  received,
  type Values,
} from './lines.js';
import { useReceiveScan } from './use-receive-scan.js';

/** What a scan fills in. */
const SCANNED = ['presentationId', 'packs', 'lotNumber'] as const;

/** A delivery as it is written, kept in this tab until it is booked. */
export function useReceive(kept: string, initial: Values, suppliers: readonly Supplier[]) {
  const t = useText();
  const { today } = useSession();
  const format = useFormat();
  const navigate = useNavigate();
  const { book } = useBooking({ send: receiveDelivery, changes: SHELF_CHANGES });
  const form = useForm({
    initial,
    check: (values) => checkDelivery(values, today, t),
    send: (values) => book(bodyOf(values)),
    fieldOf: (path): string => fieldOf(path, received(form.values.lines)),
    onDone: ({ id, lineCount, landedTotal }) => {
      form.reset({ ...initial, lines: [] });
      const params = { deliveryId: id };
      const to = '/shelves/deliveries/$deliveryId' as const;
      const run = () => void navigate({ to, params, search: { do: 'reverse' } });
      const text = t.receive.done(lineCount, format.money(landedTotal));
      notify({ tone: 'done', text, action: { label: t.receive.undo, run } });
      void navigate({ to, params, replace: true });
    },
  });
  const { values, set } = form;
  const touched = values.lines.some((line) => !isUntouched(line));
  useKeep(kept, touched ? values : undefined);
  const change = (key: string, part: Partial<Line>) => {
    set(
      'lines',
      values.lines.map((line) => (line.key === key ? { ...line, ...part } : line)),
    );
    for (const field of Object.keys(part)) form.clearAt(pathOf(key, errorOf(field)));
  };
  const add = () => {
    const place = values.lines.at(-1)?.locationId ?? '';
    const line = emptyLine(newKey(), place);
    set('lines', [...values.lines, line]);
    return line.key;
  };
  const remove = (key: string) =>
    set(
      'lines',
      values.lines.filter((line) => line.key !== key),
    );
  const scanner = useReceiveScan(values.lines, (lines, product) => {
    set('lines', lines);
    for (const { key } of lines) for (const field of SCANNED) form.clearAt(pathOf(key, field));
    const sells = sellerOf(product, suppliers);
    if (values.supplierId === '' && sells !== undefined) set('supplierId', sells);
  });
  return { form, change, add, remove, touched, scanner };
}

/** Who usually sells it, when the practice still buys there. */
function sellerOf(product: Product | null, suppliers: readonly Supplier[]): string | undefined {
  return suppliers.find(({ id }) => id === product?.presentation.supplierId)?.id;
}

/** Where the service speaks about what a line calls otherwise. */
function errorOf(field: string): string {
  if (field === 'product') return 'presentationId';
  if (field === 'weight') return 'weightGrams';
  return field === 'noLot' ? 'lotNumber' : field;
}
