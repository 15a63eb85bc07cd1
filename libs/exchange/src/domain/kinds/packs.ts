import { MOST_PARTS } from '#lib/catalogue';
import { DISCOUNTS, MOST_PRICES } from '#lib/purchasing';
import { amount, type Column, moreThanNothing, text } from '../column.js';
import { CONSUMABLE_COLUMNS, CONSUMABLE_NAME_COLUMNS } from './consumables.js';

/** How a pack is sold; columns of the list of consumables. */
export const PACK_TERM_COLUMNS: readonly Column[] = [
  {
    key: 'minimumPacks',
    type: { is: 'whole', min: 1, max: 100_000 },
    heading: { en: 'Fewest packs', de: 'Mindestmenge in Packungen' },
    also: ['minimum packs', 'minimum order packs', 'moq', 'mindestmenge', 'mindestabnahme'],
    help: {
      en: 'The fewest packs that the supplier sends; 1 when left blank.',
      de: 'So viele Packungen schickt der Lieferant mindestens; 1, wenn nichts da steht.',
    },
  },
  {
    key: 'discount',
    type: {
      is: 'choice',
      words: {
        [DISCOUNTS[0]]: ['all', 'every pack', 'alle', 'alle packungen', 'jede packung'],
        [DISCOUNTS[1]]: ['packs beyond', 'darüber', 'nur die packungen darüber'],
      },
    },
    heading: { en: 'Price step holds for', de: 'Preisstufe gilt für' },
    also: ['discount', 'discount kind', 'rabattart', 'staffelart'],
    help: {
      en: 'all units: every pack; incremental: only the packs beyond a step. all units when left blank.',
      de: 'all units: jede Packung; incremental: nur die Packungen darüber. all units, wenn nichts da steht.',
    },
  },
];

const KIT_PACK: Column = {
  key: 'presentation',
  type: text(200),
  required: true,
  heading: { en: 'Pack', de: 'Packung' },
  also: ['presentation', 'package', 'kit', 'set', 'gebinde'],
  help: {
    en: 'The name of a pack that the consumable of this row has in the book.',
    de: 'Der Name einer Packung, die das Material der Zeile im Buch hat.',
  },
  example: 'One 4 g syringe',
};

/** Prices by the number of packs: one row for each step of each pack. */
export const PRICE_LIST_COLUMNS: readonly Column[] = [
  ...CONSUMABLE_NAME_COLUMNS,
  KIT_PACK,
  {
    key: 'fromPacks',
    type: { is: 'whole', min: 1, max: 100_000 },
    required: true,
    heading: { en: 'From packs', de: 'Ab Packungen' },
    also: ['from', 'quantity from', 'packs', 'ab', 'ab menge', 'staffel'],
    help: {
      en: `The first step of a pack is 1; up to ${MOST_PRICES} steps.`,
      de: `Die erste Stufe einer Packung ist 1; bis zu ${MOST_PRICES} Stufen.`,
    },
    example: '1',
  },
  {
    key: 'packPrice',
    type: amount(),
    heading: { en: 'Price per pack', de: 'Preis je Packung' },
    also: ['price', 'pack price', 'preis', 'packungspreis'],
    help: {
      en: 'Each step is cheaper than the one before. Needed for a new step.',
      de: 'Jede Stufe ist billiger als die davor. Nötig bei einer neuen Stufe.',
    },
    example: '72.00',
  },
];

const PART_NAMES: readonly Column[] = [
  { key: 'part', en: 'Part', de: 'Teil', also: ['component', 'part name', 'bestandteil'] },
  { key: 'partShade', en: 'Part shade', de: 'Farbe des Teils', also: ['part colour'] },
  { key: 'partSize', en: 'Part size', de: 'Größe des Teils', also: [] },
  { key: 'partGrit', en: 'Part grit', de: 'Körnung des Teils', also: [] },
].map(({ key, en, de, also }): Column => {
  const first = key === 'part';
  const help = {
    en: first ? 'A further consumable in the pack; it must be in the book already.' : 'As above.',
    de: first ? 'Ein weiteres Material in der Packung; es muss im Buch stehen.' : 'Wie oben.',
  };
  const example = first ? { example: 'Etchant gel' } : {};
  return {
    ...{ key, type: text(first ? 200 : 80), required: first, heading: { en, de }, also, help },
    ...example,
  };
});

const packed = (key: string): Column => {
  const column = CONSUMABLE_COLUMNS.find((each) => each.key === key);
  if (!column) throw new Error(`${key} is no column of packs`);
  return column;
};

/** What else is in a kit or a mixed box: one row for each further consumable. */
export const KIT_PART_COLUMNS: readonly Column[] = [
  ...CONSUMABLE_NAME_COLUMNS,
  KIT_PACK,
  ...PART_NAMES,
  packed('dispensing'),
  packed('containersPerPack'),
  { ...packed('contentPerContainer'), type: moreThanNothing('1000000'), example: '2' },
  {
    key: 'sharePercent',
    type: { is: 'decimal', max: '100', scale: 4 },
    heading: { en: 'Share of the price %', de: 'Anteil am Preis %' },
    also: ['share', 'cost share', 'share percent', 'anteil', 'preisanteil'],
    help: {
      en: `Needed for a new part; the pack's own content bears the rest. Up to ${MOST_PARTS} parts.`,
      de: `Nötig bei einem neuen Teil; den Rest trägt der eigene Inhalt. Bis zu ${MOST_PARTS} Teile.`,
    },
    example: '25',
  },
];
