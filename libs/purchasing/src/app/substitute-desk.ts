import { Injectable } from '@nestjs/common';
import {
  type Actor,
  type Claimed,
  Clock,
  invalidFields,
  newId,
  refuse,
  type Tx,
  UnitOfWork,
  unknownReference,
} from '#lib/platform';
import {
  insertSubstitute,
  loadSubstitutes,
  type SubstitutePair,
  withdrawSubstitute,
} from '../db/substitutes.js';
import type {
  NewSubstituteDto,
  SubstitutePairDto,
  SubstitutePairListDto,
} from '../http/substitutes.dto.js';
import { refusePurchasing } from '../purchasing.refusals.js';
import { recordChange } from './record-change.js';

/** What may stand in for what, by the word of a person; offered beside proposals, never taken. */
@Injectable()
export class SubstituteDesk {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async list(actor: Actor): Promise<SubstitutePairListDto> {
    const pairs = await this.uow.read(actor.practiceId, (tx) => loadSubstitutes(tx));
    return { pairs: pairs.map(toDto) };
  }

  async add(
    actor: Actor,
    key: string,
    command: NewSubstituteDto,
  ): Promise<Claimed<SubstitutePairDto>> {
    const { consumableId, standInId } = command;
    if (consumableId === standInId) {
      throw invalidFields([{ field: 'standInId', message: 'must be another consumable' }]);
    }
    const operation = 'POST /api/reorder/substitutes';
    return this.uow.runOnce({ actor, key, operation, body: command }, async (tx) => {
      await checkPair(tx, command);
      const [id, note, madeAt] = [newId(), command.note?.trim() || null, this.clock.now()];
      const pair = { id, consumableId, standInId, note, personId: actor.personId, madeAt };
      if (!(await insertSubstitute(tx, pair))) {
        throw refusePurchasing('pair_stands', 'This pair was entered before, and still stands.');
      }
      const subject = { kind: 'consumable', id: consumableId };
      await recordChange(tx, actor, 'substitute.added', subject, { id, standInId, note });
      return toDto(await onePair(tx, id));
    });
  }

  async withdraw(actor: Actor, key: string, id: string): Promise<Claimed<SubstitutePairDto>> {
    const operation = `POST /api/reorder/substitutes/${id}/withdrawal`;
    return this.uow.runOnce({ actor, key, operation, body: {} }, async (tx) => {
      const { consumableId, standInId } = await onePair(tx, id);
      const by = { personId: actor.personId, at: this.clock.now() };
      if (!(await withdrawSubstitute(tx, id, by))) {
        throw refusePurchasing('already_withdrawn', 'This pair was taken back before.');
      }
      const subject = { kind: 'consumable', id: consumableId };
      await recordChange(tx, actor, 'substitute.withdrawn', subject, { id, standInId });
      return toDto(await onePair(tx, id));
    });
  }
}

/** Both have to be there, and be counted in the same unit. */
async function checkPair(tx: Tx, { consumableId, standInId }: NewSubstituteDto): Promise<void> {
  const rows = await tx.query<{ id: string; unit: string }>(
    `SELECT id, stock_unit AS unit FROM consumables WHERE practice_id = $1 AND id = ANY ($2)`,
    [tx.practiceId, [consumableId, standInId]],
  );
  const units = new Map(rows.map((row) => [row.id, row.unit]));
  if (!units.has(consumableId)) throw unknownReference('consumableId', 'consumable');
  if (!units.has(standInId)) throw unknownReference('standInId', 'consumable');
  if (units.get(consumableId) !== units.get(standInId)) {
    const message = 'is counted in another unit, so its figures could not be compared';
    throw invalidFields([{ field: 'standInId', message }]);
  }
}

async function onePair(tx: Tx, id: string): Promise<SubstitutePair> {
  const [pair] = await loadSubstitutes(tx, id);
  if (!pair) throw refuse('not_found', 'There is no such pair with this id.');
  return pair;
}

function toDto(pair: SubstitutePair): SubstitutePairDto {
  const { id, consumableId, standInId, note, person } = pair;
  return {
    ...{ id, consumableId, standInId, note, by: person },
    madeAt: pair.madeAt.toISOString(),
    withdrawn: pair.withdrawnAt !== null,
  };
}
