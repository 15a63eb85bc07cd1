import { describe, expect, it } from '@jest/globals';
import type pg from 'pg';
import type { TestBook } from './book.js';
import { bring, refusesFile } from './exchange-steps.js';

/**
 * What lists about ordering may not say, and what they do with what is there, in a book that has Paste in
 * Body 2 with one pack, Gel and Strip.
 */
export function describeOrderingLists(
  of: () => { readonly book: TestBook; readonly owner: pg.Client },
): void {
  const expectRefused = (kind: string, file: string, sentence: RegExp) =>
    refusesFile(of(), { kind, file }, sentence);
  describe('lists about ordering', () => {
    const paste = 'Consumable;Shade;Pack';
    const named = 'Paste;Body 2;Pack';

    it('are refused at terms and closures that cannot be', async () => {
      const terms = 'Supplier;Works on;Freight;Delivers in working days\nFernmoor;';
      await expectRefused(
        'suppliers',
        `${terms}Mo, Funday;7;3\n`,
        /column B .*has Funday, which is/,
      );
      await expectRefused('suppliers', `${terms}Mo;-1;3\n`, /column C \(Freight\).*not a number/);
      await expectRefused(
        'suppliers',
        `${terms}Mo;7;251\n`,
        /column D .*whole number from 0 to 250/,
      );
      const head = 'Supplier;Closed from;Closed until\n';
      const row = (from: string, until: string) => `Fernmoor;${from};${until}\n`;
      await expectRefused(
        'closures',
        head + row('2027-05-02', '2027-05-01'),
        /row 2, column C \(Closed until\): this cell must not be before the first day, 2027-05-02/,
      );
      await expectRefused(
        'closures',
        head + row('2027-05-01', '2027-05-09') + row('2027-05-09', '2027-05-12'),
        /row 3, column B \(Closed from\): this cell lies in another closure/,
      );
      await expectRefused('closures', `${head}Nobody;2027-05-01;2027-05-02\n`, /names no supplier/);
      await expectRefused(
        'closures',
        head + row('2027-01-01', '2027-06-30'),
        /closes the supplier for more than 120 days/,
      );
    });

    it('are refused at prices that do not start at one pack, or do not fall', async () => {
      const head = `${paste};From packs;Price\n`;
      await expectRefused(
        'price-lists',
        `${head}${named};2;70\n`,
        /row 2, column D \(From packs\): this cell must be 1 for the first price of a pack/,
      );
      const rising = `${head}${named};5;73\n${named};1;72\n`;
      await expectRefused(
        'price-lists',
        rising,
        /row 2, column E .*must be lower than 72, the price from 1 packs on.*row 3: this row belongs/s,
      );
      await expectRefused(
        'price-lists',
        `${head}Paste;Body 2;Box;1;70\n`,
        /column C \(Pack\): this cell names no pack of this consumable \(Box\)/,
      );
    });

    it('are refused at kits that could not be', async () => {
      const head = `${paste};Part;Part shade;Use;Containers;Content;Share of the price %\n`;
      const part = (name: string, use: string, share: string) =>
        `${named};${name};multi-use;1;2;${share}\n`.replace('multi-use', use);
      await expectRefused(
        'kit-parts',
        head + part('Paste;Body 2', 'multi-use', '10'),
        /row 2, column D \(Part\): this cell is the pack's own content already/,
      );
      await expectRefused(
        'kit-parts',
        head + part('Gel;', 'by-piece', '10'),
        /column F \(Use\): this cell cannot be by-piece for a consumable that is kept in mL/,
      );
      await expectRefused(
        'kit-parts',
        head + part('Gel;', 'multi-use', '60') + part('Strip;', 'by-piece', '40.0001'),
        /row 3, column I .*makes shares of more than 100 % together/,
      );
      await expectRefused(
        'kit-parts',
        head + part('Gel;', 'multi-use', '1.00001'),
        /at most 4 digits/,
      );
    });

    it('are refused at levels and stand-ins that do not go together', async () => {
      const head = 'Consumable;Shade;Service;Wanted service %;Reorder at;Order up to\n';
      await expectRefused(
        'planning',
        `${head}Paste;Body 2;;95;;\n`,
        /measure and level go together/,
      );
      await expectRefused('planning', `${head}Paste;Body 2;fill;100;;\n`, /must be at most 99.99/);
      await expectRefused(
        'planning',
        `${head}Paste;Body 2;;;4;3\n`,
        /column F \(Order up to, set by hand\): this cell must not be below 4/,
      );
      const pairs = 'Consumable;Shade;May be replaced by\n';
      await expectRefused('substitutes', `${pairs}Gel;;Gel\n`, /must be another consumable/);
      await expectRefused('substitutes', `${pairs}Gel;;Strip\n`, /is counted in another unit/);
    });

    it('put what they say over what is there, and take nothing away', async () => {
      const head = `${paste};From packs;Price\n`;
      await bring(of().book, 'price-lists', `${head}${named};1;72\n${named};10;60\n`);
      const more = await bring(of().book, 'price-lists', `${head}${named};1;71\n${named};5;65\n`);
      expect(more).toMatchObject({ newRows: 1, changedRows: 1 });
      const { items } = await of().book.done<{ items: { id: string }[] }>('GET', '/presentations');
      const path = `/reorder/settings/presentations/${items[0]?.id}`;
      const told = await of().book.done<{ terms: { prices: unknown } }>('GET', path);
      expect(told.terms.prices).toEqual([
        { fromPacks: 1, packPrice: '71.00' },
        { fromPacks: 5, packPrice: '65.00' },
        { fromPacks: 10, packPrice: '60.00' },
      ]);
      const same = await bring(of().book, 'price-lists', `${head}${named};5;65\n`);
      expect(same).toMatchObject({ newRows: 0, changedRows: 0, sameRows: 1 });
      await expectRefused('price-lists', `${head}${named};5;59\n`, /must be lower than 59/);
    });
  });
}
