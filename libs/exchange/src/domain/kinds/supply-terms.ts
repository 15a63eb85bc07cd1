import { WEEKDAYS } from '#lib/purchasing';
import { amount, type Column, text } from '../column.js';

const DAY_WORDS: Readonly<Record<(typeof WEEKDAYS)[number], readonly string[]>> = {
  monday: ['mon', 'mo', 'montag'],
  tuesday: ['tue', 'tu', 'di', 'dienstag'],
  wednesday: ['wed', 'we', 'mi', 'mittwoch'],
  thursday: ['thu', 'th', 'do', 'donnerstag'],
  friday: ['fri', 'fr', 'freitag'],
  saturday: ['sat', 'sa', 'samstag', 'sonnabend'],
  sunday: ['sun', 'su', 'so', 'sonntag'],
};

/** What a supplier asks for; columns of the list of suppliers. */
export const SUPPLY_TERM_COLUMNS: readonly Column[] = [
  {
    key: 'leadDays',
    type: { is: 'whole', min: 0, max: 250 },
    heading: { en: 'Delivers in working days', de: 'Liefert in Werktagen' },
    also: ['lead time', 'lead days', 'lead time days', 'lieferzeit', 'lieferzeit tage', 'werktage'],
    help: {
      en: 'As the supplier states it; as the practice has it when left blank.',
      de: 'Wie der Lieferant sie nennt; wie die Praxis es hat, wenn nichts da steht.',
    },
    example: '3',
  },
  {
    key: 'orderCost',
    type: amount(),
    heading: { en: 'Order line costs', de: 'Bestellzeile kostet' },
    also: ['order cost', 'cost per order line', 'bestellkosten'],
    help: {
      en: 'What a line of an order costs in work; as the practice has it when left blank.',
      de: 'Was eine Bestellzeile an Arbeit kostet; wie die Praxis es hat, wenn nichts da steht.',
    },
  },
  {
    key: 'minimumOrder',
    type: amount(),
    heading: { en: 'Minimum order', de: 'Mindestbestellung' },
    also: ['minimum order value', 'least order', 'mindestbestellwert', 'mindestwert'],
    help: {
      en: 'The least value of the goods of an order.',
      de: 'Der kleinste Warenwert einer Bestellung.',
    },
    example: '50.00',
  },
  {
    key: 'freight',
    type: amount(),
    heading: { en: 'Freight', de: 'Versand' },
    also: ['shipping', 'delivery charge', 'freight cost', 'versandkosten', 'fracht', 'porto'],
    help: { en: 'Of one order.', de: 'Einer Bestellung.' },
    example: '7.90',
  },
  {
    key: 'freeFreightFrom',
    type: amount(),
    heading: { en: 'Freight free from', de: 'Versand frei ab' },
    also: ['free freight from', 'free shipping from', 'versandkostenfrei ab', 'frei haus ab'],
    help: {
      en: 'The value of the goods from which freight is free.',
      de: 'Der Warenwert, ab dem der Versand frei ist.',
    },
    example: '150.00',
  },
  {
    key: 'workingDays',
    type: { is: 'choices', words: DAY_WORDS },
    heading: { en: 'Works on', de: 'Arbeitet am' },
    also: ['working days', 'delivery days', 'weekdays', 'arbeitstage', 'liefertage', 'wochentage'],
    help: {
      en: 'monday; tuesday and so on, or mon, tue. Monday to Friday when left blank.',
      de: 'Montag; Dienstag und so weiter, oder Mo, Di. Montag bis Freitag, wenn nichts da steht.',
    },
    example: 'monday; tuesday; wednesday; thursday; friday',
  },
];

/** Days on which suppliers are closed besides: one row for each closure. */
export const CLOSURE_COLUMNS: readonly Column[] = [
  {
    key: 'supplier',
    type: text(200),
    required: true,
    heading: { en: 'Supplier', de: 'Lieferant' },
    also: ['name', 'vendor', 'händler'],
    help: { en: 'It must be in the book already.', de: 'Er muss schon im Buch stehen.' },
    example: 'Fernmoor Supply',
  },
  {
    key: 'firstDay',
    type: { is: 'date' },
    required: true,
    heading: { en: 'Closed from', de: 'Geschlossen von' },
    also: ['first day', 'from', 'start', 'beginn', 'von', 'erster tag'],
    help: {
      en: 'The first day; by it and the supplier a closure is known again.',
      de: 'Der erste Tag; an ihm und dem Lieferanten wird sie wiedererkannt.',
    },
    example: '2026-12-24',
  },
  {
    key: 'lastDay',
    type: { is: 'date' },
    heading: { en: 'Closed until', de: 'Geschlossen bis' },
    also: ['last day', 'until', 'to', 'end', 'ende', 'bis', 'letzter tag'],
    help: {
      en: 'Included; the first day itself for a single day. Needed for a new closure.',
      de: 'Mitgerechnet; bei einem Tag der erste selbst. Nötig bei neuen freien Tagen.',
    },
    example: '2027-01-02',
  },
  {
    key: 'note',
    type: text(200),
    heading: { en: 'Why', de: 'Warum' },
    also: ['reason', 'grund', 'anlass'],
    help: { en: 'Free text.', de: 'Freier Text.' },
    example: 'Turn of the year',
  },
];
