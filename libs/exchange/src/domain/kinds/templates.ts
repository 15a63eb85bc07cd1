import { amount, type Column, moreThanNothing, text } from '../column.js';
import { CONSUMABLE_NAME_COLUMNS } from './consumables.js';
import { ACTIVE } from './suppliers.js';

const WHICH_TEMPLATE: readonly Column[] = [
  {
    key: 'template',
    type: text(200),
    required: true,
    heading: { en: 'Procedure template', de: 'Vorlage' },
    also: ['behandlungsvorlage', 'template', 'procedure', 'behandlung', 'name'],
    help: {
      en: 'The name. One row for each line; rows with the same name are one template, in their order.',
      de: 'Der Name. Je Zeile der Vorlage eine Zeile; gleiche Namen sind eine Vorlage, der Reihe nach.',
    },
    example: 'Front tooth composite',
  },
  {
    key: 'minutes',
    type: { is: 'whole', min: 0, max: 1440 },
    heading: { en: 'Chair minutes', de: 'Stuhlminuten' },
    also: ['minutes', 'minuten', 'chair time', 'behandlungszeit'],
    help: {
      en: 'Chair time of one restoration. Needed for a new template.',
      de: 'Stuhlzeit einer Füllung. Nötig bei einer neuen Vorlage.',
    },
    example: '40',
  },
  {
    key: 'assistantMinutes',
    type: { is: 'whole', min: 0, max: 1440 },
    heading: { en: 'Assistant minutes', de: 'Assistenzminuten' },
    also: ['assistant time', 'assistenzzeit'],
    help: {
      en: 'The chair minutes when left blank.',
      de: 'Die Stuhlminuten, wenn nichts da steht.',
    },
  },
  {
    key: 'layerThickness',
    type: moreThanNothing('100'),
    heading: { en: 'Layer thickness mm', de: 'Schichtstärke mm' },
    also: ['layer thickness', 'schichtstärke', 'schichtdicke'],
    help: { en: '2 when left blank.', de: '2, wenn nichts da steht.' },
  },
  {
    key: 'versionNote',
    type: text(500),
    heading: { en: 'Note of the version', de: 'Notiz zur Fassung' },
    also: ['version note', 'reason of the version'],
    help: { en: 'Why it was written.', de: 'Warum sie geschrieben wurde.' },
  },
  ACTIVE,
];

const WHAT_IS_USED: readonly Column[] = [
  {
    key: 'driver',
    type: {
      is: 'choice',
      words: {
        visit: ['termin', 'besuch'],
        'staff member': ['person', 'mitarbeiter'],
        'front segment or quadrant': ['region', 'quadrant', 'frontsegment oder quadrant'],
        tooth: ['zahn'],
        restoration: ['füllung', 'restauration'],
        surface: ['fläche'],
        'proximal surface': ['approximalfläche'],
        layer: ['schicht'],
        mm3: ['mm³', 'kubikmillimeter'],
        shade: ['farbe'],
        attempt: ['versuch'],
        cycle: ['durchgang'],
      },
    },
    heading: { en: 'Counted by', de: 'Gezählt je' },
    also: ['driver', 'per', 'je', 'pro'],
    help: {
      en: 'visit, staff member, front segment or quadrant, tooth, restoration, surface, proximal surface, layer, mm3, shade, attempt or cycle.',
      de: 'Termin, Person, Region, Zahn, Füllung, Fläche, Approximalfläche, Schicht, mm3, Farbe, Versuch oder Durchgang.',
    },
    example: 'restoration',
  },
  {
    key: 'placed',
    type: amount('100000'),
    heading: { en: 'Placed', de: 'Im Zahn' },
    also: ['in the tooth', 'gelegt'],
    help: {
      en: 'Stays in the tooth; 0 when left blank.',
      de: 'Bleibt im Zahn; 0, wenn nichts da steht.',
    },
    example: '0.04',
  },
  {
    key: 'dispensed',
    type: moreThanNothing('100000'),
    heading: { en: 'Dispensed', de: 'Entnommen' },
    also: ['quantity', 'amount', 'menge'],
    help: { en: 'Leaves the container.', de: 'Verlässt den Behälter.' },
    example: '0.06',
  },
  {
    key: 'everyAttempt',
    type: { is: 'flag' },
    heading: { en: 'Again in a retake', de: 'Bei Wiederholung erneut' },
    also: ['every attempt', 'jeder versuch'],
    help: { en: 'yes or no; no when left blank.', de: 'ja oder nein; nein, wenn nichts da steht.' },
    example: 'yes',
  },
  {
    key: 'reasons',
    type: text(100),
    heading: { en: 'Only for', de: 'Nur bei' },
    also: ['reasons', 'gründe', 'reason', 'grund'],
    help: {
      en: 'decay, fracture, wear, cosmetic, with a semicolon between; all when left blank.',
      de: 'decay, fracture, wear, cosmetic, mit Strichpunkt dazwischen; alle, wenn nichts da steht.',
    },
  },
  {
    key: 'sharesDose',
    type: { is: 'flag' },
    heading: { en: 'Shares a dose', de: 'Teilt eine Dosis' },
    also: ['shared dose'],
    help: {
      en: 'yes or no; as usual for its category when left blank.',
      de: 'ja oder nein; wie bei der Kategorie üblich, wenn nichts da steht.',
    },
  },
  {
    key: 'anaesthetic',
    type: { is: 'flag' },
    heading: { en: 'For anaesthesia', de: 'Zur Betäubung' },
    also: ['anaesthetic', 'anästhesie', 'betäubung'],
    help: {
      en: 'yes or no; as usual for its category when left blank.',
      de: 'ja oder nein; wie bei der Kategorie üblich, wenn nichts da steht.',
    },
  },
];

const CONSUMABLE: readonly Column[] = CONSUMABLE_NAME_COLUMNS.map((column) =>
  column.key === 'consumable'
    ? {
        key: column.key,
        type: column.type,
        heading: column.heading,
        also: ['item', 'product', 'material', 'artikel'],
        help: {
          en: 'As in the book; blank: the shades that are chosen for the restoration.',
          de: 'Wie im Buch; leer: die Farben, die für die Füllung gewählt werden.',
        },
      }
    : column,
);

export const TEMPLATE_COLUMNS: readonly Column[] = [
  ...WHICH_TEMPLATE,
  ...CONSUMABLE,
  ...WHAT_IS_USED,
];
