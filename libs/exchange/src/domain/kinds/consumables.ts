import { amount, type Column, moreThanNothing, text } from '../column.js';
import { ACTIVE } from './suppliers.js';

/** By these a consumable is known again, in whichever file it is named. */
export const CONSUMABLE_NAME_COLUMNS: readonly Column[] = [
  {
    key: 'consumable',
    type: text(200),
    required: true,
    heading: { en: 'Consumable', de: 'Verbrauchsmaterial' },
    also: [
      ...['name', 'item', 'product', 'material', 'consumable name', 'description'],
      ...['artikel', 'produkt', 'bezeichnung', 'materialname'],
    ],
    help: {
      en: 'The name. With shade, size and grit it says which consumable is meant.',
      de: 'Der Name. Mit Farbe, Größe und Körnung sagt er, welches Material gemeint ist.',
    },
    example: 'Universal paste',
  },
  {
    key: 'shade',
    type: text(80),
    heading: { en: 'Shade', de: 'Farbe' },
    also: ['colour', 'color', 'zahnfarbe', 'farbton'],
    help: { en: 'Free text.', de: 'Freier Text.' },
    example: 'Body 2',
  },
  {
    key: 'size',
    type: text(80),
    heading: { en: 'Size', de: 'Größe' },
    also: ['groesse', 'dimension', 'abmessung'],
    help: { en: 'Free text.', de: 'Freier Text.' },
  },
  {
    key: 'grit',
    type: text(80),
    heading: { en: 'Grit', de: 'Körnung' },
    also: ['koernung', 'grain'],
    help: { en: 'Free text.', de: 'Freier Text.' },
  },
];

const WHAT_IT_IS: readonly Column[] = [
  {
    key: 'category',
    type: text(80),
    heading: { en: 'Category', de: 'Kategorie' },
    also: ['group', 'gruppe', 'warengruppe', 'class'],
    help: { en: 'Needed for a new consumable.', de: 'Nötig bei einem neuen Material.' },
    example: 'composite',
  },
  {
    key: 'stockUnit',
    type: {
      is: 'choice',
      words: {
        g: ['gram', 'grams', 'gramm'],
        mL: ['ml', 'millilitre', 'milliliter'],
        piece: ['pieces', 'pc', 'pcs', 'stück', 'stk', 'stueck'],
        cm: ['centimetre', 'centimeter', 'zentimeter'],
        use: ['uses', 'anwendung', 'anwendungen'],
      },
    },
    heading: { en: 'Stock unit', de: 'Lagereinheit' },
    also: ['unit', 'einheit', 'unit of measure', 'mengeneinheit'],
    help: {
      en: 'g, mL, piece, cm or use: what its quantities are counted in. Needed for a new consumable.',
      de: 'g, mL, Stück, cm oder Anwendung: worin gezählt wird. Nötig bei einem neuen Material.',
    },
    example: 'g',
  },
  {
    key: 'opacity',
    type: text(80),
    heading: { en: 'Opacity', de: 'Opazität' },
    also: ['opazitaet', 'deckkraft'],
    help: { en: 'Free text.', de: 'Freier Text.' },
  },
  {
    key: 'viscosity',
    type: text(80),
    heading: { en: 'Viscosity', de: 'Viskosität' },
    also: ['viskositaet'],
    help: { en: 'Free text.', de: 'Freier Text.' },
  },
  {
    key: 'lifeAfterOpening',
    type: { is: 'whole', min: 1, max: 3650 },
    heading: { en: 'Life after opening', de: 'Haltbar nach Öffnen' },
    also: ['use within', 'period after opening', 'aufbrauchfrist', 'haltbarkeit nach öffnung'],
    help: {
      en: 'A whole number; the next column says of what.',
      de: 'Eine ganze Zahl; die nächste Spalte sagt, wovon.',
    },
    example: '6',
  },
  {
    key: 'lifeUnit',
    type: {
      is: 'choice',
      words: { day: ['days', 'tag', 'tage'], month: ['months', 'monat', 'monate'] },
    },
    heading: { en: 'Life unit', de: 'Haltbar in' },
    also: ['life after opening unit', 'einheit der haltbarkeit'],
    help: { en: 'day or month.', de: 'Tag oder Monat.' },
    example: 'month',
  },
  {
    key: 'reorderAt',
    type: amount(),
    heading: { en: 'Order at', de: 'Bestellen bei' },
    also: ['reorder at', 'reorder point', 'minimum', 'min', 'meldebestand', 'mindestbestand'],
    help: { en: 'Stock units left.', de: 'Verbliebene Lagereinheiten.' },
    example: '4',
  },
  {
    key: 'reorderUpTo',
    type: amount(),
    heading: { en: 'Order up to', de: 'Bestellen bis' },
    also: ['reorder up to', 'maximum', 'max', 'höchstbestand', 'sollbestand', 'target'],
    help: { en: 'Stock units that should be there.', de: 'Lagereinheiten, die da sein sollen.' },
    example: '12',
  },
  {
    key: 'density',
    type: moreThanNothing('100'),
    heading: { en: 'Density g/cm3', de: 'Dichte g/cm3' },
    also: ['density', 'dichte', 'density g/cm³', 'dichte g/cm³'],
    help: { en: 'Of a paste, in g/cm3.', de: 'Einer Paste, in g/cm3.' },
    example: '2.0',
  },
  {
    ...ACTIVE,
    key: 'consumableActive',
    heading: { en: 'Consumable in use', de: 'Verbrauchsmaterial in Gebrauch' },
    also: ['active', 'aktiv'],
  },
];

const HOW_IT_IS_BOUGHT: readonly Column[] = [
  {
    key: 'presentation',
    type: text(200),
    heading: { en: 'Pack', de: 'Packung' },
    also: ['presentation', 'package', 'packaging', 'pack name', 'gebinde', 'verpackung'],
    help: {
      en: 'How it is bought. One row for each pack; leave blank for a consumable without one.',
      de: 'Wie es gekauft wird. Je Packung eine Zeile; leer bei einem Material ohne Packung.',
    },
    example: 'One 4 g syringe',
  },
  {
    key: 'supplier',
    type: text(200),
    heading: { en: 'Supplier', de: 'Lieferant' },
    also: ['vendor', 'händler', 'bezugsquelle'],
    help: {
      en: 'Who usually delivers it. It must be in the book already.',
      de: 'Wer es gewöhnlich liefert. Er muss schon im Buch stehen.',
    },
    example: 'Fernmoor Supply',
  },
  {
    key: 'dispensing',
    type: {
      is: 'choice',
      words: {
        'multi-use': ['multi use', 'multiuse', 'mehrfach', 'mehrfachgebrauch'],
        'single-dose': ['single dose', 'single use', 'einzeldosis', 'einmal'],
        'by-piece': ['by piece', 'stückweise', 'einzeln'],
      },
    },
    heading: { en: 'Use', de: 'Gebrauch' },
    also: ['dispensing', 'entnahme', 'abgabe', 'kind of container'],
    help: {
      en: 'multi-use (syringe, bottle), single-dose (capsule) or by-piece (wedges). Needed for a new pack.',
      de: 'mehrfach (Spritze, Flasche), Einzeldosis (Kapsel) oder stückweise (Keile). Nötig bei einer neuen Packung.',
    },
    example: 'multi-use',
  },
  {
    key: 'containersPerPack',
    type: { is: 'whole', min: 1, max: 100_000 },
    heading: { en: 'Containers per pack', de: 'Behälter je Packung' },
    also: ['pack size', 'containers', 'packungsgröße', 'anzahl je packung', 'units per pack'],
    help: { en: 'Needed for a new pack.', de: 'Nötig bei einer neuen Packung.' },
    example: '1',
  },
  {
    key: 'contentPerContainer',
    type: moreThanNothing(),
    heading: { en: 'Content per container', de: 'Inhalt je Behälter' },
    also: ['content', 'inhalt', 'content per unit', 'füllmenge'],
    help: {
      en: 'In stock units. Needed for a new pack.',
      de: 'In Lagereinheiten. Nötig bei einer neuen Packung.',
    },
    example: '4',
  },
  {
    key: 'deviceIdentifier',
    type: text(100),
    heading: { en: 'GTIN', de: 'GTIN' },
    also: ['device identifier', 'udi-di', 'ean', 'barcode', 'strichcode', 'artikelcode'],
    help: {
      en: 'As it is read from the label of the pack. Format the column as text.',
      de: 'Wie sie vom Etikett der Packung gelesen wird. Die Spalte als Text formatieren.',
    },
  },
  {
    key: 'articleCode',
    type: text(60),
    heading: { en: 'Article code', de: 'Artikelnummer' },
    also: ['article number', 'order number', 'item code', 'sku', 'bestellnummer', 'artikel nr'],
    help: {
      en: 'What the supplier calls it on orders.',
      de: 'Wie es beim Lieferanten auf Bestellungen heißt.',
    },
    example: 'UP-B2-4',
  },
  {
    key: 'listPrice',
    type: amount('1000000'),
    heading: { en: 'Price per pack', de: 'Preis je Packung' },
    also: ['price', 'list price', 'preis', 'listenpreis', 'pack price', 'packungspreis'],
    help: {
      en: 'In the currency of the practice, the number alone.',
      de: 'In der Währung der Praxis, nur die Zahl.',
    },
    example: '72.00',
  },
  {
    ...ACTIVE,
    key: 'presentationActive',
    heading: { en: 'Pack in use', de: 'Packung in Gebrauch' },
    also: ['presentation active'],
  },
];

export const CONSUMABLE_COLUMNS: readonly Column[] = [
  ...CONSUMABLE_NAME_COLUMNS,
  ...WHAT_IT_IS,
  ...HOW_IT_IS_BOUGHT,
];
