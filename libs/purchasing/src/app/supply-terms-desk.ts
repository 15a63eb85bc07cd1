import { Injectable } from '@nestjs/common';
import { type Actor, Clock, invalidFields, refuse, type Tx, UnitOfWork } from '#lib/platform';
import { loadPresentationTerms, savePresentationTerms } from '../db/presentation-terms.js';
import { loadSupplyTerms, saveSupplyTerms } from '../db/supply-terms.js';
import { checkClosures } from '../domain/planning/closures.js';
import {
  type Closure,
  PLAIN_PRESENTATION,
  PLAIN_TERMS,
  type PresentationTerms,
  type SupplyTerms,
  WEEKDAYS,
} from '../domain/planning/planning-settings.js';
import { checkPriceList } from '../domain/planning/price-list.js';
import type {
  PresentationTermsAnswerDto,
  PresentationTermsDto,
  SupplyTermsAnswerDto,
  SupplyTermsDto,
} from '../http/supply-terms.dto.js';
import { loadPlanningRules } from '../queries/planning-facts.js';
import { leadDto } from '../queries/supplier-lead-view.js';
import { recordChange } from './record-change.js';

/** What suppliers ask for, and how presentations are sold. */
@Injectable()
export class SupplyTermsDesk {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async getSupplier(actor: Actor, id: string): Promise<SupplyTermsAnswerDto> {
    return this.uow.read(actor.practiceId, (tx) => this.supplierAnswer(tx, actor, id));
  }

  async setSupplier(
    actor: Actor,
    id: string,
    command: SupplyTermsDto,
  ): Promise<SupplyTermsAnswerDto> {
    const after = termsOf(command);
    const wrong = checkClosures(after);
    if (wrong !== null) throw invalidFields([wrong]);
    return this.uow.run(actor.practiceId, async (tx) => {
      await checkThere(tx, 'suppliers', id, 'There is no supplier with this id.');
      const before = (await loadSupplyTerms(tx, id)).get(id) ?? PLAIN_TERMS;
      await saveSupplyTerms(tx, id, after);
      const subject = { kind: 'supplier', id };
      await recordChange(tx, actor, 'supplier-terms.changed', subject, { before, after });
      return this.supplierAnswer(tx, actor, id);
    });
  }

  async getPresentation(actor: Actor, id: string): Promise<PresentationTermsAnswerDto> {
    return this.uow.read(actor.practiceId, (tx) => presentationAnswer(tx, id));
  }

  async setPresentation(
    actor: Actor,
    id: string,
    after: PresentationTermsDto,
  ): Promise<PresentationTermsAnswerDto> {
    const wrong = checkPriceList(after.prices);
    if (wrong !== null) {
      const { at, field, message } = wrong;
      throw invalidFields([{ field: `prices[${at}].${field}`, message }]);
    }
    return this.uow.run(actor.practiceId, async (tx) => {
      const { terms: before } = await presentationAnswer(tx, id);
      await savePresentationTerms(tx, id, after);
      const subject = { kind: 'presentation', id };
      await recordChange(tx, actor, 'presentation-terms.changed', subject, { before, after });
      return presentationAnswer(tx, id);
    });
  }

  private async supplierAnswer(tx: Tx, actor: Actor, id: string): Promise<SupplyTermsAnswerDto> {
    await checkThere(tx, 'suppliers', id, 'There is no supplier with this id.');
    const terms = (await loadSupplyTerms(tx, id)).get(id) ?? PLAIN_TERMS;
    const rules = await loadPlanningRules(tx, this.clock.today(actor.timeZone));
    return {
      supplierId: id,
      terms: {
        ...terms,
        workingDays: [...terms.workingDays],
        closures: terms.closures.map((closure) => ({ ...closure })),
      },
      lead: leadDto(rules.leadOf(id), rules.today),
    };
  }
}

async function presentationAnswer(tx: Tx, id: string): Promise<PresentationTermsAnswerDto> {
  await checkThere(tx, 'presentations', id, 'There is no presentation with this id.');
  const terms: PresentationTerms =
    (await loadPresentationTerms(tx, id)).get(id) ?? PLAIN_PRESENTATION;
  const prices = terms.prices.map((step) => ({ ...step }));
  return { presentationId: id, terms: { ...terms, prices } };
}

async function checkThere(
  tx: Tx,
  table: 'suppliers' | 'presentations',
  id: string,
  message: string,
): Promise<void> {
  const sql = `SELECT id FROM ${table} WHERE practice_id = $1 AND id = $2`;
  const found = await tx.query(sql, [tx.practiceId, id]);
  if (found.length === 0) throw refuse('not_found', message);
}

function termsOf(command: SupplyTermsDto): SupplyTerms {
  return {
    leadDays: command.leadDays ?? null,
    orderCost: command.orderCost ?? null,
    minimumOrder: command.minimumOrder ?? null,
    freight: command.freight,
    freeFreightFrom: command.freeFreightFrom ?? null,
    workingDays: WEEKDAYS.filter((day) => command.workingDays.includes(day)),
    closures: (command.closures ?? []).map(
      ({ firstDay, lastDay, note }): Closure => ({
        ...{ firstDay, lastDay, note: note?.trim() || null },
      }),
    ),
  };
}
