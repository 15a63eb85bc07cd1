/** What a due line rests on, already formatted. */
interface Why {
  readonly there: string;
  readonly owed: string | null;
  readonly position: string;
  /** Of it expected to expire before new goods can come. */
  readonly expiring: string | null;
  readonly point: string;
  readonly use: string;
  readonly lead: string;
  readonly review: string;
  readonly safety: string;
  readonly service: string;
  readonly byHand: boolean;
}

const counted = (count: number, one: string, many: string) =>
  count === 1 ? `1 ${one}` : `${count} ${many}`;

export const ordering = {
  now: {
    title: 'To order',
    lead: (day: string) =>
      `What is due on ${day}, one order per supplier, each line with its reason.`,
    empty: 'Nothing is due',
    emptyHint: 'Every consumable is above its reorder point. What comes next is under “All items”.',
    first: 'Nothing to reckon with yet',
    firstHint:
      'Once consumables, their packs and some visits are in the book, what to order stands here ' +
      'with its reasons.',
    toConsumables: 'Enter consumables',
    toItems: 'See all items',
    noSupplier: 'Supplier not stated',
    noSupplierHint: 'Say at the consumable who sells it; then it can be ordered.',
    budgetLeft: 'Left of the month’s budget',
    allOrders: 'All of these',
    goods: 'Goods',
    freight: 'Freight',
    total: 'Total',
    least: 'Smallest order',
    missing: (amount: string) => `${amount} are missing to the smallest order.`,
    ready: 'Ready',
    tooSmall: 'Below the smallest order',
    changed: 'Changed by you',
    make: 'Make order',
    makeFor: (supplier: string) => `Make order to ${supplier}`,
    made: (number: string) => `Order ${number} is a draft now.`,
    packs: 'Packs',
    packsOf: (what: string) => `Packs of ${what}`,
    proposed: (packs: string) => `proposed: ${packs}`,
    early: (packs: string) => `${packs} of them early, to fill the order`,
    wholePacks: (least: number) => `0, or a whole number from ${least} on`,
    nothing: 'Every line is at 0 packs.',
    noPrice: 'price not known',
    details: 'Figures and other ways',
    stuck: 'Due, but in no order',
    stuckHint: 'Something stops these; each says what.',
    stuckWhy: {
      'no offer': 'Nobody says how it is bought.',
      limit: (bounds: string) => `Stopped by: ${bounds}.`,
    },
    buying: 'Packs and suppliers of it',
  },
  why: (w: Why) =>
    `${w.there} there and on the way${w.owed === null ? '' : `, ${w.owed} owed to visits`}: ` +
    `position ${w.position}` +
    (w.expiring === null
      ? '. '
      : `, of which about ${w.expiring} should expire before new goods can come. `) +
    (w.byHand
      ? `The reorder point of ${w.point} is set by hand; about ${w.use} are used in ${w.lead} days ` +
        `of delivery and ${w.review} days until the next look.`
      : `The reorder point is ${w.point}: about ${w.use} are used in ${w.lead} days of delivery and ` +
        `${w.review} days until the next look, and ${w.safety} are kept for a service of ${w.service}.`),
  strip: {
    use: 'use until the next order can be here (9 of 10 times)',
    middle: 'middle',
    position: 'there and on the way',
    point: 'reorder point',
    words: (low: string, middle: string, high: string) =>
      `Until the next order can be here: ${low} to ${high}, in the middle ${middle}.`,
    label: (what: string) => `Use of ${what} against what is there`,
  },
  figuresTitle: 'The figures behind it',
  figures: {
    'usable on hand': 'Usable on hand',
    'on order': 'On the way',
    'open shortfall': 'Owed to visits',
    position: 'Position',
    'expected to expire first': 'Expected to expire before',
    'position after expiry': 'Position less that',
    'mean lead time': 'Delivery takes on average',
    'orders seen': 'Seen from orders',
    'review period': 'Until the next look',
    'mean use in lead time and review': 'Expected use in that time',
    'spread of use in lead time and review': 'Spread of that use',
    'service level': 'Wanted service',
    'reorder point': 'Reorder point',
    'safety stock': 'Kept for safety',
    'use in a year': 'Use in a year',
    'economic order': 'Cheapest order by cost alone',
    'usual order': 'Usual order',
    'order up to': 'Order up to',
    'content of a pack': 'In a pack',
    'smallest order': 'Smallest order',
    'most used before expiry': 'Most used before it expires',
    'wanted certainty': 'With a certainty of',
    'packs wanted': 'Packs due',
    'packs ordered': 'Packs within the limits',
    'price of a pack': 'Price of a pack',
    total: 'Total',
    'chance that the order is used up in time': 'Chance that it is used in time',
    'expected waste of the order': 'Expected waste of the order',
  },
  orders: (count: number) =>
    count === 0 ? 'none yet, as stated' : counted(count, 'order', 'orders'),
  dayUnit: 'days',
  flags: {
    'smallest order above what is used before it expires':
      'The smallest order is more than is used before it expires',
    'reorder point above what is used before it expires':
      'The reorder point is above what is used before it expires',
    'usable life shorter than lead time and review': 'It lives shorter than it takes to come',
    'comes already expired': 'It comes expired already',
    'may run out before it comes': 'May run out before it comes',
    'levels set by hand': 'Levels set by hand',
    'price not known': 'Price not known',
    'lead time of zero days': 'Taken to come the same day',
    'no use expected': 'No use is expected',
  },
  bounds: {
    'minimum order': 'smallest order',
    'price break': 'price step',
    expiry: 'expiry',
    'shelf room': 'room on the shelf',
    budget: 'budget',
  },
  boundBy: (bounds: string) => `Bound by: ${bounds}`,
  shaped: {
    'left out for the budget': (w: { readonly packs: string; readonly what: string }) =>
      `${w.packs} of ${w.what} left out for the budget.`,
    'filled up to the minimum order': (w: { readonly missing: string }) =>
      `Filled up with what is due soon: ${w.missing} were missing to the smallest order.`,
    'minimum order not reached': (w: { readonly missing: string }) =>
      `${w.missing} are missing to the smallest order, and nothing else is due soon.`,
    'filled up to free freight': (w: Record<'missing' | 'cost' | 'freight', string>) =>
      `Filled up to free freight: buying ${w.missing} early costs ${w.cost}, freight ${w.freight}.`,
    'freight is cheaper than filling up': (w: Record<'missing' | 'cost' | 'freight', string>) =>
      `Freight of ${w.freight} is cheaper than buying ${w.missing} early (${w.cost}).`,
    'free freight not within reach': (w: { readonly missing: string }) =>
      `${w.missing} are missing to free freight, and nothing else is due soon.`,
  },
  outlook: {
    title: 'Without and with the order',
    hint: (days: number) => `Over the next ${days} days, first expiry first, with random use.`,
    without: 'Without',
    with: 'With it',
    stockOut: 'Chance to run out',
    short: 'Missing on average',
    wasted: 'Expires on average',
    stock: 'On the shelf on average',
  },
  assumedTitle: 'Taken for granted',
  assumed: {
    'no use yet': (days: number) => `No use is on record in ${counted(days, 'day', 'days')}.`,
    'few uses': (days: number) =>
      `Used on ${counted(days, 'day', 'days')} only, so the plain method forecasts it.`,
    'short history': (days: number) =>
      `The history has ${counted(days, 'day', 'days')} only, so the plain method forecasts it.`,
    'died out': (days: number) =>
      `It seems to have died out: no use for ${counted(days, 'day', 'days')}.`,
    'left out as one-off or retake': (amount: string) =>
      `${amount} are left out as one-off events or retakes.`,
    'shortfalls counted as use': (amount: string) =>
      `${amount} used while the book had none count as use.`,
  },
  lead: {
    stated: (days: number, by: 'supplier' | 'practice') =>
      `${counted(days, 'working day', 'working days')} as ` +
      `${by === 'supplier' ? 'the supplier states' : 'the practice assumes'}; ` +
      'no orders on record yet.',
    seen: (orders: number, share: string, days: number) =>
      `Seen from ${counted(orders, 'order', 'orders')}; the stated ` +
      `${counted(days, 'working day', 'working days')} still ` +
      `${days === 1 ? 'weighs' : 'weigh'} ${share}.`,
    open: (open: number) => `${counted(open, 'order has', 'orders have')} not come in full yet.`,
  },
  instead: {
    title: 'Instead, if you agree',
    hint: 'Never taken by itself.',
    kinds: {
      'another pack': 'Another pack',
      'another shade': 'Another shade',
      'another consumable': 'May stand in',
    },
    spare: (amount: string) => `${amount} to spare on the shelf`,
    noSpare: 'nothing to spare on the shelf',
    price: (price: string, unit: string) => `${price} per ${unit}`,
  },
};
