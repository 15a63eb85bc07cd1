import { Injectable } from '@nestjs/common';
import { type Actor, invalidFields, refuse, type Tx, UnitOfWork } from '#lib/platform';
import {
  loadOwnPlanning,
  loadPlanningSettings,
  saveOwnPlanning,
  savePlanningSettings,
} from '../db/planning-settings.js';
import { checkOwnPlanning } from '../domain/planning/own-planning.js';
import {
  type ConsumablePlanning,
  inForce,
  NOTHING_OWN,
} from '../domain/planning/planning-settings.js';
import type {
  ConsumablePlanningAnswerDto,
  ConsumablePlanningDto,
  PlanningSettingsDto,
} from '../http/planning-settings.dto.js';
import { recordChange } from './record-change.js';

/** How the practice plans its orders: its own defaults, and single consumables. */
@Injectable()
export class PlanningSettingsDesk {
  constructor(private readonly uow: UnitOfWork) {}

  async get(actor: Actor): Promise<PlanningSettingsDto> {
    return this.uow.read(actor.practiceId, loadPlanningSettings);
  }

  async set(actor: Actor, after: PlanningSettingsDto): Promise<PlanningSettingsDto> {
    return this.uow.run(actor.practiceId, async (tx) => {
      const before = await loadPlanningSettings(tx);
      await savePlanningSettings(tx, after);
      const subject = { kind: 'practice', id: actor.practiceId };
      await recordChange(tx, actor, 'planning-settings.changed', subject, { before, after });
      return loadPlanningSettings(tx);
    });
  }

  async getConsumable(actor: Actor, id: string): Promise<ConsumablePlanningAnswerDto> {
    return this.uow.read(actor.practiceId, (tx) => consumableAnswer(tx, id));
  }

  async setConsumable(
    actor: Actor,
    id: string,
    command: ConsumablePlanningDto,
  ): Promise<ConsumablePlanningAnswerDto> {
    const after = ownOf(command);
    const wrong = checkOwnPlanning(after);
    if (wrong !== null) throw invalidFields([wrong]);
    return this.uow.run(actor.practiceId, async (tx) => {
      const { own: before } = await consumableAnswer(tx, id);
      await saveOwnPlanning(tx, id, after);
      const subject = { kind: 'consumable', id };
      await recordChange(tx, actor, 'consumable-planning.changed', subject, { before, after });
      return consumableAnswer(tx, id);
    });
  }
}

async function consumableAnswer(tx: Tx, id: string): Promise<ConsumablePlanningAnswerDto> {
  const found = await tx.query('SELECT id FROM consumables WHERE practice_id = $1 AND id = $2', [
    tx.practiceId,
    id,
  ]);
  if (found.length === 0) throw refuse('not_found', 'There is no consumable with this id.');
  const practice = await loadPlanningSettings(tx);
  const own = (await loadOwnPlanning(tx, id)).get(id) ?? NOTHING_OWN;
  return { consumableId: id, own, inForce: inForce(practice, own) };
}

function ownOf(command: ConsumablePlanningDto): ConsumablePlanning {
  return {
    serviceMeasure: command.serviceMeasure ?? null,
    serviceLevel: command.serviceLevel ?? null,
    reviewDays: command.reviewDays ?? null,
    expiryCertainty: command.expiryCertainty ?? null,
    reorderAt: command.reorderAt ?? null,
    orderUpTo: command.orderUpTo ?? null,
    shelfRoom: command.shelfRoom ?? null,
    note: command.note?.trim() ?? null,
  };
}
