import type { Holding } from '../api/list-holdings.js';

/** A sealed syringe, usable, with what a test changes about it. */
export function holdingWith(change: Partial<Holding> = {}): Holding {
  return {
    id: 'h1',
    layerId: 'l1',
    consumable: {
      ...{ id: 'c1', name: 'Paste', category: 'composite', shade: 'Body 2', unit: 'g' },
      ...{ size: null, grit: null },
    },
    lot: { id: 't1', lotNumber: 'P-7', labelExpiry: '2027-06-30', status: 'released' },
    location: { id: 'p1', name: 'Room 1' },
    dispensing: 'multi-use',
    receivedOn: '2026-02-02',
    openedOn: null,
    effectiveExpiry: '2027-06-30',
    onHand: '4',
    containers: 1,
    value: '72.00',
    status: 'usable',
    ...change,
  } as Holding;
}
