import type { Text } from '../text.js';

export const setupSuppliers: Text['setupSuppliers'] = {
  title: 'Lieferanten',
  lead: 'Wer liefert. Jede Lieferung nennt ihren Lieferanten, und jede Packung den üblichen.',
  add: 'Lieferanten hinzufügen',
  addTitle: 'Neuer Lieferant',
  columns: { name: 'Name', email: 'Bestellungen an', state: 'Stand' },
  email: 'Adresse für Bestellungen',
  emailHint: 'Eine E-Mail-Adresse. Darf leer bleiben.',
  language: 'Sprache der Bestellungen',
  languageHint: 'In der die Bestellung geschrieben ist',
  languages: { en: 'Englisch', de: 'Deutsch' },
  customerNumber: 'Unsere Kundennummer',
  badEmail: 'Das sieht nicht wie eine E-Mail-Adresse aus',
  empty: 'Noch kein Lieferant',
  emptyHint: 'Mit dem ersten lassen sich Lieferungen buchen.',
};

export const setupLocations: Text['setupLocations'] = {
  title: 'Lagerorte',
  lead: 'Wo etwas liegt. Eingerückt unter einem Ort steht, was sich aus ihm versorgt.',
  rule: 'Ist ein Raum leer, nimmt er aus dem Ort darüber, dann aus dem nächsten darüber. Was in einem Raum verbraucht wird, der sich aus dem Lager versorgt, kommt also aus dem Lager, sobald der Raum leer ist.',
  add: 'Lagerort hinzufügen',
  addTitle: 'Neuer Lagerort',
  addBelow: (name) => `Unter ${name} hinzufügen`,
  below: 'Darunter hinzufügen',
  kind: 'Was es ist',
  kinds: { store: 'Lager', fridge: 'Kühlschrank', room: 'Raum', drawer: 'Schublade' },
  parent: 'Versorgt sich aus',
  parentHint: 'Woher etwas kommt, wenn hier nichts mehr liegt.',
  noParent: 'keinem anderen',
  drawsFrom: (name) => `versorgt sich aus ${name}`,
  showAll: 'Auch zeigen, was nicht mehr in Gebrauch ist',
  empty: 'Noch kein Lagerort',
  emptyHint: 'Zuerst das Lager, dann die Räume, die sich aus ihm versorgen.',
  tree: 'Lagerorte, wie sie sich auseinander versorgen',
  holdsStock: 'Hier liegt noch etwas. Lagern Sie es zuerst um.',
};

export const setupPractice: Text['setupPractice'] = {
  title: 'Praxis',
  lead: (currency) =>
    `Einstellungen, die für alle gelten. Jeder Preis im Buch steht in ${currency}; das bleibt so.`,
  name: 'Name der Praxis',
  timeZone: 'Zeitzone',
  notation: 'Schreibweise der Zähne',
  notations: { iso: 'ISO, zwei Ziffern (11 bis 48)', universal: 'Universal (1 bis 32)' },
  warning: 'Vor dem Verfall warnen (Tage)',
  warningHint: 'So viele Tage vor dem letzten Tag erscheint eine Charge unter Heute.',
  sharing: 'Wie gemeinsame Kosten geteilt werden',
  sharingHint:
    'Umhänge, Handschuhe und was ein Besuch sonst einmal braucht, teilen sich seine Restaurationen. Hier steht, wonach.',
  sharedBy: 'Geteilt wird',
  keys: {
    equal: 'Zu gleichen Teilen',
    minutes: 'Nach Behandlungszeit',
    surfaces: 'Nach Zahl der Flächen',
  },
  example: (total) =>
    `Zum Beispiel teilt ein Besuch mit zwei Füllungen ${total} für Umhang und Handschuhe:`,
  exampleRows: {
    first: 'Füllung auf 3 Flächen, 40 Minuten',
    second: 'Füllung auf 1 Fläche, 20 Minuten',
  },
  exampleHead: 'Restauration',
  save: 'Einstellungen speichern',
  saved: 'Die Einstellungen sind gespeichert.',
};

export const setupTokens: Text['setupTokens'] = {
  title: 'Zugangsschlüssel',
  lead: 'Mit einem Schlüssel nutzt ein eigenes Programm, etwa ein Etikettendrucker, das Buch in Ihrem Namen. Er darf, was Ihre Rolle darf.',
  add: 'Schlüssel erzeugen',
  addTitle: 'Neuer Schlüssel',
  name: 'Wofür',
  namePlaceholder: 'Etikettendrucker am Empfang',
  expires: 'Letzter Tag, an dem er gilt',
  expiresHint: 'Ohne Tag gilt er, bis Sie ihn sperren.',
  past: 'Darf nicht vergangen sein',
  columns: { name: 'Wofür', created: 'Erzeugt', expires: 'Gilt bis', state: 'Stand' },
  untilRevoked: 'Sie ihn sperren',
  states: { works: 'Gilt', expired: 'Abgelaufen', revoked: 'Gesperrt' },
  revoke: 'Sperren',
  revokeOf: (name) => `${name} sperren`,
  revokeTitle: 'Diesen Schlüssel sperren?',
  revokeWhat: (name) =>
    `Was „${name}“ benutzt, ist sofort ausgesperrt. Das lässt sich nicht zurücknehmen; erzeugen Sie dann einen neuen Schlüssel.`,
  keep: 'Behalten',
  revoked: (name) => `„${name}“ ist gesperrt.`,
  secretTitle: 'Jetzt das Geheimnis kopieren',
  secretHint:
    'Es wird nur dieses eine Mal gezeigt und nirgends aufbewahrt. Wer es hat, darf, was Sie dürfen. Behandeln Sie es wie ein Passwort.',
  copy: 'Kopieren',
  copied: 'Kopiert',
  understood: 'Ich habe es kopiert',
  empty: 'Noch kein Schlüssel',
  emptyHint: 'Erzeugen Sie einen, wenn ein Programm für Sie im Buch lesen oder schreiben soll.',
};
