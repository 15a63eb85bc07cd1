import type { Text } from '../text.js';

type Low = Parameters<Text['today']['sentences']['low']>[0];

function lowPoint({ at, by, computed }: Low): string {
  if (by === 'set in planning') return `der Bestellpunkt von ${at} ist von Hand gesetzt.`;
  if (by === 'typed in') {
    const typed = `bestellt wird ab ${at}, wie beim Material eingetragen.`;
    if (computed === null) return typed;
    const verdict = computed.orders ? 'schlägt es auch vor' : 'schlägt noch nichts vor';
    return `${typed} Aus dem Verbrauch berechnet wären es ${computed.point}: Die Bestellplanung ${verdict}.`;
  }
  if (computed === null) return `der Bestellpunkt ist ${at}.`;
  const { use, days, service, on } = computed;
  return (
    `der Bestellpunkt von ${at} ist ${on === null ? '' : `am ${on} `}berechnet: In ${days} Tagen, bis ` +
    `beim nächsten Blick Bestelltes da ist, gehen etwa ${use} weg; der Rest ist für eine Sicherheit ` +
    `von ${service}.`
  );
}

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
    runsOut: ({ what, amount, use, day, chance, hit, more, seen }) => {
      const here =
        seen === null
          ? null
          : `in ${seen.share} von 100 Fällen da, wie in ${seen.orders} Bestellungen gesehen`;
      const begin =
        amount === null
          ? `${what}: nichts verwendbar, und ${here === null ? `vor ${day} kann nichts hier sein` : `heute Bestelltes ist bis ${day} ${here}`}`
          : `${amount} ${what} reichen vielleicht nicht bis ${day}; heute Bestelltes ${here === null ? 'kann dann hier sein' : `ist bis dahin ${here}`}`;
      return `${begin}. Vorher werden ${use} erwartet; mit ${chance} % Wahrscheinlichkeit fehlt etwas.${
        hit.length === 0
          ? ''
          : ` Vorgemerkt und betroffen: ${hit.join('; ')}${more === 0 ? '' : `; und ${more} weitere`}.`
      }`;
    },
    bookedVisit: (day, chart, visits) =>
      `${day}, ${chart === null ? (visits === 1 ? '1 Besuch' : `${visits} Besuche`) : `Kartei ${chart}`}`,
    late: (what, lines) =>
      lines === 1
        ? `${what} ist nicht gekommen.`
        : `${what} und ${lines === 2 ? 'eine weitere Zeile' : `${lines - 1} weitere Zeilen`} sind nicht gekommen.`,
    low: (low) =>
      `${low.usable} ${low.what} verwendbar${
        low.expiring === null
          ? ''
          : `; davon laufen etwa ${low.expiring} wohl ab, bevor neue Ware kommen kann`
      }; ${lowPoint(low)}${low.heldBack ? ' Eine Grenze in der Planung hält die Bestellung zurück.' : ''}`,
  },
  inOrdering: 'In der Bestellplanung ansehen',
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
    'expected to expire first': 'Läuft wohl vorher ab',
    'computed reorder point': 'Aus Verbrauch berechnet',
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
    heldBack: 'Ansehen, was zurückhält',
    look: 'Ansehen',
  },
};
