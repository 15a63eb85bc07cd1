import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { newId } from '#lib/platform';
import { audited, type Book, openBook, refusal } from '../db/book-for-tests.js';
import { ConsumableEntity } from '../db/consumable.entity.js';
import { loadConsumables } from '../db/load-consumables.js';
import { PresentationEntity } from '../db/presentation.entity.js';
import { SupplierEntity } from '../db/supplier.entity.js';
import { ChangeConsumable } from './change-consumable.js';
import { CreateConsumable, type NewConsumable } from './create-consumable.js';
import { GetConsumable } from './get-consumable.js';
import { ListCategories } from './list-categories.js';
import { ListConsumables } from './list-consumables.js';

let book: Book;

beforeAll(async () => {
  book = await openBook([ConsumableEntity, PresentationEntity, SupplierEntity]);
});

afterAll(() => book.close());

const paste = (more: Partial<NewConsumable> = {}): NewConsumable => ({
  name: `Paste ${newId()}`,
  category: 'composite',
  stockUnit: 'g',
  ...more,
});

function create(more: Partial<NewConsumable> = {}, as = book.actor) {
  return new CreateConsumable(book.uow).run(as, paste(more));
}

function change(id: string, changes: Parameters<ChangeConsumable['run']>[2], as = book.actor) {
  return new ChangeConsumable(book.uow).run(as, id, changes);
}

function list(query: Partial<Parameters<ListConsumables['run']>[1]>, as = book.actor) {
  return new ListConsumables(book.uow).run(as, { limit: 50, ...query });
}

describe('a new consumable', () => {
  it('is kept as it was entered', async () => {
    const view = await create({
      name: '  Universal paste ',
      shade: 'Body 2',
      size: ' ',
      lifeAfterOpening: { value: 6, unit: 'month' },
      reorderAt: '4.0',
      reorderUpTo: '12',
      densityGPerCm3: '2.050000',
    });
    expect(view).toEqual({
      id: view.id,
      name: 'Universal paste',
      category: 'composite',
      stockUnit: 'g',
      shade: 'Body 2',
      opacity: null,
      viscosity: null,
      size: null,
      grit: null,
      lifeAfterOpening: { value: 6, unit: 'month' },
      reorderAt: '4',
      reorderUpTo: '12',
      densityGPerCm3: '2.05',
      active: true,
    });
    expect(await new GetConsumable(book.uow).run(book.actor, view.id)).toEqual(view);
    expect(await audited(book.owner, view.id)).toEqual([
      { action: 'consumable.created', details: view },
    ]);
  });

  it('is written once when it is sent twice with its id, even at the same moment', async () => {
    const sent = paste({ id: newId(), reorderAt: '1.50' });
    const answers = await Promise.all([create(sent), create(sent), create(sent)]);
    expect(answers[1]).toEqual(answers[0]);
    expect(answers[2]).toEqual(answers[0]);
    expect(await create({ ...sent, reorderAt: '1.5' })).toEqual(answers[0]);
    expect(await audited(book.owner, sent.id ?? '')).toHaveLength(1);
    expect(await refusal(create({ ...sent, shade: 'Body 3' }))).toBe('409 already_exists id');
  });

  it('cannot take the id of another practice, nor see what is behind it', async () => {
    const { id } = await create();
    expect(await refusal(create({ id }, book.stranger))).toBe('409 already_exists id');
    const get = new GetConsumable(book.uow).run(book.stranger, id);
    expect(await refusal(get)).toBe('404 not_found id');
    expect(await refusal(change(id, { name: 'Mine' }, book.stranger))).toBe('404 not_found id');
  });

  it('has a name of its own per practice, shade, size and grit', async () => {
    await create({ name: 'Flow', shade: 'Body 1' });
    const again = create({ name: 'FLOW', shade: 'body 1' });
    expect(await refusal(again)).toBe('409 already_exists name');
    await create({ name: 'Flow', shade: 'Body 2' });
    await create({ name: 'Flow', shade: 'Body 1' }, book.stranger);
  });

  it('has reorder figures that fit together', async () => {
    const unfit = '422 figures_do_not_fit';
    expect(await refusal(create({ reorderUpTo: '5' }))).toBe(`${unfit} reorderAt`);
    const below = create({ reorderAt: '5', reorderUpTo: '4.9' });
    expect(await refusal(below)).toBe(`${unfit} reorderUpTo`);
  });
});

describe('changing a consumable', () => {
  it('changes the given fields only and says what changed', async () => {
    const before = await create({ shade: 'Body 2', lifeAfterOpening: { value: 30, unit: 'day' } });
    const after = await change(before.id, { shade: null, lifeAfterOpening: null, active: false });
    expect(after).toEqual({ ...before, shade: null, lifeAfterOpening: null, active: false });
    expect(await new GetConsumable(book.uow).run(book.actor, before.id)).toEqual(after);
    expect(await audited(book.owner, before.id)).toMatchObject([
      { action: 'consumable.created' },
      {
        action: 'consumable.changed',
        details: {
          shade: { from: 'Body 2', to: null },
          lifeAfterOpening: { from: { value: 30, unit: 'day' }, to: null },
          active: { from: true, to: false },
        },
      },
    ]);
  });

  it('writes nothing when nothing changes', async () => {
    const { id, name } = await create({ lifeAfterOpening: { value: 6, unit: 'month' } });
    await change(id, { name, lifeAfterOpening: { value: 6, unit: 'month' } });
    expect(await audited(book.owner, id)).toHaveLength(1);
  });

  it('refuses what does not fit what is there', async () => {
    const { id } = await create({ reorderAt: '3', reorderUpTo: '9' });
    const unfit = '422 figures_do_not_fit';
    expect(await refusal(change(id, { reorderAt: '10' }))).toBe(`${unfit} reorderUpTo`);
    expect(await refusal(change(id, { reorderAt: null }))).toBe(`${unfit} reorderAt`);
    const other = await create();
    expect(await refusal(change(id, { name: other.name }))).toBe('409 already_exists name');
    expect(await refusal(change(newId(), {}))).toBe('404 not_found id');
  });
});

describe('finding consumables', () => {
  it('searches, narrows and turns pages without repeating or missing any', async () => {
    const category = `wedges ${newId()}`;
    const names = ['wedge b', 'Wedge A', 'wedge c', 'WEDGE D', 'wedge e'];
    for (const name of names) await create({ name, category, stockUnit: 'piece' });
    await change((await create({ name: 'wedge f', category })).id, { active: false });
    const seen: string[] = [];
    let cursor: string | undefined;
    do {
      const page = await list({ category, active: true, limit: 2, cursor });
      seen.push(...page.items.map((item) => item.name));
      cursor = page.nextCursor ?? undefined;
    } while (cursor);
    expect(seen).toEqual(['Wedge A', 'wedge b', 'wedge c', 'WEDGE D', 'wedge e']);
    const retired = await list({ category, active: false });
    expect(retired.items.map((item) => item.name)).toEqual(['wedge f']);
    expect((await list({ category, q: 'EDGE C' })).items).toHaveLength(1);
    expect((await list({ category }, book.stranger)).items).toEqual([]);
    const bad = Buffer.from('["wedge","not an id"]').toString('base64url');
    expect(await refusal(list({ cursor: bad }))).toBe('400 invalid_request cursor');
  });

  it.each(['name', 'category', 'reorderAt', 'reorderUpTo'])(
    'sorts by %s both ways, page by page, each row once',
    async (sort) => {
      const words = `Sorted ${newId()}`;
      for (const [at, up, category] of [
        ['2', '10', 'bonding'],
        ['10', '11', 'Adhesive'],
        [null, null, 'adhesive'],
        ['2', '9', 'composite'],
      ] as const) {
        await create({ name: `${words} ${newId()}`, category, reorderAt: at, reorderUpTo: up });
      }
      const all = async (by: string) => {
        const seen: Awaited<ReturnType<typeof list>>['items'][number][] = [];
        let cursor: string | undefined;
        do {
          const page = await list({ q: words, sort: by, limit: 1, cursor });
          seen.push(...page.items);
          cursor = page.nextCursor ?? undefined;
        } while (cursor !== undefined);
        return seen;
      };
      const up = await all(sort);
      expect(up).toHaveLength(4);
      expect((await all(`-${sort}`)).reverse()).toEqual(up);
      if (sort === 'reorderAt')
        expect(up.map((row) => row.reorderAt)).toEqual([null, '2', '2', '10']);
      if (sort === 'category')
        expect(up.map((row) => row.category.toLowerCase())).toEqual(
          up.map((row) => row.category.toLowerCase()).sort(),
        );
      const foreign = await list({ q: words, sort: 'name', limit: 1 });
      if (sort.startsWith('reorder'))
        await expect(list({ q: words, sort, cursor: foreign.nextCursor ?? '' })).rejects.toThrow(
          /cursor/,
        );
    },
  );

  it('lists categories with what is active in them', async () => {
    const category = `discs ${newId()}`;
    const { id } = await create({ category });
    await create({ category });
    await change(id, { active: false });
    const { items } = await new ListCategories(book.uow).run(book.actor);
    expect(items).toContainEqual({ name: category, consumables: 1 });
    expect((await new ListCategories(book.uow).run(book.stranger)).items).not.toContainEqual(
      expect.objectContaining({ name: category }),
    );
  });

  it('hands facts to other contexts', async () => {
    const mine = await create({ shade: 'Body 4' });
    const theirs = await create({}, book.stranger);
    const facts = await book.uow.read(book.actor.practiceId, (tx) =>
      loadConsumables(tx, [mine.id, mine.id, theirs.id, newId()]),
    );
    const { id, name, category, shade, stockUnit, active } = mine;
    expect([...facts]).toEqual([[id, { id, name, category, shade, stockUnit, active }]]);
  });
});
