interface On {
  readonly what: string;
  readonly day: string;
}

interface OnShelf extends On {
  readonly amount: string;
  readonly lot: string;
  readonly place: string;
}

interface RunsOut {
  readonly what: string;
  /** Null: nothing is usable. */
  readonly amount: string | null;
  readonly use: string;
  readonly day: string;
  readonly chance: string;
  readonly hit: readonly string[];
  readonly more: number;
  /** Null: the day is as the supplier or the practice states it. */
  readonly seen: { readonly share: string; readonly orders: string } | null;
}

interface Low {
  readonly what: string;
  readonly usable: string;
  /** Null: nothing is expected to expire first. */
  readonly expiring: string | null;
  readonly at: string;
  readonly by: 'set in planning' | 'typed in' | 'computed';
  readonly heldBack: boolean;
  readonly computed: {
    readonly point: string;
    readonly orders: boolean;
    readonly use: string;
    readonly days: number;
    readonly service: string;
    /** Null: today. */
    readonly on: string | null;
  } | null;
}

function lowPoint({ at, by, computed }: Low): string {
  if (by === 'set in planning') return `its reorder point of ${at} is set by hand.`;
  if (by === 'typed in') {
    const typed = `the practice orders at ${at}, as typed in at the consumable.`;
    if (computed === null) return typed;
    const verdict = computed.orders ? 'proposes it too' : 'proposes nothing yet';
    return `${typed} Computed from use it would be ${computed.point}: ordering ${verdict}.`;
  }
  if (computed === null) return `its reorder point is ${at}.`;
  const { use, days, service, on } = computed;
  return (
    `its reorder point of ${at} is computed${on === null ? '' : ` on ${on}`}: about ${use} are used ` +
    `in ${days} days, until goods ordered at the next look are here; the rest is kept for a ` +
    `service of ${service}.`
  );
}

export const today = {
  title: 'Today',
  lead: (day: string) => `What needs somebody on ${day}, the most urgent first.`,
  count: (n: number) => (n === 1 ? '1 thing to do' : `${n} things to do`),
  filter: { kind: 'Kind', within: 'Warn before expiry', category: 'Category', q: 'Search' },
  within: (days: string) => `${days} days ahead`,
  withinPractice: 'Practice setting',
  more: 'Show more',
  allOfKind: 'Show all of these',
  empty: 'Nothing needs you today.',
  emptyHint: 'Nothing is recalled, expired, short or running low.',
  kinds: {
    'recalled lot on hand': 'Held lots still on the shelf',
    'expired on shelf': 'Expired on the shelf',
    'opened too long': 'Open for too long',
    'open shortfall': 'Used, but not in the book',
    'runs out before delivery': 'Runs out before a delivery',
    'overdue order': 'Ordered and late',
    'below reorder point': 'Running low',
    'expires within N days': 'Expires soon',
  },
  why: {
    'recalled lot on hand': 'Nobody may use these. They go back, or the lot is released.',
    'expired on shelf': 'Nobody may use these. Write them off so that the shelf tells the truth.',
    'opened too long': 'Their time after opening has passed. Write them off.',
    'open shortfall': 'Visits used more than the book had. A delivery is missing, or a count.',
    'runs out before delivery':
      'Even what is ordered today may come too late: order it now, or ask who has some.',
    'overdue order': 'These should have come. Ask the supplier, or say what it answered.',
    'below reorder point': 'At or below the point at which the practice orders.',
    'expires within N days': 'Move them to where they are used first.',
  },
  order: (number: string, supplier: string) => `Order ${number}, ${supplier}`,
  lot: (number: string) => `lot ${number}`,
  lotNotStated: 'lot not stated',
  statuses: { released: 'released', quarantined: 'quarantined', recalled: 'recalled' },
  sentences: {
    held: ({ amount, what, lot, place }: Omit<OnShelf, 'day'>, status: string) =>
      `${amount} of ${what} (${lot}) in ${place}: the lot is ${status}. Nobody may use it.`,
    expired: ({ amount, what, lot, place, day }: OnShelf) =>
      `${amount} of ${what} (${lot}) in ${place} expired on ${day}.`,
    openTooLong: ({ amount, what, lot, place, day }: OnShelf) =>
      `${amount} of ${what} (${lot}) in ${place} could be used until ${day} after opening.`,
    expires: ({ amount, what, lot, place, day }: OnShelf, days: number) =>
      `${amount} of ${what} (${lot}) in ${place} can be used until ${day}: its last day is ${
        days === 0 ? 'today' : days === 1 ? 'tomorrow' : `in ${days} days`
      }.`,
    shortfall: (what: string, amount: string, visits: number) =>
      `${visits === 1 ? 'One visit' : `${visits} visits`} used ${amount} of ${what} that the book has no stock for.`,
    runsOut: ({ what, amount, use, day, chance, hit, more, seen }: RunsOut) => {
      const here =
        seen === null ? null : `in ${seen.share} of 100 cases, as seen in ${seen.orders} orders`;
      const begin =
        amount === null
          ? `No ${what} is usable, and ${here === null ? `nothing can be here before ${day}` : `goods ordered today are here by ${day} ${here}`}`
          : `${amount} of ${what} may not last until ${day}, when goods ordered today ${here === null ? 'can be here' : `are here ${here}`}`;
      return `${begin}: ${use} are expected to be used before, with a ${chance} % chance of running out.${
        hit.length === 0
          ? ''
          : ` Booked and at risk: ${hit.join('; ')}${more === 0 ? '' : `; and ${more} more`}.`
      }`;
    },
    bookedVisit: (day: string, chart: string | null, visits: number) =>
      `${day}, ${chart === null ? (visits === 1 ? '1 visit' : `${visits} visits`) : `chart ${chart}`}`,
    late: (what: string, lines: number) =>
      lines === 1
        ? `${what} did not come.`
        : `${what} and ${lines === 2 ? 'one more line' : `${lines - 1} more lines`} did not come.`,
    low: (low: Low) =>
      `${low.usable} of ${low.what} can be used${
        low.expiring === null
          ? ''
          : `, of which about ${low.expiring} should expire before new goods can come`
      }; ${lowPoint(low)}${low.heldBack ? ' A limit set in planning holds the order back.' : ''}`,
  },
  inOrdering: 'See it in ordering',
  daysOver: 'Days over',
  figures: {
    'on hand': 'On hand',
    'days left': 'Days left',
    'open shortfall': 'Not in the book',
    visits: 'Visits',
    'estimated cost': 'Estimated cost',
    usable: 'Usable',
    'on order': 'On order',
    'use until delivery': 'Use until delivery',
    'booked use': 'Of it booked',
    'days until delivery': 'Days until delivery',
    chance: 'Chance of running out',
    'days late': 'Days late',
    'outstanding lines': 'Lines outstanding',
    'outstanding packs': 'Packs outstanding',
    position: 'Usable and on order, less owed',
    'reorder at': 'Order at',
    'reorder up to': 'Order up to',
    'suggested packs': 'Suggested',
    'last price': 'Last price a pack',
    'order cost': 'Order cost',
    'expected to expire first': 'Should expire first',
    'computed reorder point': 'Computed from use',
  },
  snooze: {
    putOff: 'Put off',
    title: 'Put it off',
    until: 'Until',
    untilHint: 'It comes back on this day.',
    reason: 'Why it can wait',
    between: (last: string) => `Choose a day after today, until ${last} at the latest.`,
    confirm: 'Put off',
    done: (what: string, until: string) => `${what} comes back on ${until}.`,
    off: (until: string, by: string, reason: string) =>
      `Put off until ${until} by ${by}: ${reason}`,
    count: (n: number) => (n === 1 ? '1 thing was put off.' : `${n} things were put off.`),
    showThem: 'Show what was put off',
    onlyThese: 'Only what was put off.',
    back: 'Back to what needs somebody',
    wake: 'Take it up again',
    wokenReason: 'Taken up again',
    woken: (what: string) => `${what} is back on the list.`,
  },
  actions: {
    writeOff: 'Write off',
    sendBack: 'Send back',
    decide: 'Decide on the lot',
    move: 'Move',
    receive: 'Book the delivery',
    buying: 'See how it is bought',
    count: 'Count',
    order: 'Open the order',
    toOrder: 'See what to order',
    heldBack: 'See what holds it back',
    look: 'Look at it',
  },
};
