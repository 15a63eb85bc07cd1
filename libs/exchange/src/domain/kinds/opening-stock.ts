import { amount, type Column, moreThanNothing, text } from '../column.js';
import { CONSUMABLE_NAME_COLUMNS } from './consumables.js';

const WHAT_LOT: readonly Column[] = [
  {
    key: 'presentation',
    type: text(200),
    heading: { en: 'Pack', de: 'Packung' },
    also: ['presentation', 'package', 'gebinde', 'verpackung'],
    help: {
      en: 'May be left blank where the consumable has only one pack in use.',
      de: 'Darf leer sein, wenn das Material nur eine Packung in Gebrauch hat.',
    },
    example: 'One 4 g syringe',
  },
  {
    key: 'lotNumber',
    type: text(60),
    heading: { en: 'Lot', de: 'Charge' },
    also: ['lot number', 'lot no', 'batch', 'batch number', 'chargennummer', 'chargen nr', 'ch b'],
    help: {
      en: 'As the label states it; blank when it states none. Format the column as text.',
      de: 'Wie sie auf dem Etikett steht; leer, wenn keine da steht. Die Spalte als Text formatieren.',
    },
    example: 'L2604',
  },
  {
    key: 'expiresOn',
    type: { is: 'date' },
    heading: { en: 'Expires on', de: 'Verfällt am' },
    also: [
      'expiry',
      'expiry date',
      'use by',
      'best before',
      'verfall',
      'verfallsdatum',
      'ablaufdatum',
    ],
    help: {
      en: 'A date cell or 2027-06-30; blank when the label states none.',
      de: 'Eine Datumszelle oder 2027-06-30; leer, wenn keines auf dem Etikett steht.',
    },
    example: '2027-06-30',
  },
  {
    key: 'location',
    type: text(120),
    required: true,
    heading: { en: 'Location', de: 'Lagerort' },
    also: ['place', 'ort', 'standort', 'where'],
    help: {
      en: 'Where it lies. It must be in the book already.',
      de: 'Wo es liegt. Er muss schon im Buch stehen.',
    },
    example: 'Drawer 2 in room 1',
  },
];

const HOW_MUCH: readonly Column[] = [
  {
    key: 'packs',
    type: { is: 'whole', min: 1, max: 100_000 },
    heading: { en: 'Packs', de: 'Packungen' },
    also: ['number of packs', 'anzahl packungen', 'packages'],
    help: {
      en: 'Whole packs. Either this or the quantity.',
      de: 'Ganze Packungen. Entweder dies oder die Menge.',
    },
    example: '3',
  },
  {
    key: 'quantity',
    type: moreThanNothing('1000000000'),
    heading: { en: 'Quantity', de: 'Menge' },
    also: ['on hand', 'amount', 'qty', 'bestand', 'stock'],
    help: {
      en: 'In stock units, e.g. 2.5 g left in a syringe. Either this or packs.',
      de: 'In Lagereinheiten, z. B. 2,5 g Rest einer Spritze. Entweder dies oder Packungen.',
    },
  },
  {
    key: 'packPrice',
    type: amount(),
    heading: { en: 'Paid per pack', de: 'Bezahlt je Packung' },
    also: ['price', 'cost', 'price per pack', 'purchase price', 'preis', 'einkaufspreis'],
    help: {
      en: 'What a full pack cost; the list price when this and the value are blank.',
      de: 'Was eine volle Packung kostete; der Listenpreis, wenn dies und der Wert fehlen.',
    },
    example: '72.00',
  },
  {
    key: 'value',
    type: amount(),
    heading: { en: 'Value', de: 'Wert' },
    also: ['stock value', 'total value', 'warenwert', 'bestandswert', 'total cost'],
    help: {
      en: 'What the whole row is worth; by the price per pack when left blank.',
      de: 'Was die ganze Zeile wert ist; nach dem Preis je Packung, wenn nichts da steht.',
    },
  },
];

const SINCE_WHEN: readonly Column[] = [
  {
    key: 'openedOn',
    type: { is: 'date' },
    heading: { en: 'Opened on', de: 'Geöffnet am' },
    also: ['opened', 'date opened', 'anbruch', 'geöffnet', 'angebrochen am'],
    help: {
      en: 'For one opened container only; then give the quantity that is left.',
      de: 'Nur für einen geöffneten Behälter; dann die verbliebene Menge angeben.',
    },
  },
  {
    key: 'useBy',
    type: { is: 'date' },
    heading: { en: 'Opened, use by', de: 'Geöffnet, verwenden bis' },
    also: ['use by after opening', 'aufbrauchen bis'],
    help: {
      en: 'Of an opened container, if it is not what the life after opening says.',
      de: 'Eines geöffneten Behälters, falls es nicht aus der Haltbarkeit nach Öffnen folgt.',
    },
  },
  {
    key: 'receivedOn',
    type: { is: 'date' },
    heading: { en: 'Received on', de: 'Erhalten am' },
    also: ['received', 'delivery date', 'lieferdatum', 'wareneingang', 'eingang'],
    help: {
      en: 'When it came; the day of the import when left blank.',
      de: 'Wann es kam; der Tag der Übernahme, wenn nichts da steht.',
    },
    example: '2026-05-04',
  },
  {
    key: 'supplier',
    type: text(200),
    heading: { en: 'Supplier', de: 'Lieferant' },
    also: ['vendor', 'händler', 'bezugsquelle'],
    help: {
      en: 'Who delivered it; the supplier of the pack when left blank.',
      de: 'Wer es lieferte; der Lieferant der Packung, wenn nichts da steht.',
    },
    example: 'Fernmoor Supply',
  },
  {
    key: 'lotStatus',
    type: {
      is: 'choice',
      words: {
        released: ['ok', 'frei', 'freigegeben'],
        quarantined: ['quarantine', 'quarantäne', 'gesperrt'],
        recalled: ['recall', 'rückruf', 'zurückgerufen'],
      },
    },
    heading: { en: 'Lot status', de: 'Status der Charge' },
    also: ['status', 'chargenstatus'],
    help: {
      en: 'released, quarantined or recalled; released when left blank.',
      de: 'freigegeben, Quarantäne oder Rückruf; freigegeben, wenn nichts da steht.',
    },
  },
  {
    key: 'rowKey',
    type: text(120),
    heading: { en: 'Row key', de: 'Zeilenschlüssel' },
    also: ['key', 'schlüssel', 'id', 'row id'],
    help: {
      en: 'Any text; only needed to tell apart two rows that are alike in everything that names them.',
      de: 'Beliebiger Text; nur nötig, um zwei Zeilen zu unterscheiden, die sonst dasselbe meinen.',
    },
  },
];

export const OPENING_STOCK_COLUMNS: readonly Column[] = [
  ...CONSUMABLE_NAME_COLUMNS,
  ...WHAT_LOT,
  ...HOW_MUCH,
  ...SINCE_WHEN,
];
