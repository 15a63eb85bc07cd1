import type { Text } from '../text.js';

const counted = (count: number, one: string, many: string) =>
  count === 1 ? `1 ${one}` : `${count} ${many}`;

export const ordering: Text['ordering'] = {
  now: {
    title: 'Jetzt bestellen',
    lead: (day) => `Was am ${day} fällig ist: eine Bestellung je Lieferant, jede Zeile mit Grund.`,
    empty: 'Nichts ist fällig',
    emptyHint:
      'Alles liegt über seinem Bestellpunkt. Was als Nächstes kommt, steht unter „Alle Artikel“.',
    first: 'Noch nichts, womit sich rechnen lässt',
    firstHint:
      'Sobald Materialien, ihre Packungen und einige Besuche im Buch sind, steht hier mit Gründen, ' +
      'was zu bestellen ist.',
    toConsumables: 'Materialien eingeben',
    toItems: 'Alle Artikel ansehen',
    noSupplier: 'Lieferant nicht angegeben',
    noSupplierHint: 'Beim Material angeben, wer es verkauft; dann lässt es sich bestellen.',
    budgetLeft: 'Rest des Monatsbudgets',
    allOrders: 'Alles zusammen',
    goods: 'Ware',
    freight: 'Versand',
    total: 'Summe',
    least: 'Mindestbestellung',
    missing: (amount) => `${amount} fehlen zur Mindestbestellung.`,
    ready: 'Bereit',
    tooSmall: 'Unter der Mindestbestellung',
    changed: 'Von Ihnen geändert',
    make: 'Bestellung anlegen',
    makeFor: (supplier) => `Bestellung anlegen bei ${supplier}`,
    made: (number) => `Bestellung ${number} liegt als Entwurf vor.`,
    packs: 'Packungen',
    packsOf: (what) => `Packungen von ${what}`,
    proposed: (packs) => `vorgeschlagen: ${packs}`,
    early: (packs) => `davon ${packs} früher, um die Bestellung zu füllen`,
    wholePacks: (least) => `0 oder eine ganze Zahl ab ${least}`,
    nothing: 'Alle Zeilen stehen auf 0 Packungen.',
    noPrice: 'Preis unbekannt',
    details: 'Zahlen und andere Wege',
    stuck: 'Fällig, aber in keiner Bestellung',
    stuckHint: 'Hier steht etwas im Weg; jede Zeile sagt, was.',
    stuckWhy: {
      'no offer': 'Niemand hat angegeben, wie es gekauft wird.',
      limit: (bounds) => `Es steht im Weg: ${bounds}.`,
    },
    buying: 'Packungen und Lieferanten dazu',
  },
  why: (w) =>
    `${w.there} vorhanden und unterwegs${w.owed === null ? '' : `, ${w.owed} Besuchen geschuldet`}: ` +
    `Bestand netto ${w.position}` +
    (w.expiring === null
      ? '. '
      : `; davon laufen etwa ${w.expiring} wohl ab, bevor neue Ware kommen kann. `) +
    (w.byHand
      ? `Der Bestellpunkt von ${w.point} ist von Hand gesetzt; in ${w.lead} Tagen Lieferzeit und ` +
        `${w.review} Tagen bis zum nächsten Blick gehen etwa ${w.use} weg.`
      : `Der Bestellpunkt ist ${w.point}: In ${w.lead} Tagen Lieferzeit und ${w.review} Tagen bis zum ` +
        `nächsten Blick gehen etwa ${w.use} weg, dazu ${w.safety} für eine Sicherheit von ${w.service}.`),
  strip: {
    use: 'Verbrauch, bis die nächste Bestellung da sein kann (9 von 10 Fällen)',
    middle: 'Mitte',
    position: 'vorhanden und unterwegs',
    point: 'Bestellpunkt',
    words: (low, middle, high) =>
      `Bis die nächste Bestellung da sein kann: ${low} bis ${high}, in der Mitte ${middle}.`,
    label: (what) => `Verbrauch von ${what} gegen das, was da ist`,
  },
  figuresTitle: 'Die Zahlen dahinter',
  figures: {
    'usable on hand': 'Verwendbar vorhanden',
    'on order': 'Unterwegs',
    'open shortfall': 'Besuchen geschuldet',
    position: 'Bestand netto',
    'expected to expire first': 'Läuft voraussichtlich vorher ab',
    'position after expiry': 'Bestand netto ohne das',
    'mean lead time': 'Lieferung dauert im Mittel',
    'orders seen': 'Gesehen an Bestellungen',
    'review period': 'Bis zum nächsten Blick',
    'mean use in lead time and review': 'Erwarteter Verbrauch in der Zeit',
    'spread of use in lead time and review': 'Streuung dieses Verbrauchs',
    'service level': 'Gewünschte Sicherheit',
    'reorder point': 'Bestellpunkt',
    'safety stock': 'Davon zur Sicherheit',
    'use in a year': 'Verbrauch im Jahr',
    'economic order': 'Günstigste Menge nach Kosten allein',
    'usual order': 'Übliche Bestellung',
    'order up to': 'Auffüllen bis',
    'content of a pack': 'In einer Packung',
    'smallest order': 'Mindestmenge',
    'most used before expiry': 'Höchstens verbraucht vor Ablauf',
    'wanted certainty': 'Mit einer Gewissheit von',
    'packs wanted': 'Fällige Packungen',
    'packs ordered': 'Packungen in den Grenzen',
    'price of a pack': 'Preis der Packung',
    total: 'Summe',
    'chance that the order is used up in time': 'Chance, dass alles rechtzeitig weg ist',
    'expected waste of the order': 'Erwarteter Abfall der Bestellung',
  },
  orders: (count) =>
    count === 0 ? 'noch keine, wie angegeben' : counted(count, 'Bestellung', 'Bestellungen'),
  dayUnit: 'Tage',
  flags: {
    'smallest order above what is used before it expires':
      'Die Mindestmenge ist mehr, als vor dem Ablauf verbraucht wird',
    'reorder point above what is used before it expires':
      'Der Bestellpunkt liegt über dem, was vor dem Ablauf verbraucht wird',
    'usable life shorter than lead time and review': 'Es hält kürzer, als es unterwegs ist',
    'comes already expired': 'Es kommt schon abgelaufen an',
    'may run out before it comes': 'Kann ausgehen, bevor es kommt',
    'levels set by hand': 'Grenzen von Hand gesetzt',
    'price not known': 'Preis unbekannt',
    'lead time of zero days': 'Kommt angenommen am selben Tag',
    'no use expected': 'Kein Verbrauch erwartet',
  },
  bounds: {
    'minimum order': 'Mindestmenge',
    'price break': 'Preisstufe',
    expiry: 'Ablauf',
    'shelf room': 'Platz im Regal',
    budget: 'Budget',
  },
  boundBy: (bounds) => `Begrenzt durch: ${bounds}`,
  shaped: {
    'left out for the budget': (w) => `${w.packs} von ${w.what} wegen des Budgets weggelassen.`,
    'filled up to the minimum order': (w) =>
      `Aufgefüllt mit bald Fälligem: ${w.missing} fehlten zur Mindestbestellung.`,
    'minimum order not reached': (w) =>
      `${w.missing} fehlen zur Mindestbestellung, und sonst ist nichts bald fällig.`,
    'filled up to free freight': (w) =>
      `Bis zum freien Versand aufgefüllt: ${w.missing} früher zu kaufen kostet ${w.cost}, ` +
      `der Versand ${w.freight}.`,
    'freight is cheaper than filling up': (w) =>
      `Der Versand für ${w.freight} ist günstiger, als ${w.missing} früher zu kaufen (${w.cost}).`,
    'free freight not within reach': (w) =>
      `${w.missing} fehlen zum freien Versand, und sonst ist nichts bald fällig.`,
  },
  outlook: {
    title: 'Ohne und mit der Bestellung',
    hint: (days) =>
      `Über die nächsten ${days} Tage, zuerst was zuerst abläuft, mit zufälligem Verbrauch.`,
    without: 'Ohne',
    with: 'Mit',
    stockOut: 'Chance auszugehen',
    short: 'Fehlt im Mittel',
    wasted: 'Läuft im Mittel ab',
    stock: 'Im Mittel im Regal',
  },
  assumedTitle: 'Angenommen',
  assumed: {
    'no use yet': (days) => `Kein Verbrauch in ${counted(days, 'Tag', 'Tagen')} verzeichnet.`,
    'few uses': (days) =>
      `Nur an ${counted(days, 'Tag', 'Tagen')} verbraucht; daher sagt das einfache Verfahren voraus.`,
    'short history': (days) =>
      `Nur ${counted(days, 'Tag', 'Tage')} Verlauf; daher sagt das einfache Verfahren voraus.`,
    'died out': (days) =>
      `Es scheint nicht mehr gebraucht zu werden: kein Verbrauch seit ${counted(days, 'Tag', 'Tagen')}.`,
    'left out as one-off or retake': (amount) =>
      `${amount} sind als einmalig oder als Wiederholung ausgenommen.`,
    'shortfalls counted as use': (amount) =>
      `${amount}, verbraucht ohne Bestand im Buch, zählen als Verbrauch.`,
  },
  lead: {
    stated: (days, by) =>
      `${counted(days, 'Werktag', 'Werktage')}, wie ` +
      `${by === 'supplier' ? 'der Lieferant angibt' : 'die Praxis annimmt'}; ` +
      'noch keine Bestellung verzeichnet.',
    seen: (orders, share, days) =>
      `Gesehen an ${counted(orders, 'Bestellung', 'Bestellungen')}; die Angabe von ` +
      `${counted(days, 'Werktag', 'Werktagen')} zählt noch zu ${share}.`,
    open: (open) =>
      open === 1
        ? '1 Bestellung ist noch nicht ganz da.'
        : `${open} Bestellungen sind noch nicht ganz da.`,
  },
  instead: {
    title: 'Stattdessen, wenn Sie zustimmen',
    hint: 'Nie von selbst genommen.',
    kinds: {
      'another pack': 'Andere Packung',
      'another shade': 'Andere Farbe',
      'another consumable': 'Kann einspringen',
    },
    spare: (amount) => `${amount} im Regal übrig`,
    noSpare: 'im Regal nichts übrig',
    price: (price, unit) => `${price} je ${unit}`,
  },
};
