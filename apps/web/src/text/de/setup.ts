import type { Text } from '../text.js';

export const setup: Text['setup'] = {
  more: { tokens: 'Schlüssel', audit: 'Protokoll' },
  show: {
    label: 'Gezeigt wird',
    active: 'In Gebrauch',
    retired: 'Nicht mehr in Gebrauch',
    all: 'Alles',
  },
  state: { active: 'In Gebrauch', retired: 'Nicht mehr in Gebrauch' },
  name: 'Name',
  change: 'Ändern',
  changeOf: (name) => `${name} ändern`,
  saved: (name) => `${name} ist gespeichert.`,
  inUse: 'In Gebrauch',
  inUseHint: 'Was nicht mehr in Gebrauch ist, bleibt im Buch und wird nirgends mehr angeboten.',
  wholeBetween: (least, most) => `Bitte eine ganze Zahl von ${least} bis ${most} schreiben`,
  aboveZero: 'Muss mehr als 0 sein',
  optional: 'Darf leer bleiben',
};
