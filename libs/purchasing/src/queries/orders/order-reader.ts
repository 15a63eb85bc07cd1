import { Injectable } from '@nestjs/common';
import { formatMoney, money } from '#lib/measure';
import { type Actor, Clock, Mailer, refuse, type Tx } from '#lib/platform';
import { instantText, moneyText } from '#lib/stock';
import { loadOrderRules, type OrderRules } from '../../db/orders/order-rules.js';
import { approvalLimits } from '../../domain/orders/approval-limits.js';
import type {
  OrderDto,
  OrderEventDto,
  OrderFigureDto,
  OrderLimitsDto,
  OrderSummaryDto,
} from '../../http/orders/order-answers.dto.js';
import { budgetLeft } from './budget-left.js';
import { freightByTerms } from './freight-by-terms.js';
import { loadOrderLines } from './order-lines.js';
import { ORDER_COLUMNS, ORDER_SOURCES, type OrderSummaryRow, toSummary } from './order-summary.js';

const ORDER = `
SELECT ${ORDER_COLUMNS}, o.version, o.reference, o.note, o.approved_at, o.sent_way,
       s.email, s.language, s.customer_number, c.id AS created_id, c.display_name AS created_name,
       v.id AS approved_id, v.display_name AS approved_name
FROM ${ORDER_SOURCES}
JOIN people c ON c.id = o.created_by
LEFT JOIN people v ON v.id = o.approved_by
WHERE o.practice_id = $1 AND o.id = $2`;

interface OrderRow extends OrderSummaryRow {
  readonly version: number;
  readonly reference: string | null;
  readonly note: string | null;
  readonly approved_at: Date | null;
  readonly sent_way: string | null;
  readonly email: string | null;
  readonly language: string;
  readonly customer_number: string | null;
  readonly created_id: string;
  readonly created_name: string;
  readonly approved_id: string | null;
  readonly approved_name: string | null;
}

const EVENTS = `
SELECT e.id, e.kind, e.note, e.happened_at, e.details, p.id AS person_id,
       p.display_name AS person_name
FROM order_events e JOIN people p ON p.id = e.person_id
WHERE e.practice_id = $1 AND e.order_id = $2 ORDER BY e.happened_at, e.id`;

interface EventRow {
  readonly id: string;
  readonly kind: string;
  readonly note: string | null;
  readonly happened_at: Date;
  readonly details: { readonly figures?: OrderFigureDto[] } | null;
  readonly person_id: string;
  readonly person_name: string;
}

/** One order with its lines and what happened, inside the transaction of whoever asks. */
@Injectable()
export class OrderReader {
  constructor(
    private readonly clock: Clock,
    private readonly mailer: Mailer,
  ) {}

  async get(tx: Tx, actor: Actor, id: string): Promise<OrderDto> {
    const [row] = await tx.query<OrderRow>(ORDER, [tx.practiceId, id]);
    if (!row) throw refuse('not_found', 'There is no order with this id.');
    const today = this.clock.today(actor.timeZone);
    const rules = await loadOrderRules(tx);
    const { lateAfterDays } = rules;
    const summary = toSummary(row, { currency: actor.currency, today, lateAfterDays });
    return {
      ...summary,
      ...factsOf(row, summary),
      freightByTerms: await isByTerms(tx, row),
      mailServer: this.mailer.isSet,
      limits: row.state === 'draft' ? await limitsOf(tx, { summary, rules, today }) : null,
      lines: await loadOrderLines(tx, id),
      events: (await tx.query<EventRow>(EVENTS, [tx.practiceId, id])).map(toEvent),
    };
  }
}

function factsOf(row: OrderRow, { supplier }: OrderSummaryDto) {
  const { approved_id, approved_name } = row;
  const approved = approved_id !== null && approved_name !== null;
  return {
    version: row.version,
    supplier: {
      ...supplier,
      ...{ email: row.email, language: row.language, customerNumber: row.customer_number },
    },
    reference: row.reference,
    note: row.note,
    goods: moneyText(row.goods),
    freight: moneyText(row.freight),
    unpriced: row.unpriced,
    createdBy: { id: row.created_id, name: row.created_name },
    approvedBy: approved ? { id: approved_id, name: approved_name } : null,
    approvedAt: row.approved_at === null ? null : instantText(row.approved_at),
    sentWay: row.sent_way,
  };
}

async function isByTerms(tx: Tx, row: OrderRow): Promise<boolean> {
  const goods = money(moneyText(row.goods));
  return (await freightByTerms(tx, row.supplier_id, goods)) === money(moneyText(row.freight));
}

async function limitsOf(
  tx: Tx,
  about: { readonly summary: OrderSummaryDto; readonly rules: OrderRules; readonly today: string },
): Promise<OrderLimitsDto> {
  const { summary, rules, today } = about;
  const left = await budgetLeft(tx, today);
  const { overLimit, overBudget, inTheWay } = approvalLimits({
    total: money(summary.total),
    approveUpTo: rules.approveUpTo === null ? null : money(rules.approveUpTo),
    budgetLeft: left,
    currency: summary.currency,
  });
  return {
    overLimit: overLimit === null ? null : formatMoney(overLimit),
    overBudget: overBudget === null ? null : formatMoney(overBudget),
    budgetLeft: left === null ? null : formatMoney(left),
    inTheWay,
  };
}

function toEvent(row: EventRow): OrderEventDto {
  return {
    id: row.id,
    kind: row.kind,
    at: instantText(row.happened_at),
    by: { id: row.person_id, name: row.person_name },
    note: row.note,
    figures: row.details?.figures ?? [],
  };
}
