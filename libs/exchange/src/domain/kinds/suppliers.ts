import { type Column, text } from '../column.js';
import { SUPPLY_TERM_COLUMNS } from './supply-terms.js';

export const ACTIVE: Column = {
  key: 'active',
  type: { is: 'flag' },
  heading: { en: 'In use', de: 'In Gebrauch' },
  also: ['active', 'aktiv', 'used', 'verwendet'],
  help: {
    en: 'yes or no; yes when left blank.',
    de: 'ja oder nein; ja, wenn nichts da steht.',
  },
  example: 'yes',
};

export const SUPPLIER_COLUMNS: readonly Column[] = [
  {
    key: 'name',
    type: text(200),
    required: true,
    heading: { en: 'Supplier', de: 'Lieferant' },
    also: ['name', 'supplier name', 'vendor', 'company', 'firma', 'lieferantenname', 'händler'],
    help: {
      en: 'The name; by it a supplier is known again, in any case.',
      de: 'Der Name; an ihm wird ein Lieferant wiedererkannt, groß oder klein geschrieben.',
    },
    example: 'Fernmoor Supply',
  },
  {
    key: 'email',
    type: text(254),
    heading: { en: 'E-mail', de: 'E-Mail' },
    also: ['mail', 'email address', 'mailadresse', 'e-mail-adresse', 'order e-mail'],
    help: { en: 'Where orders go.', de: 'Wohin Bestellungen gehen.' },
    example: 'orders@fernmoor.example',
  },
  {
    key: 'language',
    type: {
      is: 'choice',
      words: { en: ['english', 'englisch'], de: ['german', 'deutsch'] },
    },
    heading: { en: 'Language of orders', de: 'Sprache der Bestellungen' },
    also: ['language', 'sprache', 'order language'],
    help: { en: 'en or de; en when left blank.', de: 'en oder de; en, wenn nichts da steht.' },
    example: 'en',
  },
  {
    key: 'customerNumber',
    type: text(60),
    heading: { en: 'Customer number', de: 'Kundennummer' },
    also: ['customer no', 'account number', 'kunden nr', 'kd nr'],
    help: {
      en: 'The number of the practice at the supplier.',
      de: 'Die Nummer der Praxis beim Lieferanten.',
    },
    example: '20417',
  },
  ...SUPPLY_TERM_COLUMNS,
  ACTIVE,
];
