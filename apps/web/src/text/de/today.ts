import type { Text } from '../text.js';

export const today: Text['today'] = {
  title: 'Heute',
  lead: (day) => `Was am ${day} zu tun ist, das Dringendste zuerst.`,
  count: (n) => (n === 1 ? '1 Sache zu tun' : `${n} Dinge zu tun`),
  filter: {
    kind: 'Art',
    within: 'Warnung vor Verfall',
    category: 'Kategorie',
    q: 'Suchen',
  },
  within: (days) => `${days} Tage voraus`,
  withinPractice: 'Wie eingestellt',
  more: 'Mehr zeigen',
  allOfKind: 'Alle davon zeigen',
  empty: 'Heute braucht Sie hier nichts.',
  emptyHint: 'Nichts ist zurückgerufen, verfallen, offen oder geht zur Neige.',
  kinds: {
    'recalled lot on hand': 'Gesperrte Chargen noch im Regal',
    'expired on shelf': 'Im Regal verfallen',
    'opened too long': 'Zu lange offen',
    'open shortfall': 'Verbraucht, aber nicht im Buch',
    'runs out before delivery': 'Geht vor einer Lieferung aus',
    'overdue order': 'Bestellt und überfällig',
    'below reorder point': 'Geht zur Neige',
    'expires within N days': 'Verfällt bald',
  },
  why: {
    'recalled lot on hand':
      'Niemand darf sie verwenden. Zurücksenden, oder die Charge wird freigegeben.',
    'expired on shelf': 'Niemand darf sie verwenden. Ausbuchen, damit das Regal stimmt.',
    'opened too long': 'Die Zeit nach dem Öffnen ist vorbei. Ausbuchen.',
    'open shortfall':
      'Besuche haben mehr verbraucht, als im Buch stand. Es fehlt eine Lieferung oder eine Zählung.',
    'runs out before delivery':
      'Auch was heute bestellt wird, kann zu spät kommen: jetzt bestellen oder herumfragen.',
    'overdue order':
      'Das hätte kommen sollen. Beim Lieferanten nachfragen, oder eintragen, was er sagt.',
    'below reorder point': 'Auf oder unter dem Punkt, an dem die Praxis bestellt.',
    'expires within N days': 'Dorthin bringen, wo sie zuerst verbraucht werden.',
  },
  order: (number, supplier) => `Bestellung ${number}, ${supplier}`,
  lot: (number) => `Charge ${number}`,
  lotNotStated: 'Charge nicht angegeben',
  statuses: { released: 'freigegeben', quarantined: 'gesperrt', recalled: 'zurückgerufen' },
  sentences: {
    held: ({ amount, what, lot, place }, status) =>
      `${amount} ${what} (${lot}) in ${place}: Die Charge ist ${status}. Niemand darf sie verwenden.`,
    expired: ({ amount, what, lot, place, day }) =>
      `${amount} ${what} (${lot}) in ${place}: verfallen am ${day}.`,
    openTooLong: ({ amount, what, lot, place, day }) =>
      `${amount} ${what} (${lot}) in ${place}: geöffnet verwendbar bis ${day}.`,
    expires: ({ amount, what, lot, place, day }, days) =>
      `${amount} ${what} (${lot}) in ${place}: verwendbar bis ${day}, letzter Tag ${
        days === 0 ? 'heute' : days === 1 ? 'morgen' : `in ${days} Tagen`
      }.`,
    shortfall: (what, amount, visits) =>
      `${visits === 1 ? 'Ein Besuch hat' : `${visits} Besuche haben`} ${amount} ${what} verbraucht, ohne dass dafür Vorrat im Buch steht.`,
    runsOut: ({ what, amount, use, day, chance, hit, more }) =>
      `${amount === null ? `${what}: nichts verwendbar, und vor ${day} kann nichts hier sein` : `${amount} ${what} reichen vielleicht nicht bis ${day}, wenn heute Bestelltes hier sein kann`}: bis dahin werden ${use} erwartet; mit ${chance} % Wahrscheinlichkeit fehlt etwas.${
        hit.length === 0
          ? ''
          : ` Vorgemerkt und betroffen: ${hit.join('; ')}${more === 0 ? '' : `; und ${more} weitere`}.`
      }`,
    bookedVisit: (day, chart, visits) =>
      `${day}, ${chart === null ? (visits === 1 ? '1 Besuch' : `${visits} Besuche`) : `Kartei ${chart}`}`,
    late: (what, lines) =>
      lines === 1
        ? `${what} ist nicht gekommen.`
        : `${what} und ${lines === 2 ? 'eine weitere Zeile' : `${lines - 1} weitere Zeilen`} sind nicht gekommen.`,
    low: (what, usable, reorderAt) =>
      `${usable} ${what} verwendbar; bestellt wird ab ${reorderAt}.`,
  },
  daysOver: 'Tage darüber',
  figures: {
    'on hand': 'Vorrat',
    'days left': 'Tage übrig',
    'open shortfall': 'Nicht im Buch',
    visits: 'Besuche',
    'estimated cost': 'Geschätzte Kosten',
    usable: 'Verwendbar',
    'on order': 'Bestellt',
    'use until delivery': 'Verbrauch bis zur Lieferung',
    'booked use': 'Davon vorgemerkt',
    'days until delivery': 'Tage bis zur Lieferung',
    chance: 'Wahrscheinlichkeit',
    'days late': 'Tage überfällig',
    'outstanding lines': 'Zeilen offen',
    'outstanding packs': 'Packungen offen',
    position: 'Verwendbar und bestellt, minus offen',
    'reorder at': 'Bestellen bei',
    'reorder up to': 'Auffüllen bis',
    'suggested packs': 'Vorschlag',
    'last price': 'Letzter Packungspreis',
    'order cost': 'Bestellwert',
  },
  snooze: {
    putOff: 'Zurückstellen',
    title: 'Zurückstellen',
    until: 'Bis',
    untilHint: 'An diesem Tag kommt es wieder.',
    reason: 'Warum es warten kann',
    between: (last) => `Einen Tag nach heute wählen, spätestens ${last}.`,
    confirm: 'Zurückstellen',
    done: (what, until) => `${what} kommt am ${until} wieder.`,
    off: (until, by, reason) => `Bis ${until} zurückgestellt von ${by}: ${reason}`,
    count: (n) => (n === 1 ? '1 Sache ist zurückgestellt.' : `${n} Dinge sind zurückgestellt.`),
    showThem: 'Zurückgestelltes zeigen',
    onlyThese: 'Nur was zurückgestellt ist.',
    back: 'Zurück zu dem, was zu tun ist',
    wake: 'Wieder aufnehmen',
    wokenReason: 'Wieder aufgenommen',
    woken: (what) => `${what} steht wieder auf der Liste.`,
  },
  actions: {
    writeOff: 'Ausbuchen',
    sendBack: 'Zurücksenden',
    decide: 'Über die Charge entscheiden',
    move: 'Umlagern',
    receive: 'Lieferung buchen',
    buying: 'Bezugsquellen ansehen',
    count: 'Zählen',
    order: 'Bestellung öffnen',
    toOrder: 'Bestellvorschläge ansehen',
    look: 'Ansehen',
  },
};
