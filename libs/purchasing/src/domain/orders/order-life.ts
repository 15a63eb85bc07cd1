export const ORDER_STATES = ['draft', 'approved', 'sent', 'closed', 'cancelled'] as const;
export type OrderState = (typeof ORDER_STATES)[number];

export const ORDER_EVENTS = [
  'created',
  'changed',
  'approved',
  'approval withdrawn',
  'sent',
  'chased',
  'supplier answered',
  'lines cancelled',
  'closed',
  'reopened',
  'cancelled',
] as const;
export type OrderEventKind = (typeof ORDER_EVENTS)[number];

/** A line as its life sees it, in packs. */
export interface LineNow {
  readonly id: string;
  readonly packs: number;
  /** Will not come. */
  readonly cancelled: number;
  /** Came with deliveries that stand; may be more than was ordered. */
  readonly received: number;
}

export interface OrderNow {
  readonly state: OrderState;
  readonly lines: readonly LineNow[];
}

export interface PacksOfLine {
  readonly lineId: string;
  readonly packs: number;
}

/** What people do with an order. */
export type OrderStep =
  | {
      readonly do: 'change';
      readonly lines: readonly { readonly id: string; readonly packs: number }[];
    }
  | { readonly do: 'approve' | 'withdraw approval' | 'send' | 'chase' | 'close' | 'cancel' }
  | { readonly do: 'answer'; readonly willNotCome: readonly PacksOfLine[] };

export type OrderAct = OrderStep['do'];

export type Taken =
  | { readonly ok: true; readonly order: OrderNow; readonly events: readonly OrderEventKind[] }
  | { readonly ok: false; readonly why: string; readonly field: string | null };

export function outstandingOf({ packs, cancelled, received }: LineNow): number {
  return Math.max(0, packs - cancelled - received);
}

/** Packs that came beyond what was still wanted. */
export function surplusOf({ packs, cancelled, received }: LineNow): number {
  return Math.max(0, received + cancelled - packs);
}

export const ARRIVALS = ['nothing yet', 'in part', 'in full'] as const;
export type Arrival = (typeof ARRIVALS)[number];

/** How much of it has come, whatever will not come left aside. */
export function arrivalOf(lines: readonly LineNow[]): Arrival {
  if (lines.every((line) => line.received === 0)) return 'nothing yet';
  return lines.every((line) => outstandingOf(line) === 0) ? 'in full' : 'in part';
}

/** In which states something may be done with an order. */
const ALLOWED: Readonly<Record<OrderAct, readonly OrderState[]>> = {
  change: ['draft', 'approved'],
  approve: ['draft'],
  'withdraw approval': ['approved'],
  send: ['approved'],
  chase: ['sent'],
  answer: ['sent'],
  close: ['sent'],
  cancel: ['draft', 'approved'],
};

const WHY_NOT: Readonly<Record<OrderState, string>> = {
  draft: 'It is a draft that nobody approved yet.',
  approved: 'It is approved, but was not sent yet.',
  sent: 'It was sent already; say what the supplier answered, or close it.',
  closed: 'It is closed: every line came or will not come.',
  cancelled: 'It was cancelled.',
};

const WORDS: Readonly<Record<OrderAct, string>> = {
  change: 'changed',
  approve: 'approved',
  'withdraw approval': 'taken back from approval',
  send: 'sent',
  chase: 'chased',
  answer: 'answered by the supplier',
  close: 'closed',
  cancel: 'cancelled',
};

/** The order after a step and what happened with it, or a sentence that says why not. */
export function take(order: OrderNow, step: OrderStep): Taken {
  if (!ALLOWED[step.do].includes(order.state)) {
    return refused(`The order cannot be ${WORDS[step.do]}. ${WHY_NOT[order.state]}`, null);
  }
  switch (step.do) {
    case 'change':
      return changed(order, step.lines);
    case 'approve':
      if (order.lines.length === 0)
        return refused('An order without lines orders nothing.', 'lines');
      return went({ ...order, state: 'approved' }, 'approved');
    case 'withdraw approval':
      return went({ ...order, state: 'draft' }, 'approval withdrawn');
    case 'send':
      return went({ ...order, state: 'sent' }, 'sent');
    case 'chase':
      return went(order, 'chased');
    case 'answer':
      return answered(order, step.willNotCome);
    case 'close':
      return went({ state: 'closed', lines: order.lines.map(givenUp) }, 'closed');
    case 'cancel':
      return went({ ...order, state: 'cancelled' }, 'cancelled');
  }
}

/**
 * The order after deliveries were booked or reversed: a sent one whose lines are all answered closes
 * by itself, and one that was closed opens again when a delivery it counted on is gone.
 */
export function settled(order: OrderNow): Extract<Taken, { ok: true }> {
  const waits = order.lines.some((line) => outstandingOf(line) > 0);
  if (order.state === 'sent' && !waits) return went({ ...order, state: 'closed' }, 'closed');
  if (order.state === 'closed' && waits) return went({ ...order, state: 'sent' }, 'reopened');
  return went(order);
}

function went(order: OrderNow, ...events: OrderEventKind[]): Extract<Taken, { ok: true }> {
  return { ok: true, order, events };
}

function refused(why: string, field: string | null): Taken {
  return { ok: false, why, field };
}

function changed(
  order: OrderNow,
  lines: readonly { readonly id: string; readonly packs: number }[],
): Taken {
  const after = lines.map((line) => ({ ...line, cancelled: 0, received: 0 }));
  const events: OrderEventKind[] =
    order.state === 'approved' ? ['changed', 'approval withdrawn'] : ['changed'];
  return went({ state: 'draft', lines: after }, ...events);
}

/** What is still outstanding will not come. */
function givenUp(line: LineNow): LineNow {
  return { ...line, cancelled: line.cancelled + outstandingOf(line) };
}

function answered(order: OrderNow, willNotCome: readonly PacksOfLine[]): Taken {
  const named = new Map(willNotCome.map((each) => [each.lineId, each.packs]));
  for (const [i, { lineId, packs }] of willNotCome.entries()) {
    const line = order.lines.find(({ id }) => id === lineId);
    const field = `willNotCome[${i}]`;
    if (!line) return refused('The order has no such line.', `${field}.lineId`);
    const left = outstandingOf(line);
    if (packs <= left && willNotCome.findIndex((each) => each.lineId === lineId) === i) continue;
    const why =
      packs > left
        ? `Only ${left} of this line are outstanding, so ${packs} cannot fail to come.`
        : 'A line is named once.';
    return refused(why, packs > left ? `${field}.packs` : `${field}.lineId`);
  }
  const lines = order.lines.map((line) => ({
    ...line,
    cancelled: line.cancelled + (named.get(line.id) ?? 0),
  }));
  const events: OrderEventKind[] = named.size > 0 ? ['lines cancelled'] : ['supplier answered'];
  const after = settled({ ...order, lines });
  return went(after.order, ...events, ...after.events);
}
