import { type Column, text } from '../column.js';
import { ACTIVE } from './suppliers.js';

export const LOCATION_COLUMNS: readonly Column[] = [
  {
    key: 'name',
    type: text(120),
    required: true,
    heading: { en: 'Location', de: 'Lagerort' },
    also: ['name', 'location name', 'place', 'ort', 'standort', 'raum', 'platz'],
    help: {
      en: 'The name; by it a location is known again, in any case.',
      de: 'Der Name; an ihm wird ein Ort wiedererkannt, groß oder klein geschrieben.',
    },
    example: 'Drawer 2 in room 1',
  },
  {
    key: 'kind',
    type: {
      is: 'choice',
      words: {
        store: ['stock room', 'storage', 'lager', 'vorrat'],
        fridge: ['refrigerator', 'kühlschrank'],
        room: ['surgery', 'surgery room', 'treatment room', 'zimmer', 'behandlungszimmer', 'raum'],
        drawer: ['schublade', 'lade'],
      },
    },
    heading: { en: 'Kind', de: 'Art' },
    also: ['type', 'typ', 'kind of location', 'art des ortes'],
    help: {
      en: 'store, fridge, room or drawer. Needed for a new location.',
      de: 'Lager, Kühlschrank, Zimmer oder Schublade. Nötig bei einem neuen Ort.',
    },
    example: 'drawer',
  },
  {
    key: 'parent',
    type: text(120),
    heading: { en: 'Inside', de: 'Liegt in' },
    also: ['parent', 'parent location', 'in', 'übergeordneter ort', 'gehört zu', 'part of'],
    help: {
      en: 'The location that it draws from when it is empty itself. It may stand in the same file.',
      de: 'Der Ort, aus dem er nachgefüllt wird. Er darf in derselben Datei stehen.',
    },
    example: 'Room 1',
  },
  ACTIVE,
];
