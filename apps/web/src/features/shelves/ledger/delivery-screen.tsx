import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { formatMoney, money, moneyFromMicro, sum } from '#lib/measure';
import { useBooking } from '../../../api/use-booking.js';
import { useMay } from '../../../app/session.js';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { ButtonLink } from '../../../ui/button-link.js';
import { ConfirmReversal } from '../../../ui/confirm-reversal.js';
import { DataTable } from '../../../ui/data-table.js';
import { Figure, Figures } from '../../../ui/figure.js';
import { Loaded } from '../../../ui/loaded.js';
import { notify } from '../../../ui/notice-store.js';
import { PageHead } from '../../../ui/page-head.js';
import { PrintButton } from '../../../ui/print-button.js';
import { Section } from '../../../ui/section.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { Money } from '../../../ui/values.js';
import { SHELF_CHANGES } from '../api/changes.js';
import { type Delivery, type DeliveryLine, deliveryQuery } from '../api/get-delivery.js';
import { reverseDelivery } from '../api/reverse-delivery.js';
import parts from '../parts/parts.module.css';
import { CorrectDialog } from './correct-dialog.js';
import css from './delivery.module.css';
import { useLineColumns } from './delivery-columns.js';
import { Faults, Invoices } from './delivery-extras.js';
import { invoicedLines } from './invoice.js';
import { InvoiceDialog } from './invoice-dialog.js';

const route = getRouteApi('/in/shelves/deliveries/$deliveryId');

/** One delivery: its lines and lots, what they cost to get here, and what is left of them. */
export function DeliveryScreen() {
  const { deliveryId } = route.useParams();
  const { deliveries } = useText();
  const query = useQuery(deliveryQuery(deliveryId));
  return (
    <>
      <Link to="/shelves/deliveries" className={`${parts.back ?? ''} tb-screen-only`}>
        ← {deliveries.back}
      </Link>
      <Loaded query={query}>{(delivery) => <Whole delivery={delivery} />}</Loaded>
    </>
  );
}

interface Props {
  readonly delivery: Delivery;
}

function Whole({ delivery }: Props) {
  const { deliveries } = useText();
  const format = useFormat();
  const may = useMay();
  const navigate = route.useNavigate();
  const onCorrect = (line: DeliveryLine) =>
    void navigate({ search: { do: 'correct', line: String(line.lineNumber) }, resetScroll: false });
  const open = may('deliveries.book') && !delivery.reversed;
  const columns = useLineColumns(open ? onCorrect : undefined);
  const standing = delivery.lines.filter((line) => !line.undone);
  const { supplier, reference, receivedOn, recordedBy, recordedAt } = delivery;
  return (
    <>
      <PageHead
        title={deliveries.one(format.day(receivedOn))}
        lead={deliveries.oneLead(supplier.name, reference)}
      >
        <Actions delivery={delivery} />
      </PageHead>
      <Reversed delivery={delivery} />
      <Totals delivery={delivery} />
      <Section title={deliveries.lines} hint={deliveries.spread[delivery.spreadKey]}>
        <div className={css.lines}>
          <DataTable
            label={deliveries.lines}
            columns={columns}
            rows={standing}
            rowKey={(line) => line.layerId}
          />
        </div>
      </Section>
      <Faults faults={delivery.faults} />
      <Invoices invoices={delivery.invoices} />
      <p className={parts.quiet}>
        {deliveries.bookedBy(recordedBy.name, format.instant(recordedAt))}
      </p>
      <Reversal delivery={delivery} />
      {open && <Changes delivery={delivery} />}
    </>
  );
}

function Reversed({ delivery: { reversedAt, reversalNote } }: Props) {
  const { deliveries } = useText();
  const format = useFormat();
  if (reversedAt === null) return null;
  return (
    <p className={css.reversed}>
      <StatusMark tone="caution">
        {deliveries.reversedOn(format.instant(reversedAt), reversalNote ?? '')}
      </StatusMark>
    </p>
  );
}

function Totals({ delivery }: Props) {
  const { deliveries, deliveryMore: words } = useText();
  const { figures } = deliveries;
  const left = sum([
    moneyFromMicro(0n),
    ...delivery.lines.map((line) => money(line.remainingValue)),
  ]);
  return (
    <div className={css.totals}>
      <Figures>
        <Figure label={figures.landed} large>
          <Money value={delivery.landedTotal} />
        </Figure>
        <Figure label={figures.left} large>
          <Money value={formatMoney(left)} />
        </Figure>
        <Figure label={figures.goods}>
          <Money value={delivery.goodsTotal} />
        </Figure>
        <Figure label={figures.freight}>
          <Money value={delivery.freight} />
        </Figure>
        {delivery.duty !== '0.00' && (
          <Figure label={words.duty}>
            <Money value={delivery.duty} />
          </Figure>
        )}
        <Figure label={figures.discount}>
          <Money value={delivery.discount} />
        </Figure>
      </Figures>
    </div>
  );
}

/** The dialog that the address names. */
function Changes({ delivery }: Props) {
  const { do: action, line: number } = route.useSearch();
  const navigate = route.useNavigate();
  const close = () => void navigate({ search: {}, replace: true, resetScroll: false });
  if (action === 'invoice') return <InvoiceDialog delivery={delivery} onClose={close} />;
  const line = delivery.lines.find(({ lineNumber }) => String(lineNumber) === number);
  if (action !== 'correct' || !line) return null;
  return <CorrectDialog deliveryId={delivery.id} line={line} onClose={close} />;
}

/** All of it must still be there to be taken back. */
function isWhole({ lines }: Delivery): boolean {
  return lines.every((line) => line.undone || line.remaining === line.quantity);
}

function Actions({ delivery }: Props) {
  const { deliveries, deliveryMore } = useText();
  const may = useMay();
  return (
    <>
      <PrintButton />
      {may('deliveries.book') && !delivery.reversed && invoicedLines(delivery).length > 0 && (
        <ButtonLink
          from="/shelves/deliveries/$deliveryId"
          to="/shelves/deliveries/$deliveryId"
          params={{ deliveryId: delivery.id }}
          search={{ do: 'invoice' }}
          variant="default"
        >
          {deliveryMore.enterInvoice}
        </ButtonLink>
      )}
      {may('deliveries.book') && !delivery.reversed && isWhole(delivery) && (
        <ButtonLink
          from="/shelves/deliveries/$deliveryId"
          to="/shelves/deliveries/$deliveryId"
          params={{ deliveryId: delivery.id }}
          search={{ do: 'reverse' }}
          variant="default"
        >
          {deliveries.reverse}
        </ButtonLink>
      )}
      {may('deliveries.book') && (
        <ButtonLink to="/shelves/deliveries/new" variant="default">
          {deliveries.another}
        </ButtonLink>
      )}
    </>
  );
}

function Reversal({ delivery }: Props) {
  const { deliveries } = useText();
  const format = useFormat();
  const may = useMay();
  const { do: action } = route.useSearch();
  const navigate = route.useNavigate();
  const { book } = useBooking({ send: reverseDelivery, changes: SHELF_CHANGES });
  if (!may('deliveries.book') || delivery.reversed) return null;
  if (!isWhole(delivery)) return <p className={parts.quiet}>{deliveries.movedOn}</p>;
  const { lines, supplier, receivedOn } = delivery;
  const close = () => void navigate({ search: {}, replace: true });
  const reverse = async (note: string) => {
    await book({ id: delivery.id, note });
    notify({ tone: 'done', text: deliveries.undone });
  };
  return (
    <ConfirmReversal
      opened={action === 'reverse'}
      onClose={close}
      what={deliveries.reverseWhat(lines.length, supplier.name, format.day(receivedOn))}
      reverse={reverse}
    />
  );
}
