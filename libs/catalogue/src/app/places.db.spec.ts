import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { newId } from '#lib/platform';
import { audited, type Book, openBook, receive, refusal } from '../db/book-for-tests.js';
import { ConsumableEntity } from '../db/consumable.entity.js';
import { LocationEntity } from '../db/location.entity.js';
import { PresentationEntity } from '../db/presentation.entity.js';
import { SupplierEntity } from '../db/supplier.entity.js';
import { ChangeLocation } from './change-location.js';
import { ChangeSupplier } from './change-supplier.js';
import { CreateConsumable } from './create-consumable.js';
import { CreateLocation } from './create-location.js';
import { CreatePresentation } from './create-presentation.js';
import { CreateSupplier } from './create-supplier.js';
import { GetLocation } from './get-location.js';
import { GetSupplier } from './get-supplier.js';
import { ListLocations } from './list-locations.js';
import { ListSuppliers } from './list-suppliers.js';

let book: Book;

beforeAll(async () => {
  book = await openBook([ConsumableEntity, LocationEntity, PresentationEntity, SupplierEntity]);
});

afterAll(() => book.close());

describe('suppliers', () => {
  const create = (command: { id?: string; name: string; email?: string }) =>
    new CreateSupplier(book.uow).run(book.actor, command);

  it('are entered, changed, found and taken out of use', async () => {
    const before = await create({ name: ' Harbour Supplies ', email: 'orders@harbour.example' });
    expect(before).toMatchObject({ name: 'Harbour Supplies', active: true });
    const changes = { email: null, active: false };
    const after = await new ChangeSupplier(book.uow).run(book.actor, before.id, changes);
    expect(after).toEqual({ ...before, ...changes });
    expect(await new GetSupplier(book.uow).run(book.actor, before.id)).toEqual(after);
    const query = { limit: 50, q: 'harbour', active: false };
    expect((await new ListSuppliers(book.uow).run(book.actor, query)).items).toEqual([after]);
    expect((await new ListSuppliers(book.uow).run(book.stranger, query)).items).toEqual([]);
    expect((await audited(book.owner, before.id)).map(({ action }) => action)).toEqual([
      'supplier.created',
      'supplier.changed',
    ]);
  });

  it('have a name of their own, and an id that is used once', async () => {
    const sent = { id: newId(), name: 'Bay Supplies' };
    expect(await create(sent)).toEqual(await create(sent));
    expect(await refusal(create({ name: 'bay supplies' }))).toBe('409 already_exists name');
    expect(await refusal(create({ ...sent, name: 'Other' }))).toBe('409 already_exists id');
  });
});

describe('locations', () => {
  const create = (name: string, parentId: string | null = null) =>
    new CreateLocation(book.uow).run(book.actor, { name, kind: 'room', parentId });
  const change = (id: string, changes: Parameters<ChangeLocation['run']>[2]) =>
    new ChangeLocation(book.uow).run(book.actor, id, changes);

  it('are entered, changed and found', async () => {
    const store = await create('Main store');
    const room = await create('Surgery 1', store.id);
    expect(await new GetLocation(book.uow).run(book.actor, room.id)).toEqual(room);
    expect(await change(room.id, { parentId: null, kind: 'drawer' })).toEqual({
      ...room,
      parentId: null,
      kind: 'drawer',
    });
    const page = await new ListLocations(book.uow).run(book.actor, { limit: 50, q: 'surg' });
    expect(page.items).toHaveLength(1);
    expect(await refusal(create('SURGERY 1'))).toBe('409 already_exists name');
  });

  it('hang where they can', async () => {
    expect(await refusal(create('Nowhere', newId()))).toBe('422 unknown_reference parentId');
    const outer = await create('Outer');
    const inner = await create('Inner', outer.id);
    const circle = change(outer.id, { parentId: inner.id });
    expect(await refusal(circle)).toBe('422 location_inside_itself parentId');
    let below = inner;
    for (const level of [3, 4, 5, 6]) below = await create(`Level ${level}`, below.id);
    expect(await refusal(create('Level 7', below.id))).toBe('422 location_too_deep parentId');
  });

  it('never hang in a circle, even when two are moved at the same moment', async () => {
    const [a, b] = [await create('Circle A'), await create('Circle B')];
    const outcomes = await Promise.all([
      refusal(change(a.id, { parentId: b.id })),
      refusal(change(b.id, { parentId: a.id })),
    ]);
    expect(outcomes.sort()).toEqual(['422 location_inside_itself parentId', 'not refused']);
  });

  it('stay in use while stock lies there', async () => {
    const consumable = await new CreateConsumable(book.uow).run(book.actor, {
      name: 'Paste',
      category: 'composite',
      stockUnit: 'g',
    });
    const presentation = await new CreatePresentation(book.uow).run(book.actor, {
      consumableId: consumable.id,
      name: 'Syringe',
      dispensing: 'multi-use',
      containersPerPack: 1,
      contentPerContainer: '10',
    });
    const { locationId } = await receive(book, consumable.id, presentation.id);
    const closed = change(locationId, { active: false });
    expect(await refusal(closed)).toBe('409 location_holds_stock active');
    const empty = await create('Empty');
    expect((await change(empty.id, { active: false })).active).toBe(false);
  });
});
