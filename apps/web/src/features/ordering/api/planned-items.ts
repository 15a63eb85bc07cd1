import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type PlannedItem = Shape<'PlannedItemDto'>;
export type Consumable = PlannedItem['consumable'];
export type ItemForecast = Shape<'ItemForecastDto'>;

/** Where every consumable stands. */
export const plannedItemsQuery = queryOptions({
  queryKey: ['reorder', 'items'],
  queryFn: ({ signal }): Promise<Shape<'PlannedItemListDto'>> =>
    answerOf(api.GET('/api/reorder/items', { signal })),
});

/** The whole policy of one. */
export const plannedItemQuery = (id: string) =>
  queryOptions({
    queryKey: ['reorder', 'items', id],
    queryFn: ({ signal }): Promise<Shape<'PlannedItemAnswerDto'>> =>
      answerOf(api.GET('/api/reorder/items/{id}', { params: { path: { id } }, signal })),
  });

/** What was used of it, and the range of what will be. */
export const forecastQuery = (id: string) =>
  queryOptions({
    queryKey: ['reorder', 'forecasts', id],
    queryFn: ({ signal }): Promise<ItemForecast> =>
      answerOf(api.GET('/api/reorder/forecasts/{id}', { params: { path: { id } }, signal })),
  });
