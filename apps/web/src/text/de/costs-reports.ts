import type { Text } from '../text.js';

export const costReports: Text['costReports'] = {
  year: '12 Monate bis heute',
  period: (from, to) => `Vom ${from} bis zum ${to}.`,
  variances: {
    standard: 'Standard',
    actual: 'Wirklich',
    difference: 'Wirklich, abzüglich Standard',
    price: 'Preise',
    usage: 'Verbrauch',
    waste: 'Nicht im Zahn',
    wasteShare: 'Nicht im Zahn',
    retakes: 'Wiederholt',
    retakeShare: 'Wiederholt',
    dearer: (part, standard) => `${part} mehr als der Standard von ${standard}`,
    cheaper: (part, standard) => `${part} weniger als der Standard von ${standard}`,
    same: (_part, standard) => `Genau der Standard von ${standard}`,
    insideActual:
      'Was nicht im Zahn ist und was wiederholt wurde, ist Teil der wirklichen Kosten und kommt nicht dazu.',
    way: 'Vom Standard zu den wirklichen Kosten',
    wayHint:
      'Standard ist, was die Vorlagen für einen Versuch planen, zu den Preisen der letzten Lieferungen. Preise: das Verbrauchte zu dem, was stattdessen bezahlt wurde. Verbrauch: mehr oder weniger als geplant, und alles Wiederholte.',
    picture: (standard, price, usage, actual) =>
      `Vom Standard von ${standard}: Preise ${price}, Verbrauch ${usage}, zu wirklichen Kosten von ${actual}.`,
  },
  chairTime: {
    hours: (n) => `${n} Std.`,
    inMinutes: (n) => `${n} Min.`,
    minutes: (n) => `${n} Min.`,
    inUse: 'Der Kapazität in Gebrauch',
    usedOf: (used, supplied) => `${used} von ${supplied}, die die Stühle bieten`,
    chairTime: 'Zeit am Stuhl',
    chairMinutes: 'Minuten',
    each: 'Für eine',
    cost: 'Kosten der Stuhlzeit',
    withoutRate: 'Ohne Satz',
    noRate: (time) => `${time} liegen vor dem ersten Kostensatz und kosten hier nichts.`,
    noCapacity:
      'Für diesen Zeitraum gibt es keinen Kostensatz, darum kostet seine Stuhlzeit noch nichts.',
    toRates: 'Zu den Kostensätzen',
    capacity: 'Was die Stühle bieten, und was davon genutzt wurde',
    idleHint:
      'Ungenutzte Kapazität steht für sich: keine Restauration trägt sie. Genutzt und ungenutzt ergeben, was die Kapazität des Zeitraums kostete.',
    overHint:
      'Es wurde mehr gearbeitet, als die praktische Kapazität sagt. Vielleicht ist sie zu niedrig angesetzt.',
    used: 'Genutzt',
    idle: 'Ungenutzt, von keiner Restauration getragen',
    over: 'Über die Kapazität hinaus',
    supplied: 'Vorhanden',
    by: (groups) => `Kosten der Stuhlzeit: ${groups}`,
    assistants: 'Zeit der Assistenz',
    assistantCost: 'Kosten der Assistenz',
    assistantCapacity: 'Was die Assistenz bietet, und was davon genutzt wurde',
  },
  prices: {
    together: 'Was Preisänderungen an den Kosten taten',
    togetherHint:
      'Das Verbrauchte zu seinen Preisen, abzüglich dessen, was es vorher gekostet hätte.',
    rose: 'Jetzt teurer',
    fell: 'Jetzt günstiger',
    byConsumable: 'Nach Verbrauchsmaterial',
    byConsumableHint:
      'Was am meisten mehr kostete, steht zuerst. Die Linie ist der Preis über den Zeitraum.',
    consumable: 'Verbrauchsmaterial',
    line: 'Preis im Zeitraum',
    before: 'Vorher',
    now: 'Jetzt',
    change: 'Änderung',
    effect: 'Wirkung auf die Kosten',
    per: (unit) => `je ${unit}`,
    latest: (n) =>
      `Dies sind die letzten ${n}; ein Verbrauchsmaterial wählen, um alle seine Preise zu sehen.`,
    changes: 'Jeder neue Preis',
    changesHint:
      'Für eine Einheit des Bestands, mit Fracht und Nachlass. Die Lieferung brachte den Preis.',
    day: 'Geliefert',
    delivery: 'Lieferung',
    price: 'Neuer Preis',
    used: 'Seitdem verbraucht',
    empty: 'In diesem Zeitraum hat sich kein Preis geändert.',
    emptyHint:
      'Einen längeren Zeitraum wählen. Preise werden von Lieferung zu Lieferung verglichen.',
  },
  habits: {
    together: 'Diese zusammen kosten',
    aYear: (money) => `${money} im Jahr`,
    thisPeriod: (money) => `${money} in diesem Zeitraum`,
    inPeriod: (cost, material) => `${cost} in diesem Zeitraum, von ${material} Material insgesamt`,
    each: (money) => `Einmal kostet ${money}.`,
    yearHint: 'Ein Jahr zählt 365 Tage, wenn es so weitergeht.',
    title: 'Die teuersten Gewohnheiten',
    figures: (times, quantity) => `Anzahl: ${times}; zusammen ${quantity}.`,
    attempts: (n) => (n === '1' ? '1 weiterer Versuch' : `${n} weitere Versuche`),
    ofTemplate: (name) => `Mit der Vorlage ${name}.`,
    ofMaterial: (share) => `Das sind ${share} des Materials.`,
    linkOf: (link, name) => `${link}: ${name}`,
    toRestorations: 'Die Restaurationen dahinter',
    toTemplate: 'Was die Vorlage sagt',
    toMovements: 'Die Buchungen dahinter',
    byKind: 'Alles von jeder Art',
    byKindHint: 'Auch was zu klein ist, um in der Liste zu stehen.',
    empty: 'In diesem Zeitraum ging nichts verloren.',
    emptyHint: 'Einen längeren Zeitraum wählen, oder sich freuen.',
    kinds: {
      retakes: {
        name: 'Wiederholt',
        change:
          'Sie öffnen und suchen, was sie gemeinsam haben: eine Farbe, ein Zimmer, eine Tageszeit. Jede vermiedene spart ihren ganzen zweiten Versuch.',
      },
      wrongShade: {
        name: 'Falsche Farbe geöffnet',
        change:
          'Die Farbe laut sagen, bevor ein Behälter geöffnet wird, und ähnliche Farben in der Schublade trennen.',
      },
      openTooLong: {
        name: 'Zu lange offen',
        change: 'Einen offenen Behälter für mehrere Zimmer nutzen oder kleinere kaufen.',
      },
      expired: {
        name: 'Verfallen',
        change:
          'Weniger auf einmal bestellen, die Meldegrenze senken, und nach vorn stellen, was zuerst verfällt.',
      },
      other: {
        name: 'Aus anderen Gründen weggeworfen',
        change: 'Die Buchungen ansehen: das meiste hat oft eine Ursache und einen Ort.',
      },
      residue: {
        name: 'Rest von Einzeldosen',
        change:
          'Nachsehen, ob es eine kleinere Größe gibt, und Preise je verbrauchter Menge vergleichen, nicht je gekaufter. Was für einen Menschen bestimmt ist, bleibt für einen; ein Rest ist darum nicht zu vermeiden.',
      },
      more: {
        name: 'Mehr als die Vorlage',
        change:
          'Entweder genügt weniger, oder die Vorlage stimmt nicht: dann eine Fassung machen, die sagt, was verbraucht wird.',
      },
    },
  },
  suggestion: {
    title: 'Was die Vorlage sagt, und was verbraucht wurde',
    over: (version, n) => `Verglichen über die letzten ${n} Restaurationen mit Fassung ${version}.`,
    unused: (version) =>
      `Fassung ${version} ist in Gebrauch, und noch kein Besuch hat sie verwendet. Die ersten Besuche werden zeigen, wie sie passt.`,
    per: (driver) => `je ${driver}`,
    chosenShade: 'Die gewählten Farben',
    chairTime: 'Zeit am Stuhl',
    assistants: 'Zeit der Assistenz',
    minutesOf: (n) => `${n} Min.`,
    says: (says, n, used) => `Die Vorlage sagt ${says}, die letzten ${n} verbrauchten ${used}.`,
    saysOnly: (says) => `Die Vorlage sagt ${says}. Davon wurde noch nichts verbraucht.`,
    took: (says, n, took) => `Die Vorlage sagt ${says}, die letzten ${n} dauerten ${took}.`,
    suggested: (amount) => `Die nächste Fassung würde ${amount} sagen.`,
    unplanned: (n, all, amount) =>
      `Nicht geplant, aber ${n} von ${all} verbrauchten es, im Mittel ${amount}.`,
    newLine: 'Die nächste Fassung hätte eine Zeile dafür.',
    ownUnit: (n) => `${n} in der Einheit der Farbe`,
    kept: 'Ungefähr wie die Vorlage',
    agrees: 'Die Vorlage sagt, was verbraucht wird: nichts zu ändern.',
    others: 'Es weicht ab. Wer Vorlagen ändern darf, kann hier eine Fassung daraus machen.',
    make: (version) => `Fassung ${version} anlegen`,
    makeHint: 'Bevor etwas angelegt wird, ist jeder Unterschied zu sehen.',
    confirm: (version, name) => `Fassung ${version} von ${name}`,
    confirmHint: (version) =>
      `Neue Besuche planen damit. Besuche mit Fassung ${version} behalten sie.`,
    differences: 'Was anders wäre',
    what: 'Was',
    now: (version) => `Fassung ${version}`,
    becomes: (version) => `Fassung ${version}`,
    notPlanned: 'nicht geplant',
    note: (note) => `Ihre Notiz wird sein: ${note}`,
    leave: 'So lassen',
    made: (version, name) => `Fassung ${version} von ${name} ist jetzt in Gebrauch.`,
    open: 'Vorlage öffnen',
  },
  contributions: {
    middle: 'Die in der Mitte lässt übrig',
    eightOfTen: (low, high) => `8 von 10 lassen ${low} bis ${high}`,
    fee: 'Honorare',
    writeOff: 'Abgeschrieben',
    income: 'Einnahmen',
    material: 'Material',
    contribution: 'Deckungsbeitrag',
    perHour: 'Je Stuhlstunde',
    fromFeeList: (n, all, money) =>
      `${n} von ${all} haben keine erfasste Rechnung und zählen nach der Gebührenliste: ${money} der Summen.`,
    withoutFee: (n, money) =>
      `Ohne jedes Honorar: ${n}. Ihr Material von ${money} steht in keiner dieser Summen.`,
    way: 'Vom Honorar zu dem, was bleibt',
    wayHint: 'Was bleibt, bezahlt Stuhlzeit, Menschen, Räume und Gewinn.',
    wayPicture: (fee, left) => `Von Honoraren von ${fee} zu einem Deckungsbeitrag von ${left}.`,
    spread: (groups) => `Wie weit die Beiträge auseinanderliegen: ${groups}`,
    spreadHint: 'Im Balken liegen 8 von 10 Restaurationen, der Strich ist die in der Mitte.',
    noFees: (n) => `Restaurationen ohne bekanntes Honorar: ${n}.`,
    noFeesHint:
      'Beim Besuch erfassen, was berechnet wurde, oder ein Honorar für Vorlage und Grund in die Gebührenliste eintragen.',
    toFees: 'Zur Gebührenliste',
    picture: (rows) => `${rows} Zeilen mit Beiträgen. Die Tabelle darunter hat alle Zahlen.`,
  },
  supplies: {
    shareOf: 'Anteil an',
    bases: { fees: 'Honorare', income: 'Einnahmen (ohne Abschreibung)' },
    share: {
      fees: 'Material als Anteil der Honorare',
      income: 'Material als Anteil der Einnahmen',
    },
    of: (material, base) => `${material} von ${base}`,
    bought: 'Gekauft',
    waste: 'Weggeworfen',
    material: 'Verbraucht',
    materialShare: 'Verbraucht, Anteil',
    boughtShare: 'Gekauft, Anteil',
    wasteShare: 'Weggeworfen, Anteil',
    months: 'Monat für Monat',
    monthsHint:
      'Verbraucht ist, was die Restaurationen nahmen; gekauft, was die Lieferungen des Monats kosteten. Dazwischen liegt der Bestand.',
    picture: (months) =>
      `Der Anteil des Materials in ${months} Monaten. Die Tabelle darunter hat alle Zahlen.`,
    empty: 'In diesem Zeitraum wurde nichts berechnet, verbraucht oder gekauft.',
    emptyHint: 'Einen längeren Zeitraum wählen.',
  },
};
