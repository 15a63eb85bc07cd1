interface On {
  readonly what: string;
  readonly day: string;
}

interface OnShelf extends On {
  readonly amount: string;
  readonly lot: string;
  readonly place: string;
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
    'below reorder point': 'Running low',
    'expires within N days': 'Expires soon',
  },
  why: {
    'recalled lot on hand': 'Nobody may use these. They go back, or the lot is released.',
    'expired on shelf': 'Nobody may use these. Write them off so that the shelf tells the truth.',
    'opened too long': 'Their time after opening has passed. Write them off.',
    'open shortfall': 'Visits used more than the book had. A delivery is missing, or a count.',
    'below reorder point': 'At or below the point at which the practice orders.',
    'expires within N days': 'Move them to where they are used first.',
  },
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
    low: (what: string, usable: string, reorderAt: string) =>
      `${usable} of ${what} can be used; the practice orders at ${reorderAt}.`,
  },
  daysOver: 'Days over',
  figures: {
    'on hand': 'On hand',
    'days left': 'Days left',
    'open shortfall': 'Not in the book',
    visits: 'Visits',
    'estimated cost': 'Estimated cost',
    usable: 'Usable',
    position: 'Usable less owed',
    'reorder at': 'Order at',
    'reorder up to': 'Order up to',
    'suggested packs': 'Suggested',
    'last price': 'Last price a pack',
    'order cost': 'Order cost',
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
    look: 'Look at it',
  },
};
