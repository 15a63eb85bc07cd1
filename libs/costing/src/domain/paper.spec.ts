import { describe, expect, it } from '@jest/globals';
import { cellText, paperOf } from './paper.js';
import { column, columns, offPaper } from './table.js';

describe('a table on paper', () => {
  it.each([
    ['1234567.895', 'money', '1,234,567.90'],
    ['-0.004', 'money', '0.00'],
    ['-1234.5', 'money', '-1,234.50'],
    ['0.0375', 'price', '0.0375'],
    ['18', 'price', '18.00'],
    ['0.3412', 'share', '34.1 %'],
    ['-0.0215', 'share', '-2.2 %'],
    ['12.5', 'share', '1250.0 %'],
    ['0', 'share', '0.0 %'],
    ['1000', 'whole', '1,000'],
    ['0.060', 'decimal', '0.06'],
    ['57.569664', 'decimal', '57.57'],
    ['0.000817', 'decimal', '0.000817'],
    ['12 345', 'money', '12 345'],
    ['273973599726026.40', 'money', '273,973,599,726,026.40'],
    ['2026-01-05', 'date', '2026-01-05'],
    ['007', 'text', '007'],
  ] as const)('shows %s as %s: %s', (cell, kind, shown) =>
    expect(cellText(cell, kind)).toBe(shown),
  );

  it.each([
    ['1234567.895', 'money', '1.234.567,90'],
    ['0.3412', 'share', '34,1 %'],
    ['12345.5', 'decimal', '12.345,5'],
    ['2026-05-04', 'date', '04.05.2026'],
    ['1.234,5', 'text', '1.234,5'],
  ] as const)('shows %s as %s in German: %s', (cell, kind, shown) =>
    expect(cellText(cell, kind, 'de')).toBe(shown),
  );

  it('shows nothing where nothing is', () => {
    expect(cellText(null, 'money')).toBe('');
    expect(cellText(1200, 'whole')).toBe('1,200');
  });

  it('says the currency once, and leaves out what is for programs', () => {
    const paper = paperOf({
      name: 'x',
      title: 'A report',
      facts: ['All days.'],
      columns: [
        column('template'),
        ...offPaper([column('restoration')]),
        column('cost', 'money'),
        column('currency'),
      ],
      rows: [
        ['A', 'a1', '2', 'EUR'],
        ['B', 'b1', '3.5', 'EUR'],
      ],
      totals: ['Together', null, '5.5', null],
    });
    expect(paper.columns.map(({ name }) => name)).toEqual(['Template', 'Cost']);
    expect(paper.rows).toEqual([
      ['A', '2.00'],
      ['B', '3.50'],
    ]);
    expect(paper.totals).toEqual(['Together', '5.50']);
    expect(paper.facts).toEqual(['All days.', 'Amounts in EUR.']);
  });

  it('keeps the currency in the rows where they differ', () => {
    const rows = [['EUR'], ['CHF']];
    const paper = paperOf({ name: 'x', title: 'X', columns: columns('text', 'currency'), rows });
    expect([paper.rows, paper.facts]).toEqual([rows, []]);
  });
});
