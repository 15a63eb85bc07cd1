import { demoId } from './dice.js';
import {
  BACK_FINISH,
  BONDING,
  CUTTING,
  type DemoTemplate,
  FRONT_FINISH,
  HIGH_GLOSS,
  line,
  NEIGHBOUR,
  NUMBING,
  PASTE_FROM_CAPSULE,
  PASTE_FROM_SYRINGE,
  SET_UP,
  SHAPING,
} from './template-parts.js';

const SLEEVES = line('syringe-sleeve', 'shade', 1);
const FLOW = [
  line('flow2', 'restoration', 0.05, 0.03, { again: true }),
  line('flow-tip', 'visit', 1),
];
const BANDS = [
  line('band', 'proximal surface', 1, 1, { again: true }),
  line('wedge-medium', 'proximal surface', 1, 1, { again: true }),
];
const FRONT_FILLING = [...SET_UP, ...NUMBING, ...CUTTING, ...BONDING, PASTE_FROM_SYRINGE, SLEEVES];
const BACK_FILLING = [...SET_UP, ...NUMBING, ...CUTTING, ...BONDING, PASTE_FROM_CAPSULE];
const ADDED_ONLY = [...SET_UP, ...BONDING, PASTE_FROM_SYRINGE, SLEEVES];

/** The second versions are in use for the second half of the book. */
export const TEMPLATES: readonly DemoTemplate[] = [
  {
    key: 'front-side',
    name: 'Front filling, between teeth',
    cavityClass: 'III',
    versions: [
      {
        minutes: 35,
        layerThicknessMm: '2',
        note: null,
        lines: [...FRONT_FILLING, ...NEIGHBOUR, ...FRONT_FINISH],
      },
      {
        minutes: 35,
        layerThicknessMm: '2',
        note: 'A second strip per side, and tape over the neighbour.',
        lines: [
          ...FRONT_FILLING,
          ...NEIGHBOUR,
          ...FRONT_FINISH,
          line('ptfe', 'proximal surface', 6, 6, { again: true }),
        ],
      },
    ],
  },
  {
    key: 'front-corner',
    name: 'Front corner build-up',
    cavityClass: 'IV',
    versions: [
      {
        minutes: 60,
        layerThicknessMm: '2',
        note: null,
        lines: [...FRONT_FILLING, ...NEIGHBOUR, ...SHAPING, ...FRONT_FINISH, ...HIGH_GLOSS],
      },
      {
        minutes: 55,
        layerThicknessMm: '2',
        note: 'With a silicone index.',
        lines: [
          ...FRONT_FILLING,
          ...NEIGHBOUR,
          ...SHAPING,
          ...FRONT_FINISH,
          ...HIGH_GLOSS,
          line('putty', 'restoration', 8),
        ],
      },
    ],
  },
  {
    key: 'neck',
    name: 'Neck filling',
    cavityClass: 'V',
    versions: [
      {
        minutes: 30,
        layerThicknessMm: '2',
        note: null,
        lines: [
          ...FRONT_FILLING,
          line('cord', 'tooth', 2.5),
          line('finishing-bur', 'restoration', 1, 1, { again: true }),
          line('disc-medium', 'visit', 1),
          line('disc-fine', 'visit', 1),
        ],
      },
    ],
  },
  {
    key: 'edge',
    name: 'Edge build-up for looks',
    cavityClass: 'VI',
    versions: [
      {
        minutes: 40,
        layerThicknessMm: '2',
        note: null,
        lines: [...ADDED_ONLY, ...SHAPING, ...FRONT_FINISH, ...HIGH_GLOSS],
      },
    ],
  },
  {
    key: 'gap',
    name: 'Closing a gap, per tooth',
    cavityClass: null,
    versions: [
      {
        minutes: 40,
        layerThicknessMm: '2',
        note: null,
        lines: [...ADDED_ONLY, ...NEIGHBOUR, ...SHAPING, ...FRONT_FINISH, ...HIGH_GLOSS],
      },
    ],
  },
  {
    key: 'veneer',
    name: 'Direct veneer',
    cavityClass: null,
    versions: [
      {
        minutes: 60,
        layerThicknessMm: '1',
        note: null,
        lines: [
          ...ADDED_ONLY,
          line('cord', 'tooth', 2.5),
          line('clear-strip', 'tooth', 2),
          line('finishing-strip', 'tooth', 2),
          ...SHAPING,
          ...FRONT_FINISH,
          ...HIGH_GLOSS,
        ],
      },
      {
        minutes: 55,
        layerThicknessMm: '1',
        note: 'One dam sheet for the front teeth.',
        lines: [
          ...ADDED_ONLY,
          line('dam', 'visit', 1),
          line('floss', 'tooth', 25),
          line('clear-strip', 'tooth', 2),
          line('finishing-strip', 'tooth', 2),
          ...SHAPING,
          ...FRONT_FINISH,
          ...HIGH_GLOSS,
        ],
      },
    ],
  },
  {
    key: 'back-one',
    name: 'Back filling, chewing surface',
    cavityClass: 'I',
    versions: [
      {
        minutes: 30,
        layerThicknessMm: '2',
        note: null,
        lines: [...BACK_FILLING, ...BACK_FINISH, line('pellet', 'layer', 1)],
      },
    ],
  },
  {
    key: 'back-side',
    name: 'Back filling, between teeth',
    cavityClass: 'II',
    versions: [
      {
        minutes: 45,
        layerThicknessMm: '2',
        note: null,
        lines: [...BACK_FILLING, ...FLOW, ...BANDS, ...BACK_FINISH],
      },
      {
        minutes: 42,
        layerThicknessMm: '2',
        note: 'Dam on every back filling.',
        lines: [
          ...BACK_FILLING,
          ...FLOW,
          ...BANDS,
          ...BACK_FINISH,
          line('dam', 'front segment or quadrant', 1),
          line('wedge-large', 'tooth', 1),
        ],
      },
    ],
  },
  {
    key: 'back-deep',
    name: 'Back filling in one thick layer',
    cavityClass: 'II',
    versions: [
      {
        minutes: 35,
        layerThicknessMm: '4',
        note: null,
        lines: [
          ...SET_UP,
          ...NUMBING,
          ...CUTTING,
          ...BONDING.filter((each) => each.consumable !== 'adhesive'),
          line('adhesive-dose', 'tooth', 0.08, 0.03, { again: true }),
          line('deep-paste', 'mm3', 0.0023, 0.002051, { again: true }),
          ...BANDS,
          ...BACK_FINISH,
        ],
      },
    ],
  },
  {
    key: 'wear',
    name: 'Rebuilding a worn edge',
    cavityClass: 'VI',
    versions: [
      {
        minutes: 40,
        layerThicknessMm: '2',
        note: null,
        lines: [
          ...ADDED_ONLY,
          line('round-diamond', 'tooth', 1),
          line('articulating', 'visit', 3),
          line('finishing-bur', 'restoration', 1),
          line('polisher', 'visit', 1),
        ],
      },
    ],
  },
  {
    key: 'repair',
    name: 'Repair and polish of a filling',
    cavityClass: null,
    versions: [
      {
        minutes: 25,
        layerThicknessMm: '2',
        note: null,
        lines: [
          ...ADDED_ONLY,
          line('repair-primer', 'restoration', 0.05, 0.03),
          line('round-diamond', 'tooth', 1),
          line('polisher', 'visit', 1),
          ...HIGH_GLOSS,
        ],
      },
    ],
  },
  {
    key: 'white-spot',
    name: 'Treating a white spot',
    cavityClass: null,
    versions: [
      {
        minutes: 30,
        layerThicknessMm: '1',
        note: null,
        lines: [
          ...SET_UP,
          line('dam', 'visit', 1),
          line('spot-acid', 'cycle', 0.06, 0.04),
          line('spot-drier', 'cycle', 0.06, 0.04),
          line('spot-resin', 'tooth', 0.1, 0.05),
          line('micro-applicator', 'tooth', 1),
          line('light-sleeve', 'visit', 1),
          line('polishing-paste', 'visit', 0.12, 0.05),
        ],
      },
    ],
  },
];

export function templateId(key: string): string {
  return demoId('template', key);
}

export function templateOf(key: string): DemoTemplate {
  const found = TEMPLATES.find((template) => template.key === key);
  if (!found) throw new Error(`The demo has no template ${key}`);
  return found;
}
