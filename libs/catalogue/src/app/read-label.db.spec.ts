import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { Clock, newId } from '#lib/platform';
import { type Book, openBook } from '../db/book-for-tests.js';
import { ConsumableEntity } from '../db/consumable.entity.js';
import { PresentationEntity } from '../db/presentation.entity.js';
import { SupplierEntity } from '../db/supplier.entity.js';
import { ChangePresentation } from './change-presentation.js';
import { CreateConsumable } from './create-consumable.js';
import { CreatePresentation } from './create-presentation.js';
import { ReadLabel } from './read-label.js';

let book: Book;

beforeAll(async () => {
  book = await openBook([ConsumableEntity, PresentationEntity, SupplierEntity]);
});

afterAll(() => book.close());

class May2026 extends Clock {
  override now(): Date {
    return new Date('2026-05-04T10:00:00Z');
  }
}

function read(text: string, actor = book.actor) {
  return new ReadLabel(book.uow, new May2026()).run(actor, text);
}

async function bought(deviceIdentifier: string) {
  const command = { name: `Paste ${newId()}`, category: 'composite', stockUnit: 'g' as const };
  const consumable = await new CreateConsumable(book.uow).run(book.actor, command);
  const presentation = await new CreatePresentation(book.uow).run(book.actor, {
    consumableId: consumable.id,
    name: 'Syringe',
    dispensing: 'multi-use',
    containersPerPack: 1,
    contentPerContainer: '4',
    deviceIdentifier,
  });
  return { consumable, presentation };
}

describe('a scanned label', () => {
  it('finds the presentation and the lot that was received before', async () => {
    const { consumable, presentation } = await bought('9521234543213');
    const lotId = newId();
    await book.owner.query(
      `INSERT INTO lots (id, practice_id, consumable_id, lot_number, expires_on)
       VALUES ($1, $2, $3, 'A1', '2026-12-31')`,
      [lotId, book.actor.practiceId, consumable.id],
    );
    const text = ']d201095212345432131726123110A1\u001d21S1\r\n';
    const reading = await read(text);
    expect(reading.problem).toBeNull();
    expect(reading.label).toMatchObject({ lot: 'A1', expiry: '2026-12-31', serial: 'S1' });
    expect(reading.matches).toEqual([
      {
        presentationId: presentation.id,
        presentationName: 'Syringe',
        active: true,
        consumableId: consumable.id,
        consumableName: consumable.name,
        stockUnit: 'g',
        lotId,
        lotStatus: 'released',
        lotExpiresOn: '2026-12-31',
      },
    ]);
    const another = await read('(01)09521234543213(10)A2');
    expect(another.matches).toMatchObject([{ presentationId: presentation.id, lotId: null }]);
    expect((await read(text, book.stranger)).matches).toEqual([]);
  });

  it('finds HIBC products, and what is no longer bought last', async () => {
    const old = await bought('A99912345');
    const now = await bought('A99912345');
    await new ChangePresentation(book.uow).run(book.actor, old.presentation.id, { active: false });
    const { label, matches } = await read('+A99912345/$$52001510X33');
    expect(label).toMatchObject({ standard: 'HIBC', lot: '10X3', expiry: '2020-01-15' });
    expect(matches.map(({ presentationId }) => presentationId)).toEqual([
      now.presentation.id,
      old.presentation.id,
    ]);
  });

  it('that says nothing of the product matches nothing', async () => {
    expect(await read('(17)261231(10)A1')).toMatchObject({ label: { lot: 'A1' }, matches: [] });
  });

  it('that cannot be read is answered with what is wrong', async () => {
    expect(await read('(01)09521234543214')).toEqual({
      label: null,
      problem: {
        code: 'incorrect_check_digit',
        position: 17,
        identifier: '01',
        message: '(01) 09521234543214: The check digit is 4, but the digits before it give 3.',
        expected: '3',
      },
      matches: [],
      own: null,
    });
  });
});
