import { amount, type Column, moreThanNothing, percent, text } from '../column.js';
import { CONSUMABLE_NAME_COLUMNS } from './consumables.js';

/** What a consumable has of its own in planning: one row for each that differs from the practice. */
export const PLANNING_COLUMNS: readonly Column[] = [
  ...CONSUMABLE_NAME_COLUMNS,
  {
    key: 'serviceMeasure',
    type: {
      is: 'choice',
      words: {
        'cycle service': ['cycle', 'nichts fehlt bis zur lieferung'],
        'fill rate': ['fill', 'anteil des verbrauchs aus dem regal'],
      },
    },
    heading: { en: 'Service measured as', de: 'Sicherheit gemessen als' },
    also: ['service measure', 'service', 'sicherheit'],
    help: {
      en: 'cycle service or fill rate; together with the next column.',
      de: 'cycle service (nichts fehlt bis zur Lieferung) oder fill rate (Anteil aus dem Regal); mit der nächsten Spalte.',
    },
    example: 'cycle service',
  },
  {
    key: 'serviceLevel',
    type: percent('99.99'),
    heading: { en: 'Wanted service %', de: 'Gewünschte Sicherheit %' },
    also: ['service level', 'wanted service', 'servicegrad', 'gewünschte sicherheit'],
    help: { en: 'In percent, e.g. 95.', de: 'In Prozent, z. B. 95.' },
    example: '98',
  },
  {
    key: 'reviewDays',
    type: { is: 'whole', min: 0, max: 90 },
    heading: { en: 'Days between looks', de: 'Tage zwischen zwei Blicken' },
    also: ['review days', 'review period', 'prüfabstand'],
    help: {
      en: 'Days between two looks at what to order.',
      de: 'Tage zwischen zwei Blicken auf das Fällige.',
    },
  },
  {
    key: 'expiryCertainty',
    type: percent('99.99'),
    heading: { en: 'Used before expiry %', de: 'Verbraucht vor Ablauf %' },
    also: ['expiry certainty', 'gewissheit vor dem ablauf'],
    help: {
      en: 'How surely what is ordered should be used before it expires, in percent.',
      de: 'Wie sicher Bestelltes vor dem Ablauf verbraucht sein soll, in Prozent.',
    },
  },
  {
    key: 'setReorderAt',
    type: amount(),
    heading: { en: 'Order at, set by hand', de: 'Bestellen bei, von Hand gesetzt' },
    also: ['reorder at', 'reorder point', 'meldebestand'],
    help: {
      en: 'Stock units; used in place of the reckoned level.',
      de: 'Lagereinheiten; gilt anstelle der berechneten Grenze.',
    },
  },
  {
    key: 'setOrderUpTo',
    type: amount(),
    heading: { en: 'Order up to, set by hand', de: 'Bestellen bis, von Hand gesetzt' },
    also: ['order up to', 'höchstbestand'],
    help: {
      en: 'Stock units; used in place of the reckoned level.',
      de: 'Lagereinheiten; gilt anstelle der berechneten Grenze.',
    },
  },
  {
    key: 'shelfRoom',
    type: moreThanNothing('1000000000'),
    heading: { en: 'Room on the shelf', de: 'Platz im Regal' },
    also: ['shelf room', 'capacity', 'regalplatz'],
    help: {
      en: 'Stock units: the most that fits, what is on its way included.',
      de: 'Lagereinheiten: das Meiste, was hineingeht, samt dem, was unterwegs ist.',
    },
    example: '24',
  },
  {
    key: 'note',
    type: text(500),
    heading: { en: 'Why', de: 'Warum' },
    also: ['reason', 'grund', 'anlass'],
    help: { en: 'Free text.', de: 'Freier Text.' },
  },
];

const STAND_IN_NAMES: readonly Column[] = [
  {
    key: 'standIn',
    en: 'May be replaced by',
    de: 'Ersetzbar durch',
    also: ['substitute', 'ersatz'],
  },
  { key: 'standInShade', en: 'Substitute shade', de: 'Farbe des Ersatzes', also: [] },
  { key: 'standInSize', en: 'Substitute size', de: 'Größe des Ersatzes', also: [] },
  { key: 'standInGrit', en: 'Substitute grit', de: 'Körnung des Ersatzes', also: [] },
].map(({ key, en, de, also }): Column => {
  const first = key === 'standIn';
  const help = {
    en: first ? 'Offered, never taken by itself; counted in the same unit.' : 'As above.',
    de: first ? 'Wird angeboten, nie von selbst genommen; in gleicher Einheit.' : 'Wie oben.',
  };
  const example = first ? { example: 'Flowable paste' } : {};
  return {
    ...{ key, type: text(first ? 200 : 80), required: first, heading: { en, de }, also, help },
    ...example,
  };
});

/** What may stand in for what, by the word of a person: one row for each pair. */
export const SUBSTITUTE_COLUMNS: readonly Column[] = [
  ...CONSUMABLE_NAME_COLUMNS,
  ...STAND_IN_NAMES,
  {
    key: 'note',
    type: text(500),
    heading: { en: 'Why', de: 'Warum' },
    also: ['reason', 'grund'],
    help: { en: 'Free text.', de: 'Freier Text.' },
    example: 'Only where it does not show',
  },
];
