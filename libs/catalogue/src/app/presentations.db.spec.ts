import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { StockUnit } from '#lib/measure';
import { newId } from '#lib/platform';
import { audited, type Book, openBook, receive, refusal } from '../db/book-for-tests.js';
import { ConsumableEntity } from '../db/consumable.entity.js';
import { PresentationEntity } from '../db/presentation.entity.js';
import { SupplierEntity } from '../db/supplier.entity.js';
import { ChangeConsumable } from './change-consumable.js';
import { ChangePresentation } from './change-presentation.js';
import { CreateConsumable } from './create-consumable.js';
import { CreatePresentation, type NewPresentation } from './create-presentation.js';
import { CreateSupplier } from './create-supplier.js';
import { GetPresentation } from './get-presentation.js';
import { ListPresentations } from './list-presentations.js';

let book: Book;

beforeAll(async () => {
  book = await openBook([ConsumableEntity, PresentationEntity, SupplierEntity]);
});

afterAll(() => book.close());

function consumable(stockUnit: StockUnit = 'g') {
  const command = { name: `Paste ${newId()}`, category: 'composite', stockUnit };
  return new CreateConsumable(book.uow).run(book.actor, command);
}

const box: Omit<NewPresentation, 'consumableId'> = {
  name: 'Box of 20 capsules',
  dispensing: 'single-dose',
  containersPerPack: 20,
  contentPerContainer: '0.250',
  listPrice: '110',
};

async function create(more: Partial<NewPresentation> = {}, as = book.actor) {
  const consumableId = more.consumableId ?? (await consumable()).id;
  return new CreatePresentation(book.uow).run(as, { ...box, consumableId, ...more });
}

function change(id: string, changes: Parameters<ChangePresentation['run']>[2]) {
  return new ChangePresentation(book.uow).run(book.actor, id, changes);
}

function newUnit(id: string, stockUnit: StockUnit) {
  return new ChangeConsumable(book.uow).run(book.actor, id, { stockUnit });
}

describe('a new presentation', () => {
  it('is kept as it was entered', async () => {
    const supplier = await new CreateSupplier(book.uow).run(book.actor, { name: 'Harbour' });
    const view = await create({ supplierId: supplier.id, deviceIdentifier: ' 04012345678901 ' });
    expect(view).toEqual({
      id: view.id,
      consumableId: view.consumableId,
      supplierId: supplier.id,
      name: 'Box of 20 capsules',
      dispensing: 'single-dose',
      containersPerPack: 20,
      contentPerContainer: '0.25',
      deviceIdentifier: '04012345678901',
      articleCode: null,
      listPrice: '110.00',
      active: true,
    });
    expect(await new GetPresentation(book.uow).run(book.actor, view.id)).toEqual(view);
    expect(await audited(book.owner, view.id)).toHaveLength(1);
  });

  it('is written once when it is sent twice with its id', async () => {
    const sent = { id: newId(), consumableId: (await consumable()).id };
    expect(await create(sent)).toEqual(await create(sent));
    expect(await refusal(create({ ...sent, listPrice: '111' }))).toBe('409 already_exists id');
  });

  it('names a consumable and a supplier of the practice', async () => {
    expect(await refusal(create({ consumableId: newId() }))).toBe(
      '422 unknown_reference consumableId',
    );
    expect(await refusal(create({}, book.stranger))).toBe('422 unknown_reference consumableId');
    expect(await refusal(create({ supplierId: newId() }))).toBe('422 unknown_reference supplierId');
  });

  it('has a name of its own per consumable', async () => {
    const { consumableId } = await create();
    const again = create({ consumableId, name: 'BOX OF 20 CAPSULES' });
    expect(await refusal(again)).toBe('409 already_exists name');
    await create();
  });

  it('holds whole pieces, and pieces only where they are counted', async () => {
    const { id: consumableId } = await consumable('piece');
    const half = create({ consumableId, contentPerContainer: '0.5' });
    expect(await refusal(half)).toBe('422 figures_do_not_fit contentPerContainer');
    const grams = create({ dispensing: 'by-piece' });
    expect(await refusal(grams)).toBe('422 figures_do_not_fit dispensing');
    await create({ consumableId, dispensing: 'by-piece', contentPerContainer: '100' });
  });
});

describe('changing a presentation', () => {
  it('changes the given fields only', async () => {
    const before = await create();
    const after = await change(before.id, { listPrice: '99.9', contentPerContainer: '0.2' });
    expect(after).toEqual({ ...before, listPrice: '99.90', contentPerContainer: '0.2' });
    expect(await change(before.id, { listPrice: null })).toEqual({ ...after, listPrice: null });
    expect(await audited(book.owner, before.id)).toHaveLength(3);
    const unknown = change(before.id, { supplierId: newId() });
    expect(await refusal(unknown)).toBe('422 unknown_reference supplierId');
    const unfit = change(before.id, { dispensing: 'by-piece' });
    expect(await refusal(unfit)).toBe('422 figures_do_not_fit dispensing');
  });

  it('leaves what is in the pack alone once it was received', async () => {
    const { id, consumableId, dispensing } = await create();
    await receive(book, consumableId, id);
    const fixed = change(id, { dispensing: 'multi-use', contentPerContainer: '1' });
    expect(await refusal(fixed)).toBe('409 presentation_fixed dispensing contentPerContainer');
    await change(id, { dispensing, contentPerContainer: '0.25', listPrice: '1', active: false });
  });
});

describe('the stock unit of a consumable', () => {
  it('may change before the first delivery if its presentations fit', async () => {
    const { id, consumableId } = await create();
    expect(await refusal(newUnit(consumableId, 'piece'))).toBe('422 figures_do_not_fit stockUnit');
    expect((await newUnit(consumableId, 'mL')).stockUnit).toBe('mL');
    await change(id, { contentPerContainer: '1' });
    expect((await newUnit(consumableId, 'piece')).stockUnit).toBe('piece');
  });

  it('is fixed after it', async () => {
    const { id, consumableId } = await create();
    await receive(book, consumableId, id);
    expect(await refusal(newUnit(consumableId, 'mL'))).toBe('409 stock_unit_fixed stockUnit');
    await newUnit(consumableId, 'g');
  });
});

describe('finding presentations', () => {
  it('narrows by consumable, supplier and label', async () => {
    const list = new ListPresentations(book.uow);
    const deviceIdentifier = newId();
    const { id, consumableId } = await create({ deviceIdentifier });
    await create({ consumableId, name: 'One syringe', dispensing: 'multi-use' });
    const ids = async (query: object, path?: string) =>
      (await list.run(book.actor, { limit: 50, ...query }, path)).items.map((item) => item.id);
    expect(await ids({ deviceIdentifier })).toEqual([id]);
    expect(await ids({ consumableId })).toHaveLength(2);
    expect(await ids({}, consumableId)).toHaveLength(2);
    expect(await ids({ q: 'syringe' }, consumableId)).toHaveLength(1);
    expect(await ids({ supplierId: newId() })).toEqual([]);
    expect(await refusal(list.run(book.actor, { limit: 50 }, newId()))).toBe('404 not_found id');
    expect(await refusal(list.run(book.stranger, { limit: 50 }, consumableId))).toBe(
      '404 not_found id',
    );
  });
});
