import type { Text } from '../text.js';
import { fieldWords } from './service-words.js';

export const app: Text['app'] = {
  name: 'Traybook',
  claim: 'Das Buch über alles, was auf das Tray kommt.',
  caution:
    'Alle Zahlen sind Planungshilfen. Gebrauchsanweisung, örtliche Regeln und fachliche Verantwortung gehen vor.',
};

export const nav: Text['nav'] = {
  label: 'Bereiche',
  skip: 'Zum Inhalt springen',
  today: 'Heute',
  chairside: 'Am Stuhl',
  visits: 'Besuche',
  shelves: 'Regale',
  ordering: 'Bestellen',
  orderingScreens: {
    now: 'Jetzt bestellen',
    items: 'Alle Artikel',
    orders: 'Bestellungen',
    suppliers: 'Lieferanten',
    whatIf: 'Was wäre, wenn',
    proof: 'Beweis',
  },
  costs: 'Kosten',
  quotes: 'Angebote',
  trace: 'Herkunft',
  setup: 'Einrichtung',
  setupSections: { goods: 'Was Sie kaufen', work: 'Was Sie tun', practice: 'Ihre Praxis' },
  setupScreens: {
    consumables: 'Verbrauchsmaterial',
    suppliers: 'Lieferanten',
    locations: 'Lagerorte',
    ordering: 'Bestellen',
    templates: 'Vorlagen',
    fees: 'Honorare',
    plans: 'Versicherungen',
    balances: 'Restbeträge',
    rates: 'Stuhlkosten',
    people: 'Personen',
    practice: 'Praxis',
    messages: 'Nachrichten',
    files: 'Dateien',
  },
  soon: 'Dieser Bereich entsteht gerade.',
};

export const account: Text['account'] = {
  title: 'Angemeldet',
  open: 'Konto und Einstellungen',
  language: 'Sprache',
  theme: 'Darstellung',
  themes: { auto: 'Wie Gerät', light: 'Hell', dark: 'Dunkel' },
  signOut: 'Abmelden',
  roles: {
    assistant: 'Assistenz',
    manager: 'Praxismanagement',
    dentist: 'Zahnärztin/Zahnarzt',
    auditor: 'Prüfung',
    owner: 'Inhaberin/Inhaber',
  },
};

export const units: Text['units'] = {
  g: { one: 'g', other: 'g' },
  mL: { one: 'ml', other: 'ml' },
  cm: { one: 'cm', other: 'cm' },
  piece: { one: 'Stück', other: 'Stück' },
  use: { one: 'Anwendung', other: 'Anwendungen' },
  days: { one: 'Tag', other: 'Tage' },
  packs: { one: 'Packung', other: 'Packungen' },
};

export const ui: Text['ui'] = {
  busy: 'Einen Moment …',
  retry: 'Noch einmal versuchen',
  cancel: 'Abbrechen',
  save: 'Speichern',
  close: 'Schließen',
  showPassword: 'Passwort zeigen oder verbergen',
  back: 'Zurück',
  print: 'Drucken',
  all: 'Alle',
  none: 'keine',
  notStated: 'nicht angegeben',
  search: 'Suchen',
  clear: 'Leeren',
  required: 'Bitte ausfüllen',
  decimal: 'Bitte eine Zahl schreiben, z. B. 0,06',
  choose: 'Bitte auswählen',
  showing: (rows) => `${rows} Zeilen`,
  firstPage: 'Erste Seite',
  nextPage: 'Nächste Seite',
  sortedBy: (column) => `Nach ${column} sortieren`,
  emptyList: 'Hier ist noch nichts',
  emptySearch: 'Nichts gefunden',
  emptySearchHint: 'Einen Filter wegnehmen oder nach weniger suchen.',
  reversal: {
    title: 'Wirklich stornieren?',
    explain: 'Es wird nichts gelöscht. Eine Gegenbuchung nennt diese Buchung.',
    reason: 'Warum',
    confirm: 'Stornieren',
    keep: 'So lassen',
  },
};

export const problems: Text['problems'] = {
  title: 'Das hat nicht geklappt',
  fields: 'Bitte die markierten Felder ansehen.',
  dismiss: 'Meldung schließen',
  unreachable: 'Der Dienst ist nicht erreichbar. Bitte das Netz prüfen und noch einmal versuchen.',
  notFound: 'Unter dieser Adresse ist nichts.',
  notFoundHint: 'Vielleicht ein Tippfehler, oder es gehört zu einer anderen Praxis.',
  notAllowed: 'Diesen Bereich darf Ihre Rolle nicht öffnen.',
  notAllowedHint: 'Wenn Sie ihn brauchen, fragen Sie die Inhaberin oder den Inhaber.',
  crash: 'Diese Ansicht ist stehen geblieben.',
  crashHint: 'Nichts Gebuchtes ist verloren. Bitte die Seite neu laden.',
  home: 'Zum Anfang',
  codes: {
    busy: 'Gerade buchen mehrere zugleich, oder die Datenbank antwortet nicht. Bitte noch einmal.',
    forbidden: 'Das darf Ihre Rolle nicht.',
    not_found: 'Das gibt es in dieser Praxis nicht (mehr).',
    idempotency_key_reused:
      'Diese Buchung wurde schon mit anderem Inhalt gesendet. Bitte neu beginnen.',
    internal_error: 'Auf unserer Seite ist etwas schiefgegangen. Es wurde nichts gebucht.',
  },
  fieldWords,
  requestId: (id) => `Anfrage ${id}`,
};
