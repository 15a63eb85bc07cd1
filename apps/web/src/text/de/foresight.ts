import type { Text } from '../text.js';

const days = (n: number) => (n === 1 ? '1 Tag' : `${n} Tage`);
const orders = (n: number) => (n === 1 ? '1 Bestellung' : `${n} Bestellungen`);
const stillOpen = (n: number) => (n === 0 ? '' : ` ${orders(n)} noch offen.`);

export const foresight: Text['foresight'] = {
  whatIf: {
    title: 'Was wäre, wenn',
    lead: 'Was mehr Sicherheit kostet und was ein Großangebot wirklich spart.',
    service: 'Mehr oder weniger Sicherheit',
    serviceHint:
      'Für jede Stufe wird neu gerechnet und ein Jahr lang verfolgt: von dem aus, was heute da ist, bei gleichem Verbrauch und gleichen Lieferzeiten.',
    of: 'Für',
    wholeShelf: 'Das ganze Regal',
    empty: 'Noch nichts zu rechnen',
    emptyHint: 'Es braucht ein Material in Gebrauch und eine Packung, in der es gekauft wird.',
    measures: { 'cycle service': 'Zyklus-Servicegrad', 'fill rate': 'Mengen-Servicegrad' },
    aim: (level, measure = 'Servicegrad') => `Jetzt: ${measure} von ${level}.`,
    ownLevels: 'Jetzt: jeder Artikel mit der Stufe, die für ihn gilt.',
    stands: (stock, waste) =>
      `Im Mittel stehen ${stock} im Regal, und in einem Jahr verfallen voraussichtlich ${waste}.`,
    noPrice: 'Niemand kennt einen Preis, darum gibt es keinen Wert.',
    runsOut: (times) =>
      times === '0'
        ? 'Es geht kaum je etwas aus.'
        : times === '1'
          ? 'Einmal im Jahr geht etwas aus.'
          : `Etwa ${times}-mal im Jahr geht etwas aus.`,
    withoutPrice: (n) =>
      n === 1
        ? 'Ein Artikel hat keinen Preis und hier keinen Wert.'
        : `${n} Artikel haben keinen Preis und hier keinen Wert.`,
    panels: {
      stock: 'Mittlerer Bestand',
      waste: 'Verfällt im Jahr',
      outs: 'Geht aus, im Jahr',
      times: 'Mal',
      nowAt: (level) => `jetzt ${level}`,
      picture: (what, low, from, high, to) => `${what}: ${low} bei ${from}, ${high} bei ${to}`,
    },
    table: {
      label: 'Servicegrade',
      now: 'jetzt',
      asSet: 'Wie eingestellt',
      stock: 'Mittlerer Bestand',
      waste: 'Verfällt im Jahr',
      outs: 'Geht aus',
      reorderPoint: 'Bestellen bei',
      averageStock: 'Im Regal',
      fillRate: 'Aus dem Regal gedeckt',
    },
  },
  bulk: {
    title: 'Ein Großangebot',
    hint: 'Was von einem guten Preis bleibt, wenn Verfall, Lagern und gesparte Bestellungen mitzählen.',
    consumable: 'Material',
    pack: 'Packung',
    packs: 'Packungen',
    packPrice: 'Preis einer Packung',
    wholePacks: 'Bitte eine ganze Zahl von Packungen angeben',
    ask: 'Rechnen',
    yes: 'Lohnt sich',
    no: 'Lohnt sich nicht',
    worth: (real, paper) => `Es spart wirklich etwa ${real}; die Preisliste verspricht ${paper}.`,
    notWorth: (loss, paper) =>
      `Es kostet etwa ${loss} mehr als der übliche Einkauf, obwohl die Preisliste ${paper} verspricht.`,
    range: (low, high) => `In acht von zehn Fällen zwischen ${low} und ${high}.`,
    cover: (months, ahead) =>
      `Es reicht etwa ${months} Monate; was jetzt da ist, geht vor und reicht ${ahead} Monate.`,
    neverExpires: 'Es verfällt nicht, soweit das Buch weiß.',
    expires: (months, chance) =>
      `Es verfällt in etwa ${months} Monaten; alles ist bis dahin verbraucht mit einer Wahrscheinlichkeit von ${chance}.`,
    way: {
      label: 'Vom üblichen Preis zur wirklichen Ersparnis',
      usual: 'Dieselbe Menge wie üblich',
      offer: 'Das Angebot',
      waste: 'Was verfallen würde, zum üblichen Preis',
      keeping: 'Mehr und länger lagern',
      orders: 'Bestellungen, die wegfallen',
      real: 'Wirklich gespart',
      expectedWaste: 'Verfällt voraussichtlich',
      perUsed: (unit) => `Preis je ${unit}, das verbraucht wird`,
    },
  },
  suppliers: {
    title: 'Lieferanten',
    lead: 'Wer günstiger ist, wer schneller ist und auf wen man sich verlassen kann.',
    empty: 'Noch kein Lieferant',
    toSuppliers: 'Lieferanten eingeben',
    emptyHint:
      'Lieferanten werden in der Einrichtung angelegt; Lieferungen und Bestellungen füllen diese Seite.',
    sideBySide: 'Nebeneinander',
    since: (from, to) =>
      `Ausgaben, Packungen und Mängel vom ${from} bis zum ${to}; Bestellungen der letzten drei Jahre.`,
    supplier: 'Lieferant',
    spend: 'Ausgegeben',
    cheapest: 'Am günstigsten bei',
    inTime: 'Vollständig pünktlich',
    atOnce: 'In einer Lieferung',
    faults: 'Mangelhafte Packungen',
    notKnown: '–',
    ofAll: (part, all) => `${part} von ${all}`,
    faulty: (damaged, missing, all) => `${damaged} beschädigt, ${missing} fehlten von ${all}`,
    prices: {
      title: 'Dasselbe bei verschiedenen Lieferanten',
      hint: 'Je Einheit, zum dort zuletzt gezahlten Preis oder sonst zum Listenpreis.',
      all: 'Auch zeigen, was nur einer verkauft',
      onlyShared: 'Nur zeigen, was mehrere verkaufen',
      empty: 'Nichts wird von zweien verkauft',
      emptyHint:
        'Sobald ein Material bei einem zweiten Lieferanten gekauft wurde, stehen die Preise hier.',
      consumable: 'Material',
      supplier: 'Lieferant',
      cheapest: 'am günstigsten',
      perUnit: 'Preis',
      per: (price, unit) => `${price} je ${unit}`,
      above: 'Über dem günstigsten',
      change: 'In einem Jahr',
      pack: 'Packung',
      paid: 'Zuletzt gezahlt',
      listPrice: 'Listenpreis',
    },
    times: {
      title: 'Wie lange sie brauchen',
      hint: 'Arbeitstage des Lieferanten von der Bestellung, bis alles da war.',
      unit: 'Arbeitstage',
      key: {
        whisker: 'schnellste bis langsamste',
        band: 'Mitte bis neun von zehn',
        stated: 'wie angegeben',
      },
      onlyStated: (stated, open) =>
        `${days(stated)} angegeben; noch keine Bestellung vollständig.${stillOpen(open)}`,
      seen: ({ median, p90, complete, open, stated }) =>
        `${days(median)}, neun von zehn binnen ${p90}, aus ${orders(complete)}; ${days(stated)} angegeben.${stillOpen(open)}`,
    },
  },
  proof: {
    title: 'Beweis',
    lead: 'Ihre eigene Vergangenheit, Tag für Tag: wie berechnet bestellt worden wäre, neben den Regeln, die Sie hatten.',
    empty: 'Noch nichts nachgespielt',
    emptyHint: 'Es dauert etwa eine Minute und ändert nichts im Buch.',
    noResult: 'Hier gibt es kein Ergebnis',
    stopped: 'Der Dienst wurde vorher beendet. Bitte neu starten.',
    failed: 'Bei uns ist etwas schiefgegangen. Das Protokoll des Dienstes sagt, was.',
    start: {
      from: 'Von',
      fromHint: 'Leer: das letzte Jahr, oder so weit das Buch zurückreicht.',
      run: 'Vergangenheit nachspielen',
    },
    running: {
      label: 'Fortschritt',
      title: (from, to) => `${from} bis ${to} wird nachgespielt`,
      hint: (percent) => `${percent} erledigt. Sie können diese Seite verlassen; es geht weiter.`,
    },
    verdict: {
      days: (computed, old) =>
        computed === old
          ? `Etwas fehlte so oder so an ${old} Artikel-Tagen.`
          : `Etwas fehlte an ${computed} statt ${old} Artikel-Tagen.`,
      waste: (computed, old) =>
        computed === old ? `${old} verfielen so oder so.` : `${computed} statt ${old} verfielen.`,
      more: 'Dafür stand mehr im Regal:',
      less: 'Und es stand weniger im Regal:',
      stock: (computed, old) => `im Mittel ${computed} statt ${old}.`,
    },
    sum: 'In der Summe',
    sumHint: (items, from, to) => `${items} Artikel, ${from} bis ${to}.`,
    pairs: {
      computed: 'Berechnet',
      old: 'Wie bisher',
      days: 'Tage, an denen ein Artikel fehlte, über alle Artikel',
      items: 'Artikel, die mindestens einmal ausgingen',
      waste: 'Verfallen',
      stock: 'Mittlerer Bestand',
      orders: 'Bestellte Zeilen',
      sent: 'Abgeschickte Bestellungen',
      freight: 'Bezahlte Versandkosten',
    },
    weeks: 'Wert des Bestands, Woche für Woche',
    weeksHint: 'Beide beginnen mit dem, was wirklich da war.',
    weeksPicture: (from, to, computed, old) =>
      `Wert des Bestands vom ${from} bis zum ${to}; am Ende ${computed} berechnet, ${old} wie bisher`,
    items: {
      title: 'Artikel für Artikel',
      hint: 'Was sich am meisten unterscheidet, steht zuerst.',
      item: 'Artikel',
      which: 'Bestellt',
      days: 'Tage ohne',
      waste: 'Verfallen',
      stock: 'Mittlerer Bestand',
      orders: 'Bestellungen',
      more: 'Mehr zeigen',
      rules: {
        'typed-in levels': 'bisher: eingetippte Grenzen',
        'when empty': 'bisher: wenn nichts mehr da ist',
      },
    },
    assumed: {
      title: 'Was hier vorausgesetzt wird',
      settings: (measure = 'Servicegrad', level, review) =>
        `Berechnet: ${measure} von ${level}, Blick darauf alle ${days(Math.max(review, 1))}, mit den heutigen Einstellungen. Von Hand gesetzte Grenzen bleiben außer Acht.`,
      noLookAhead: (reckon) =>
        `An jedem Tag ist nur bekannt, was davor liegt: Verbrauch, Preise, Lieferzeiten, Haltbarkeit. Vorhersagen werden alle ${reckon} Tage neu gemacht.`,
      old: 'Wie bisher: die heute eingetippten Grenzen, Blick darauf jeden Tag; wo keine stehen, der übliche Einkauf, sobald das Regal leer ist.',
      world:
        'Beide treffen auf denselben Verbrauch, dieselben Lieferzeiten (ausgelost, immer gleich) und Ware, die so lange hält wie echte Lieferungen um diesen Tag.',
      owed: 'Besuche fanden trotzdem statt: was fehlte, wird geschuldet und von der nächsten Ware genommen.',
      notUsed: (n) => `${n} Materialien waren weder da noch in Gebrauch und bleiben außer Acht.`,
      notBought: (n) =>
        `${n} Materialien haben keine Packung, in der sie gekauft werden, und bleiben außer Acht.`,
      withoutPrice: (n) => `${n} Artikel haben keinen Preis: ihre Tage zählen, ihr Wert nicht.`,
      simple: 'Mindestbestellungen, Versandkosten und Staffelpreise spielen keine Rolle.',
      sending:
        'Berechnete Bestellungen werden je Lieferant zusammengestellt, mit Preisliste, kleinsten Packungszahlen, Mindestbestellung und Versandkosten, wie sie heute eingestellt sind; was die Mindestbestellung nicht erreicht, wird nicht abgeschickt. Wie bisher heißt ohne Mindestbestellung, aber mit Versandkosten. Was an einem Tag beim selben Lieferanten bestellt wird, kommt zusammen. Budgets spielen keine Rolle.',
      late: 'Die Haltbarkeit nach dem Öffnen wird nicht verfolgt. Spät eingetragene Besuche zählen an ihrem Tag.',
    },
    history: {
      title: 'Bisher nachgespielt',
      hint: 'Ein Ergebnis bleibt, wie es war, auch wenn die Einstellungen sich ändern.',
      when: 'Begonnen',
      days: 'Tage',
      by: 'Von',
      state: 'Stand',
      span: (from, to) => `${from} bis ${to}`,
      states: { running: 'läuft', done: 'fertig', failed: 'kein Ergebnis' },
    },
  },
};
