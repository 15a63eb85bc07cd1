interface Seen {
  readonly median: number;
  readonly p90: number;
  readonly complete: number;
  readonly open: number;
  readonly stated: number;
}

const days = (n: number) => (n === 1 ? '1 day' : `${n} days`);
const orders = (n: number) => (n === 1 ? '1 order' : `${n} orders`);
const stillOpen = (n: number) => (n === 0 ? '' : ` ${orders(n)} still open.`);

export const foresight = {
  whatIf: {
    title: 'What if',
    lead: 'What more service would cost, and what a bulk offer really saves.',
    service: 'More or less service',
    serviceHint:
      'For each level, ordering is reckoned anew and followed for a year, from what is there today, over the same chances of use and delivery.',
    of: 'For',
    wholeShelf: 'The whole shelf',
    empty: 'Nothing to reckon with yet',
    emptyHint: 'It takes a consumable that is in use and a pack in which it is bought.',
    measures: { 'cycle service': 'Cycle service', 'fill rate': 'Fill rate' } as Readonly<
      Record<string, string>
    >,
    aim: (level: string, measure = 'Service') => `Now: ${measure.toLowerCase()} of ${level}.`,
    ownLevels: 'Now: each item with the level that is set for it.',
    stands: (stock: string, waste: string) =>
      `On average ${stock} stand on the shelf, and ${waste} are expected to expire in a year.`,
    noPrice: 'Nobody knows a price, so there is no value.',
    runsOut: (times: string) =>
      times === '0'
        ? 'Hardly anything ever runs out.'
        : times === '1'
          ? 'Something runs out once a year.'
          : `Something runs out about ${times} times a year.`,
    withoutPrice: (n: number) =>
      n === 1
        ? 'One item has no price and no value here.'
        : `${n} items have no price and no value here.`,
    panels: {
      stock: 'Average stock',
      waste: 'Expires in a year',
      outs: 'Runs out in a year',
      times: 'times',
      nowAt: (level: string) => `now ${level}`,
      picture: (what: string, low: string, from: string, high: string, to: string) =>
        `${what}: ${low} at ${from}, ${high} at ${to}`,
    },
    table: {
      label: 'Service levels',
      now: 'now',
      asSet: 'As set',
      stock: 'Average stock',
      waste: 'Expires in a year',
      outs: 'Runs out',
      reorderPoint: 'Order at',
      averageStock: 'On the shelf',
      fillRate: 'Met from the shelf',
    },
  },
  bulk: {
    title: 'A bulk offer',
    hint: 'What is left of a good price once expiry, keeping and saved orders are counted.',
    consumable: 'Consumable',
    pack: 'Pack',
    packs: 'Packs',
    packPrice: 'Price of a pack',
    wholePacks: 'Please write a whole number of packs',
    ask: 'Reckon',
    yes: 'Worth it',
    no: 'Not worth it',
    worth: (real: string, paper: string) =>
      `It really saves about ${real}; the price list promises ${paper}.`,
    notWorth: (loss: string, paper: string) =>
      `It costs about ${loss} more than buying as usual, though the price list promises ${paper}.`,
    range: (low: string, high: string) => `Eight times in ten between ${low} and ${high}.`,
    cover: (months: string, ahead: string) =>
      `It lasts about ${months} months; what is there now goes first, for ${ahead} months.`,
    neverExpires: 'It does not expire, as far as the book knows.',
    expires: (months: string, chance: string) =>
      `It expires in about ${months} months, and all of it is used by then with a chance of ${chance}.`,
    way: {
      label: 'From the usual price to the real saving',
      usual: 'The same quantity as usual',
      offer: 'The offer',
      waste: 'What would expire, at the usual price',
      keeping: 'Keeping more for longer',
      orders: 'Orders that are not needed',
      real: 'Really saved',
      expectedWaste: 'Expected to expire',
      perUsed: (unit: string) => `Price of each ${unit} that is used`,
    },
  },
  suppliers: {
    title: 'Suppliers',
    lead: 'Who is cheaper, who is faster, and on whom one can rely.',
    empty: 'No supplier yet',
    emptyHint: 'Suppliers are entered in the set-up; deliveries and orders fill this page.',
    toSuppliers: 'Enter suppliers',
    sideBySide: 'Side by side',
    since: (from: string, to: string) =>
      `Spend, packs and faults from ${from} to ${to}; orders of the last three years.`,
    supplier: 'Supplier',
    spend: 'Spent',
    cheapest: 'Cheapest for',
    inTime: 'Complete in time',
    atOnce: 'In one delivery',
    faults: 'Faulty packs',
    notKnown: '–',
    ofAll: (part: string, all: string) => `${part} of ${all}`,
    faulty: (damaged: string, missing: string, all: string) =>
      `${damaged} damaged, ${missing} missing of ${all}`,
    prices: {
      title: 'The same at different suppliers',
      hint: 'Per stock unit, from the price last paid there, or else its list price.',
      all: 'Show what only one sells as well',
      onlyShared: 'Show only what several sell',
      empty: 'Nothing is sold by two suppliers',
      emptyHint: 'Once a consumable was bought from a second supplier, the prices stand here.',
      consumable: 'Consumable',
      supplier: 'Supplier',
      cheapest: 'cheapest',
      perUnit: 'Price',
      per: (price: string, unit: string) => `${price} per ${unit}`,
      above: 'Above the cheapest',
      change: 'In a year',
      pack: 'Pack',
      paid: 'Last paid',
      listPrice: 'list price',
    },
    times: {
      title: 'How long they take',
      hint: 'Working days of the supplier from the order until all of it had come.',
      unit: 'working days',
      key: {
        whisker: 'fastest to slowest',
        band: 'middle to nine in ten',
        stated: 'as stated',
      },
      onlyStated: (stated: number, open: number) =>
        `${days(stated)} stated; no order complete yet.${stillOpen(open)}`,
      seen: ({ median, p90, complete, open, stated }: Seen) =>
        `${days(median)}, nine in ten within ${p90}, from ${orders(complete)}; ${days(stated)} stated.${stillOpen(open)}`,
    },
  },
  proof: {
    title: 'Proof',
    lead: 'Your own history, day by day: as the computed ordering would have had it, beside the rules you had.',
    empty: 'Nothing replayed yet',
    emptyHint: 'A replay takes a minute or so. It changes nothing in the book.',
    noResult: 'This replay has no result',
    stopped: 'The service was stopped before it ended. Start it again.',
    failed: 'Something went wrong on our side. The log of the service says what.',
    start: {
      from: 'From',
      fromHint: 'Empty: the last year, or as far back as the book goes.',
      run: 'Replay the history',
    },
    running: {
      label: 'Progress of the replay',
      title: (from: string, to: string) => `Replaying ${from} to ${to}`,
      hint: (percent: string) => `${percent} done. You may leave this screen; it goes on.`,
    },
    verdict: {
      days: (computed: string, old: string) =>
        computed === old
          ? `Something was missing on ${old} item-days either way.`
          : `Something was missing on ${computed} item-days instead of ${old}.`,
      waste: (computed: string, old: string) =>
        computed === old ? `${old} expired either way.` : `${computed} instead of ${old} expired.`,
      more: 'For that more stood on the shelf:',
      less: 'And less stood on the shelf:',
      stock: (computed: string, old: string) => `${computed} on average instead of ${old}.`,
    },
    sum: 'In sum',
    sumHint: (items: string, from: string, to: string) => `${items} items, ${from} to ${to}.`,
    pairs: {
      computed: 'Computed',
      old: 'As before',
      days: 'Days on which an item was missing, over all items',
      items: 'Items that ran out at least once',
      waste: 'Expired',
      stock: 'Average stock',
      orders: 'Lines ordered',
      sent: 'Orders sent',
      freight: 'Freight paid',
    },
    weeks: 'Stock value, week by week',
    weeksHint: 'Both start with what was really there.',
    weeksPicture: (from: string, to: string, computed: string, old: string) =>
      `Stock value from ${from} to ${to}; at the end ${computed} computed, ${old} as before`,
    items: {
      title: 'Item by item',
      hint: 'What differs most stands first.',
      item: 'Item',
      which: 'Ordering',
      days: 'Days missing',
      waste: 'Expired',
      stock: 'Average stock',
      orders: 'Orders',
      more: 'Show more',
      rules: {
        'typed-in levels': 'before: levels typed in',
        'when empty': 'before: when empty',
      } as Readonly<Record<string, string>>,
    },
    assumed: {
      title: 'What this takes for granted',
      settings: (measure = 'service', level: string, review: number) =>
        `Computed: ${measure.toLowerCase()} of ${level}, looked at every ${days(Math.max(review, 1))}, with today's settings. Levels set by hand are left aside.`,
      noLookAhead: (reckon: number) =>
        `On each day only what lies before it is known: use, prices, lead times, how long goods last. Forecasts are made anew every ${reckon} days.`,
      old: 'As before: the levels typed in today, looked at every day; where nobody typed any, the usual purchase once the shelf is empty.',
      world:
        'Both meet the same use, the same delivery times (drawn by chance, always the same) and goods that last as long as real deliveries around that day.',
      owed: 'Visits took place anyway: what was missing is owed and taken from the next goods.',
      notUsed: (n: number) => `${n} consumables were neither there nor used and are left out.`,
      notBought: (n: number) =>
        `${n} consumables have no pack in which they are bought and are left out.`,
      withoutPrice: (n: number) =>
        `${n} items have no price: their days count, their value does not.`,
      simple: 'Minimum orders, freight and price breaks play no part.',
      sending:
        'Computed orders are put together per supplier, with its price list, smallest packs, minimum order and freight as they are set today; one that does not reach the minimum is not sent. As before, no minimum was kept, but freight is counted. What is ordered of a supplier on one day comes together. Budgets play no part.',
      late: 'Life after opening is not followed. Visits entered late count on their day.',
    },
    history: {
      title: 'Replays so far',
      hint: 'A result stays as it was, whatever the settings are now.',
      when: 'Started',
      days: 'Days',
      by: 'By',
      state: 'State',
      span: (from: string, to: string) => `${from} to ${to}`,
      states: { running: 'running', done: 'done', failed: 'no result' } as Readonly<
        Record<string, string>
      >,
    },
  },
};
