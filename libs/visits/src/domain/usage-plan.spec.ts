import { describe, expect, it } from '@jest/globals';
import { parseIsoTooth } from '#lib/dentition';
import { formatQuantity, quantity } from '#lib/measure';
import type { PlannedLine } from '#lib/procedures';
import { applyUsage, type UsageEntry } from './usage-plan.js';

const tooth = parseIsoTooth('21');
if (tooth === undefined) throw new Error('21 is a tooth');

const planned: PlannedLine[] = [
  {
    key: 'visit/visit/bib',
    restoration: null,
    tooth: null,
    attempt: 1,
    consumableId: 'bib',
    driver: 'visit',
    placed: quantity('0'),
    dispensed: quantity('1'),
    sharesDose: false,
  },
  {
    key: 'r1/a1/1/paste',
    restoration: 0,
    tooth: null,
    attempt: 1,
    consumableId: 'paste',
    driver: 'mm3',
    placed: quantity('0.04'),
    dispensed: quantity('0.06'),
    sharesDose: true,
  },
];
const units = new Map([
  ['bib', 'piece'],
  ['paste', 'g'],
  ['other paste', 'g'],
]);
const context = { restorations: [{ attempts: 2 }], unitOf: (id: string) => units.get(id) };

function linesAfter(entries: UsageEntry[]): string[] {
  const result = applyUsage(planned, entries, context);
  if (!result.ok) throw new Error(`${result.error.field} ${result.error.message}`);
  return result.lines.map(
    (l) => `${l.consumableId} ${formatQuantity(l.placed)}/${formatQuantity(l.dispensed)}`,
  );
}

function wrongField(entry: UsageEntry): string {
  const result = applyUsage(planned, [entry], context);
  if (result.ok) throw new Error('was accepted');
  return result.error.field;
}

describe('what was really used', () => {
  it('is what was planned when nothing is said', () => {
    expect(linesAfter([])).toEqual(['bib 0/1', 'paste 0.04/0.06']);
  });

  it('changes amounts, keeps what was planned, and never has more placed than dispensed', () => {
    expect(linesAfter([{ line: 'r1/a1/1/paste', dispensed: '0.1' }])[1]).toBe('paste 0.04/0.1');
    expect(linesAfter([{ line: 'r1/a1/1/paste', dispensed: '0.03' }])[1]).toBe('paste 0.03/0.03');
    expect(linesAfter([{ line: 'r1/a1/1/paste', placed: '0.08' }])[1]).toBe('paste 0.08/0.08');
    const result = applyUsage(planned, [{ line: 'r1/a1/1/paste', dispensed: '0' }], context);
    expect(result.ok && formatQuantity(result.lines[1]?.planned ?? quantity('9'))).toBe('0.06');
  });

  it('takes another consumable in place of the planned one', () => {
    expect(linesAfter([{ line: 'r1/a1/1/paste', consumableId: 'other paste' }])[1]).toBe(
      'other paste 0.04/0.06',
    );
  });

  it('adds lines for the visit or for one restoration', () => {
    expect(
      linesAfter([
        { consumableId: 'bib', dispensed: '2' },
        { consumableId: 'paste', restoration: 0, attempt: 2, placed: '0.02' },
      ]).slice(2),
    ).toEqual(['bib 0/2', 'paste 0.02/0.02']);
  });

  it('lets what is added join the doses that are open already', () => {
    const entries = [
      { consumableId: 'paste', dispensed: '0.05' },
      { consumableId: 'other paste', dispensed: '0.05' },
    ];
    const result = applyUsage(planned, entries, context);
    expect(result.ok && result.lines.map((l) => l.sharesDose)).toEqual([false, true, true, false]);
  });

  const wrong: [UsageEntry, string][] = [
    [{ line: 'no such line', dispensed: '1' }, 'usage[0].line'],
    [{ line: 'r1/a1/1/paste', restoration: 0 }, 'usage[0].restoration'],
    [{ line: 'r1/a1/1/paste', attempt: 1 }, 'usage[0].attempt'],
    [{ line: 'r1/a1/1/paste', placed: '0.2', dispensed: '0.1' }, 'usage[0].placed'],
    [{ line: 'visit/visit/bib', dispensed: '1.5' }, 'usage[0].dispensed'],
    [{ line: 'r1/a1/1/paste', consumableId: 'nothing' }, 'usage[0].consumableId'],
    [{ dispensed: '1' }, 'usage[0].consumableId'],
    [{ consumableId: 'nothing', dispensed: '1' }, 'usage[0].consumableId'],
    [{ consumableId: 'paste' }, 'usage[0].dispensed'],
    [{ consumableId: 'paste', dispensed: '0' }, 'usage[0].dispensed'],
    [{ consumableId: 'paste', dispensed: '1', restoration: 1 }, 'usage[0].restoration'],
    [{ consumableId: 'paste', dispensed: '1', restoration: 0, attempt: 3 }, 'usage[0].attempt'],
    [{ consumableId: 'paste', dispensed: '1', attempt: 2 }, 'usage[0].attempt'],
  ];
  it.each(wrong)('refuses %j and names the field', (entry, field) => {
    expect(wrongField(entry)).toBe(field);
  });

  it('refuses a line that is said twice', () => {
    const twice = { line: 'r1/a1/1/paste', dispensed: '0.1' };
    const result = applyUsage(planned, [twice, twice], context);
    expect(!result.ok && result.error.field).toBe('usage[1].line');
  });
});
