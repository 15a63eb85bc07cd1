import { bottle, type DemoConsumable, dose, kit, pieces } from './catalogue-types.js';

/** A paste of one shade, by the syringe. */
function paste(
  key: string,
  shade: string,
  price: number,
  more: Partial<DemoConsumable> = {},
): DemoConsumable {
  return {
    key,
    name: 'Marlowick paste',
    category: 'Composite',
    unit: 'g',
    shade,
    viscosity: 'paste',
    density: 2,
    shelfMonths: 30,
    weeks: [4, 12],
    packs: [bottle('tavenstone', 'Syringe 4 g', 1, 4, price)],
    ...more,
  };
}

/** The same paste for back teeth, in capsules that are charged whole. */
function capsule(key: string, shade: string, price: number): DemoConsumable {
  return {
    key,
    name: 'Marlowick back-tooth paste, capsule',
    category: 'Composite',
    unit: 'g',
    shade,
    viscosity: 'paste',
    density: 2,
    shelfMonths: 30,
    weeks: [3, 8],
    packs: [
      dose('tavenstone', 'Box of 20 single-dose capsules 0.25 g', 20, 0.25, price),
      dose('tavenstone', 'Bag of 100 single-dose capsules 0.25 g', 100, 0.25, price * 4.5),
    ],
  };
}

function flow(key: string, shade: string, price: number): DemoConsumable {
  return {
    key,
    name: 'Marlowick flow',
    category: 'Flowable composite',
    unit: 'g',
    shade,
    viscosity: 'flowable',
    density: 1.8,
    shelfMonths: 24,
    weeks: [4, 12],
    packs: [bottle('tavenstone', 'Two syringes 1.8 g with tips', 2, 1.8, price)],
  };
}

function wedge(key: string, size: string, price: number): DemoConsumable {
  return {
    key,
    name: 'Wedge, beech',
    category: 'Wedges',
    unit: 'piece',
    size,
    shelfMonths: 0,
    noLot: 0.6,
    packs: [pieces('quillmere', 'Box of 200', 1, 200, price)],
  };
}

function disc(key: string, grit: string): DemoConsumable {
  return {
    key,
    name: 'Sanding disc',
    category: 'Discs',
    unit: 'piece',
    grit,
    size: '12 mm',
    shelfMonths: 48,
    noLot: 0.1,
    packs: [pieces('quillmere', 'Box of 50', 1, 50, 38.4)],
  };
}

/** A bur that is used several times: each use is charged, the number of uses is the practice's. */
function bur(key: string, name: string, size: string, price: number): DemoConsumable {
  return {
    key,
    name,
    category: 'Burs',
    unit: 'use',
    size,
    shelfMonths: 0,
    packs: [bottle('quillmere', 'Five burs, five uses each', 5, 5, price)],
  };
}

export const RESTORATIVE: readonly DemoConsumable[] = [
  paste('body1', 'Body 1', 68.9, { opacity: 'medium' }),
  paste('body2', 'Body 2', 68.9, { opacity: 'medium' }),
  paste('body3', 'Body 3', 68.9, { opacity: 'medium' }),
  paste('body4', 'Body 4', 68.9, { opacity: 'medium' }),
  paste('dentine2', 'Dentine 2', 72.5, { opacity: 'opaque' }),
  paste('dentine3', 'Dentine 3', 72.5, { opacity: 'opaque' }),
  paste('dentine4', 'Dentine 4', 72.5, { opacity: 'opaque' }),
  paste('enamel-light', 'Enamel light', 74.2, { opacity: 'translucent' }),
  paste('enamel-neutral', 'Enamel neutral', 74.2, { opacity: 'translucent' }),
  paste('enamel-warm', 'Enamel warm', 74.2, { opacity: 'translucent' }),
  paste('bleached', 'Bleached 1', 76, { opacity: 'medium' }),
  paste('amber-effect', 'Amber effect', 81.3, { opacity: 'translucent', fixed: [4, 8] }),
  paste('opaque-mask', 'Masking 1', 81.3, { opacity: 'opaque', fixed: [4, 8] }),
  capsule('capsule2', 'Body 2', 92),
  capsule('capsule3', 'Body 3', 92),
  capsule('capsule4', 'Body 4', 92),
  flow('flow2', 'Body 2', 58),
  flow('flow3', 'Body 3', 58),
  {
    key: 'deep-paste',
    name: 'Hartsea deep paste, capsule',
    category: 'Composite',
    unit: 'g',
    shade: 'Universal',
    density: 2.05,
    shelfMonths: 24,
    packs: [dose('tavenstone', 'Box of 20 single-dose capsules 0.25 g', 20, 0.25, 98)],
  },
  {
    key: 'etch',
    name: 'Etching gel 36 %',
    category: 'Etchant',
    unit: 'mL',
    shelfMonths: 30,
    packs: [bottle('tavenstone', 'Four syringes 3 mL', 4, 3, 41.5)],
  },
  {
    key: 'adhesive',
    name: 'Orrin adhesive',
    category: 'Adhesive',
    unit: 'mL',
    kept: 'fridge',
    life: [6, 'month'],
    shelfMonths: 24,
    roomStock: 5,
    packs: [
      bottle('tavenstone', 'Bottle 5 mL', 1, 5, 124),
      kit(bottle('tavenstone', 'Bonding starter kit', 1, 5, 168), [
        {
          ...{ consumable: 'etch', dispensing: 'multi-use', containers: 4, content: 3 },
          sharePercent: 22,
        },
        {
          ...{
            consumable: 'micro-applicator',
            dispensing: 'by-piece',
            containers: 1,
            content: 400,
          },
          sharePercent: 14,
        },
      ]),
    ],
  },
  {
    key: 'adhesive-dose',
    name: 'Orrin adhesive, single dose',
    category: 'Adhesive',
    unit: 'mL',
    shelfMonths: 24,
    packs: [dose('tavenstone', 'Box of 50 single doses 0.1 mL', 50, 0.1, 146)],
  },
  {
    key: 'repair-primer',
    name: 'Orrin repair primer',
    category: 'Adhesive',
    unit: 'mL',
    kept: 'fridge',
    life: [3, 'month'],
    shelfMonths: 24,
    roomStock: 4,
    fixed: [8, 16],
    packs: [bottle('tavenstone', 'Bottle 4 mL', 1, 4, 63)],
  },
  {
    key: 'desensitiser',
    name: 'Calder desensitiser',
    category: 'Adhesive',
    unit: 'mL',
    life: [4, 'month'],
    shelfMonths: 24,
    fixed: [10, 20],
    packs: [bottle('tavenstone', 'Bottle 5 mL', 1, 5, 57.4)],
  },
  {
    key: 'dye',
    name: 'Decay marker dye',
    category: 'Preparation',
    unit: 'mL',
    life: [6, 'month'],
    shelfMonths: 30,
    packs: [bottle('tavenstone', 'Bottle 6 mL', 1, 6, 27.9)],
  },
  {
    key: 'spot-acid',
    name: 'White-spot acid gel',
    category: 'White-spot set',
    unit: 'mL',
    shelfMonths: 24,
    packs: [bottle('tavenstone', 'Syringe 0.45 mL', 1, 0.45, 31)],
  },
  {
    key: 'spot-drier',
    name: 'White-spot drying liquid',
    category: 'White-spot set',
    unit: 'mL',
    shelfMonths: 24,
    packs: [bottle('tavenstone', 'Syringe 0.45 mL', 1, 0.45, 18)],
  },
  {
    key: 'spot-resin',
    name: 'White-spot resin',
    category: 'White-spot set',
    unit: 'mL',
    shelfMonths: 24,
    packs: [bottle('tavenstone', 'Syringe 0.45 mL', 1, 0.45, 62)],
  },
  {
    key: 'clear-strip',
    name: 'Clear matrix strip',
    category: 'Matrices',
    unit: 'piece',
    size: '10 mm',
    shelfMonths: 0,
    noLot: 0.3,
    packs: [pieces('quillmere', 'Box of 100', 1, 100, 8.6)],
  },
  {
    key: 'band',
    name: 'Sectional band',
    category: 'Matrices',
    unit: 'piece',
    size: 'molar',
    shelfMonths: 0,
    packs: [pieces('quillmere', 'Box of 50', 1, 50, 46)],
  },
  wedge('wedge-small', 'small', 17.4),
  wedge('wedge-medium', 'medium', 17.4),
  wedge('wedge-large', 'large', 18.9),
  bur('diamond', 'Preparation diamond, tapered', '1.4 mm', 44),
  bur('round-diamond', 'Preparation diamond, round', '1.2 mm', 44),
  bur('finishing-bur', 'Finishing diamond, fine', '1.0 mm', 52),
  bur('polisher', 'Rubber polisher, flame', 'small', 34),
  disc('disc-coarse', 'coarse'),
  disc('disc-medium', 'medium'),
  disc('disc-fine', 'fine'),
  disc('disc-superfine', 'superfine'),
  {
    key: 'finishing-strip',
    name: 'Finishing strip, two grits',
    category: 'Finishing',
    unit: 'piece',
    size: '4 mm',
    shelfMonths: 48,
    packs: [pieces('quillmere', 'Box of 100', 1, 100, 43)],
  },
  {
    key: 'polishing-paste',
    name: 'Polishing paste',
    category: 'Finishing',
    unit: 'g',
    shelfMonths: 36,
    packs: [bottle('quillmere', 'Syringe 4 g', 1, 4, 29)],
  },
  {
    key: 'articulating',
    name: 'Articulating paper 40 µm',
    category: 'Articulating paper',
    unit: 'piece',
    shelfMonths: 0,
    noLot: 0.5,
    packs: [pieces('quillmere', 'Book box of 200 strips', 1, 200, 15.8)],
  },
  {
    key: 'putty',
    name: 'Silicone index putty',
    category: 'Impressions',
    unit: 'g',
    life: [12, 'month'],
    shelfMonths: 24,
    packs: [bottle('ostermill', 'Two jars 250 g', 2, 250, 48)],
  },
];
