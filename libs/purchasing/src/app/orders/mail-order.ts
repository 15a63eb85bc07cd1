import { Injectable } from '@nestjs/common';
import { type Actor, Mailer, type Tx } from '#lib/platform';
import { dayText, orderWords } from '../../domain/orders/order-words.js';
import type { OrderDto } from '../../http/orders/order-answers.dto.js';
import { goodsName } from '../../http/orders/order-csv.js';
import { refusePurchasing } from '../../purchasing.refusals.js';
import { wentWrong } from '../went-wrong.js';
import { OrderPapers } from './order-papers.js';

const ADDRESS = /^[^\s@<>,;"]+@[^\s@<>,;"]+$/;

/** Writes to suppliers about orders, in their language. */
@Injectable()
export class MailOrder {
  constructor(
    private readonly mailer: Mailer,
    private readonly papers: OrderPapers,
  ) {}

  /** Where a mail would go; refuses when there is no server, no address, or none that can be one. */
  async addressOf(tx: Tx, supplierId: string, to: string | null | undefined): Promise<string> {
    if (!this.mailer.isSet) {
      throw refusePurchasing(
        'no_mail_server',
        'The service was started without a mail server: set SMTP_URL, or send the order yourself.',
        [{ field: 'way', message: 'needs a mail server (SMTP_URL)' }],
      );
    }
    const [supplier] = await tx.query<{ email: string | null }>(
      'SELECT email FROM suppliers WHERE practice_id = $1 AND id = $2',
      [tx.practiceId, supplierId],
    );
    const address = to?.trim() || supplier?.email?.trim() || '';
    if (ADDRESS.test(address)) return address;
    const message = address === '' ? 'is needed: the supplier has no address' : 'is no address';
    throw refusePurchasing('address_not_allowed', 'The order cannot be sent by e-mail like this.', [
      { field: 'to', message },
    ]);
  }

  /** Sends the order with its PDF and CSV; refuses when the server does not take it. */
  async order(tx: Tx, actor: Actor, order: OrderDto, to: string): Promise<void> {
    const { number, supplier, note, expectedOn, version } = order;
    const { subject, text } = orderWords(supplier.language).mail({
      ...{ number, practice: actor.practiceName, customerNumber: supplier.customerNumber, note },
      expectedOn: dayText(expectedOn ?? '', supplier.language),
    });
    const attachments = [
      await this.papers.file(tx, actor, order, 'pdf'),
      await this.papers.file(tx, actor, order, 'csv'),
    ];
    // The same order sent again has the same id, so that a mailbox can tell.
    const messageId = `<order-${order.id}-${version}@traybook>`;
    const stillSo = 'Nothing was sent and the order is still approved.';
    await this.send({ messageId, to: [to], subject, text, attachments }, stillSo);
  }

  /** Asks where the outstanding lines are. */
  async chase(actor: Actor, order: OrderDto, to: string, note: string | null): Promise<void> {
    const { number, supplier, orderedOn, expectedOn, version } = order;
    const { language, customerNumber } = supplier;
    const { subject, text } = orderWords(language).chasing({
      ...{ number, practice: actor.practiceName, customerNumber, note },
      orderedOn: dayText(orderedOn ?? '', language),
      expectedOn: dayText(expectedOn ?? '', language),
      lines: order.lines
        .filter((line) => line.outstanding > 0)
        .map((line) => {
          const code = line.presentation.articleCode;
          const what = `${line.presentation.name}, ${goodsName(line)}`;
          return `${line.outstanding} × ${what}${code === null ? '' : ` (${code})`}`;
        }),
    });
    const messageId = `<order-${order.id}-${version}@traybook>`;
    await this.send({ messageId, to: [to], subject, text }, 'Nothing was sent.');
  }

  private async send(mail: Parameters<Mailer['send']>[0], stillSo: string): Promise<void> {
    try {
      await this.mailer.send(mail);
    } catch (error) {
      const why = wentWrong(error);
      throw refusePurchasing(
        'mail_not_taken',
        `The mail server did not take it: ${why} ${stillSo}`,
      );
    }
  }
}
