import { describe, expect, it } from '@jest/globals';
import { choiceOfRow, groupsOf, keyOfRow, nameOfRow, toggled } from './groups.js';
import { costRow } from './rows.fixture.js';

describe('the groups of the address', () => {
  it('are those that are known, in one order, and never none', () => {
    expect(groupsOf(undefined)).toEqual(['template']);
    expect(groupsOf('made up')).toEqual(['template']);
    expect(groupsOf('month,template,month')).toEqual(['template', 'month']);
  });

  it('are put on and taken off; the last one stays', () => {
    expect(toggled(['template'], 'month')).toBe('template,month');
    expect(toggled(['template', 'month'], 'template')).toBe('month');
    expect(toggled(['template', 'month'], 'month')).toBeUndefined();
    expect(toggled(['month'], 'month')).toBe('month');
  });
});

describe('a row of the report', () => {
  const row = costRow({ templateId: 't1', templateName: 'Neck filling', month: '2026-02' });

  it('leads to its restorations, within the days that were asked for', () => {
    expect(choiceOfRow(row, {})).toEqual({
      ...{ from: '2026-02-01', to: '2026-02-28', templateId: 't1' },
      ...{ reason: undefined, dentistId: undefined },
    });
    const choice = { from: '2026-02-10', to: '2026-12-31', reason: 'decay' as const };
    expect(choiceOfRow(row, choice)).toMatchObject({
      ...{ from: '2026-02-10', to: '2026-02-28', reason: 'decay' },
    });
    expect(choiceOfRow(costRow({ reason: 'wear' }), choice)).toMatchObject({
      ...{ from: '2026-02-10', to: '2026-12-31', reason: 'wear' },
    });
  });

  it('has a name of all its groups', () => {
    const words = {
      reasons: { decay: 'Decay', fracture: 'Fracture', wear: 'Wear', cosmetic: 'Cosmetic' },
      month: (iso: string) => `month ${iso}`,
    };
    expect(nameOfRow(row, ['template', 'month'], words)).toBe('Neck filling · month 2026-02');
    const other = costRow({ reason: 'wear', dentistId: 'd', dentistName: 'Dr. Ilse Brandt' });
    expect(nameOfRow(other, ['reason', 'dentist'], words)).toBe('Wear · Dr. Ilse Brandt');
    expect(nameOfRow(costRow({}), ['template', 'reason', 'dentist', 'month'], words)).toBe(
      ' ·  ·  · ',
    );
    expect(keyOfRow(row)).not.toBe(keyOfRow(other));
  });
});
