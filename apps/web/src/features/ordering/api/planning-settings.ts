import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type PlanningSettings = Shape<'PlanningSettingsDto'>;
export type OwnPlanning = Shape<'ConsumablePlanningDto'>;
export type SupplyTerms = Shape<'SupplyTermsDto'>;
export type PresentationTerms = Shape<'PresentationTermsDto'>;

const path = (id: string) => ({ path: { id } });

export const planningSettingsQuery = queryOptions({
  queryKey: ['reorder', 'settings'],
  queryFn: ({ signal }): Promise<PlanningSettings> =>
    answerOf(api.GET('/api/reorder/settings', { signal })),
});

export const setPlanningSettings = (body: PlanningSettings): Promise<PlanningSettings> =>
  answerOf(api.PUT('/api/reorder/settings', { body }));

export const ownPlanningQuery = (id: string) =>
  queryOptions({
    queryKey: ['reorder', 'settings', 'consumables', id],
    queryFn: ({ signal }): Promise<Shape<'ConsumablePlanningAnswerDto'>> =>
      answerOf(api.GET('/api/reorder/settings/consumables/{id}', { params: path(id), signal })),
  });

export const setOwnPlanning = (
  id: string,
  body: OwnPlanning,
): Promise<Shape<'ConsumablePlanningAnswerDto'>> =>
  answerOf(api.PUT('/api/reorder/settings/consumables/{id}', { params: path(id), body }));

export const supplyTermsQuery = (id: string) =>
  queryOptions({
    queryKey: ['reorder', 'settings', 'suppliers', id],
    queryFn: ({ signal }): Promise<Shape<'SupplyTermsAnswerDto'>> =>
      answerOf(api.GET('/api/reorder/settings/suppliers/{id}', { params: path(id), signal })),
  });

export const setSupplyTerms = (
  id: string,
  body: SupplyTerms,
): Promise<Shape<'SupplyTermsAnswerDto'>> =>
  answerOf(api.PUT('/api/reorder/settings/suppliers/{id}', { params: path(id), body }));

export const presentationTermsQuery = (id: string) =>
  queryOptions({
    queryKey: ['reorder', 'settings', 'presentations', id],
    queryFn: ({ signal }): Promise<Shape<'PresentationTermsAnswerDto'>> =>
      answerOf(api.GET('/api/reorder/settings/presentations/{id}', { params: path(id), signal })),
  });

export const setPresentationTerms = (
  id: string,
  body: PresentationTerms,
): Promise<Shape<'PresentationTermsAnswerDto'>> =>
  answerOf(api.PUT('/api/reorder/settings/presentations/{id}', { params: path(id), body }));

/** Everything that rests on the settings. */
export const PLANNING_CHANGES = [['reorder'], ['alerts']] as const;
