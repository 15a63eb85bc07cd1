import { quantity } from '#lib/measure';
import type { ConsumablePlanning } from './planning-settings.js';

export interface OwnPlanningProblem {
  readonly field: 'serviceMeasure' | 'serviceLevel' | 'orderUpTo';
  readonly message: string;
}

/** What does not go together in what a consumable has of its own; null when everything does. */
export function checkOwnPlanning(own: ConsumablePlanning): OwnPlanningProblem | null {
  if ((own.serviceMeasure === null) !== (own.serviceLevel === null)) {
    const field = own.serviceMeasure === null ? 'serviceMeasure' : 'serviceLevel';
    return { field, message: 'measure and level are set together, or neither' };
  }
  const { reorderAt, orderUpTo } = own;
  if (reorderAt !== null && orderUpTo !== null && quantity(orderUpTo) < quantity(reorderAt)) {
    return { field: 'orderUpTo', message: 'must not be below reorderAt' };
  }
  return null;
}
