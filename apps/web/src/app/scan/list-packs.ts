import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../api/client.js';

export interface Pack {
  readonly presentation: Shape<'PresentationDto'>;
  readonly consumable: Shape<'ConsumableDto'>;
  /** 'Paste, Body 2: Syringe 4 g' */
  readonly name: string;
}

async function everyPresentation(signal: AbortSignal): Promise<Shape<'PresentationDto'>[]> {
  const all: Shape<'PresentationDto'>[] = [];
  let cursor: string | null = null;
  do {
    const query = { active: 'true' as const, limit: 500, ...(cursor === null ? {} : { cursor }) };
    const page: Shape<'PresentationPageDto'> = await answerOf(
      api.GET('/api/presentations', { params: { query }, signal }),
    );
    all.push(...page.items);
    cursor = page.nextCursor;
  } while (cursor !== null);
  return all;
}

async function everyConsumable(signal: AbortSignal): Promise<Shape<'ConsumableDto'>[]> {
  const all: Shape<'ConsumableDto'>[] = [];
  let cursor: string | null = null;
  do {
    const query = { active: 'true' as const, limit: 500, ...(cursor === null ? {} : { cursor }) };
    const page: Shape<'ConsumablePageDto'> = await answerOf(
      api.GET('/api/consumables', { params: { query }, signal }),
    );
    all.push(...page.items);
    cursor = page.nextCursor;
  } while (cursor !== null);
  return all;
}

/** Every pack that is bought now, by name. */
export const packsQuery = queryOptions({
  queryKey: ['presentations', 'named'],
  queryFn: async ({ signal }): Promise<readonly Pack[]> => {
    const [presentations, consumables] = await Promise.all([
      everyPresentation(signal),
      everyConsumable(signal),
    ]);
    const byId = new Map(consumables.map((one) => [one.id, one]));
    const packs = presentations.flatMap((presentation) => {
      const consumable = byId.get(presentation.consumableId);
      if (!consumable) return [];
      const { name, shade, size, grit } = consumable;
      const full = [name, shade, size, grit].filter((part) => part !== null && part !== '');
      return [{ presentation, consumable, name: `${full.join(', ')}: ${presentation.name}` }];
    });
    return packs.sort((one, other) => one.name.localeCompare(other.name));
  },
});
