import { describe, expect, it } from '@jest/globals';
import type { Alert } from './api/list-alerts.js';
import { categoriesOf, filterAlerts, groupByKind } from './filter-alerts.js';
import type { AlertKind } from './kinds.js';

function alert(id: string, kind: AlertKind, change: Partial<Alert> = {}): Alert {
  return {
    id,
    kind,
    severity: 1,
    consumable: {
      id: 'c1',
      name: 'Paste',
      category: 'composite',
      shade: 'Body 2',
      size: null,
      grit: null,
      unit: 'g',
    },
    lot: { id: 'l1', lotNumber: 'LX-4471', labelExpiry: null, status: 'released' },
    location: { id: 'p1', name: 'Room 2' },
    holdingId: 'h1',
    order: null,
    bookedVisits: [],
    level: null,
    figures: [],
    sentence: '',
    action: { label: '', method: 'POST', href: '' },
    since: null,
    snoozed: null,
    ...change,
  };
}

const soon = alert('a', 'expires within N days');
const expired = alert('b', 'expired on shelf');
const short = alert('c', 'open shortfall', {
  lot: null,
  location: null,
  consumable: { ...soon.consumable, name: 'Wedge', category: 'matrix', shade: null },
});
const all = [expired, short, soon];

describe('the list of what needs somebody', () => {
  it('is narrowed by kind, category and words', () => {
    expect(filterAlerts(all, {})).toEqual(all);
    expect(filterAlerts(all, { kind: 'open shortfall' })).toEqual([short]);
    expect(filterAlerts(all, { category: 'composite' })).toEqual([expired, soon]);
    expect(filterAlerts(all, { q: 'body' })).toEqual([expired, soon]);
    expect(filterAlerts(all, { q: 'lx-44' })).toEqual([expired, soon]);
    expect(filterAlerts(all, { q: 'nothing', kind: 'open shortfall' })).toEqual([]);
  });

  it('comes in groups, the most urgent kind first, without empty ones', () => {
    expect(groupByKind([soon, short, expired]).map((group) => group.kind)).toEqual([
      'expired on shelf',
      'open shortfall',
      'expires within N days',
    ]);
  });

  it('knows its categories', () => {
    expect(categoriesOf(all)).toEqual(['composite', 'matrix']);
  });
});
