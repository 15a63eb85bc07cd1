import { type Column, text } from '../column.js';

const WHICH_VISIT: readonly Column[] = [
  {
    key: 'day',
    type: { is: 'date' },
    required: true,
    heading: { en: 'Day', de: 'Tag' },
    also: ['date', 'visit date', 'datum', 'termin', 'appointment'],
    help: { en: 'A date cell or 2026-06-30.', de: 'Eine Datumszelle oder 2026-06-30.' },
    example: '2026-12-07',
  },
  {
    key: 'externalReference',
    type: text(120),
    heading: { en: 'Reference', de: 'Referenz' },
    also: ['external reference', 'booking', 'booking number', 'terminnummer', 'appointment id'],
    help: {
      en: 'Its name in the list it comes from. Rows with the same reference are one visit; sent again, they change it.',
      de: 'Name in der Liste, aus der er stammt. Zeilen mit derselben Referenz sind ein Termin; noch einmal gesendet, ändern sie ihn.',
    },
    example: 'A-118',
  },
  {
    key: 'visit',
    type: text(60),
    heading: { en: 'Visit', de: 'Besuch' },
    also: ['termin nr', 'visit no', 'visit number', 'group', 'terminnr'],
    help: {
      en: 'Rows with the same text here are one visit, where there is no reference.',
      de: 'Zeilen mit demselben Text sind ein Termin, wo es keine Referenz gibt.',
    },
  },
  {
    key: 'chart',
    type: text(60),
    heading: { en: 'Chart', de: 'Karte' },
    also: ['chart reference', 'chart number', 'file number', 'karteinummer', 'patientennummer'],
    help: {
      en: 'The chart reference, never a name.',
      de: 'Die Karteinummer, nie ein Name.',
    },
    example: 'C-1001',
  },
  {
    key: 'alike',
    type: { is: 'whole', min: 1, max: 200 },
    heading: { en: 'How many', de: 'Wie viele' },
    also: ['count', 'number', 'anzahl', 'alike'],
    help: {
      en: 'So many alike visits without a chart; 1 when left blank.',
      de: 'So viele gleiche Termine ohne Karte; 1, wenn nichts da steht.',
    },
    example: '1',
  },
  {
    key: 'dentist',
    type: text(200),
    heading: { en: 'Dentist', de: 'Zahnarzt' },
    also: ['zahnärztin', 'behandler', 'provider', 'clinician'],
    help: {
      en: 'The name shown, or the sign-in name.',
      de: 'Der angezeigte Name oder der Anmeldename.',
    },
  },
  {
    key: 'location',
    type: text(120),
    heading: { en: 'Location', de: 'Lagerort' },
    also: ['ort', 'room', 'zimmer', 'raum', 'surgery'],
    help: { en: 'The room, as in the book.', de: 'Das Zimmer, wie im Buch.' },
  },
];

const WHAT_IS_PLANNED: readonly Column[] = [
  {
    key: 'template',
    type: text(200),
    required: true,
    heading: { en: 'Procedure template', de: 'Vorlage' },
    also: ['behandlungsvorlage', 'template', 'procedure', 'treatment', 'behandlung'],
    help: {
      en: 'The name of the template, as in the book. One row for each restoration.',
      de: 'Der Name der Vorlage, wie im Buch. Je Füllung eine Zeile.',
    },
    example: 'Front tooth composite',
  },
  {
    key: 'tooth',
    type: text(10),
    heading: { en: 'Tooth', de: 'Zahn' },
    help: {
      en: 'In the notation of the practice.',
      de: 'In der Schreibweise der Praxis.',
    },
    example: '21',
  },
  {
    key: 'surfaces',
    type: text(10),
    heading: { en: 'Surfaces', de: 'Flächen' },
    also: ['surface', 'flaechen', 'fläche'],
    help: { en: 'Letters, e.g. MOD.', de: 'Buchstaben, z. B. MOD.' },
    example: 'M',
  },
  {
    key: 'cavityClass',
    type: {
      is: 'choice',
      words: { I: ['1'], II: ['2'], III: ['3'], IV: ['4'], V: ['5'], VI: ['6'] },
    },
    heading: { en: 'Cavity class', de: 'Kavitätenklasse' },
    also: ['class', 'klasse'],
    help: { en: 'I to VI.', de: 'I bis VI.' },
  },
  {
    key: 'size',
    type: {
      is: 'choice',
      words: { small: ['klein'], medium: ['mittel'], large: ['groß', 'gross'] },
    },
    heading: { en: 'Size', de: 'Größe' },
    also: ['groesse'],
    help: { en: 'small, medium or large.', de: 'klein, mittel oder groß.' },
  },
  {
    key: 'reason',
    type: {
      is: 'choice',
      words: {
        decay: ['caries', 'karies'],
        fracture: ['fraktur', 'bruch'],
        wear: ['abnutzung', 'abrasion'],
        cosmetic: ['kosmetisch', 'ästhetisch'],
      },
    },
    heading: { en: 'Reason', de: 'Grund' },
    also: ['indication', 'indikation', 'anlass'],
    help: {
      en: 'decay, fracture, wear or cosmetic.',
      de: 'Karies, Fraktur, Abnutzung oder kosmetisch.',
    },
    example: 'cosmetic',
  },
  {
    key: 'shades',
    type: text(500),
    heading: { en: 'Shades', de: 'Farben' },
    also: ['shade', 'farbe', 'materials', 'pastes'],
    help: {
      en: 'Consumables as "name / shade", several with a semicolon between.',
      de: 'Materialien als „Name / Farbe“, mehrere mit Strichpunkt dazwischen.',
    },
    example: 'Universal paste / Body 2',
  },
];

export const BOOKED_VISIT_COLUMNS: readonly Column[] = [...WHICH_VISIT, ...WHAT_IS_PLANNED];
