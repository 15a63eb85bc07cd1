import { Injectable } from '@nestjs/common';
import { recordAudit } from '#lib/access';
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
import { insertOneOff, loadOneOffs, type OneOffMark, withdrawOneOff } from '../db/one-off-marks.js';
import type { NewOneOffDto, OneOffDto, OneOffListDto } from '../http/planning-settings.dto.js';
import { refusePurchasing } from '../purchasing.refusals.js';

/** A mark covers so many days at most; more than that is no event but another way of working. */
const LONGEST_EVENT_DAYS = 366;

/** Marks use that says nothing about the days to come. */
@Injectable()
export class OneOffDesk {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async list(actor: Actor): Promise<OneOffListDto> {
    const marks = await this.uow.read(actor.practiceId, (tx) => loadOneOffs(tx));
    return { marks: marks.map(toDto) };
  }

  async mark(actor: Actor, key: string, command: NewOneOffDto): Promise<Claimed<OneOffDto>> {
    const { consumableId, firstDay, lastDay } = command;
    const span = (Date.parse(lastDay) - Date.parse(firstDay)) / 86_400_000;
    if (span < 0 || span >= LONGEST_EVENT_DAYS) {
      const message = 'must not be before firstDay, nor more than a year after it';
      throw invalidFields([{ field: 'lastDay', message }]);
    }
    const operation = 'POST /api/reorder/one-offs';
    return this.uow.runOnce({ actor, key, operation, body: command }, async (tx) => {
      const known = await tx.query(
        'SELECT id FROM consumables WHERE practice_id = $1 AND id = $2',
        [tx.practiceId, consumableId],
      );
      if (known.length === 0) throw unknownReference('consumableId', 'consumable');
      const [id, note, madeAt] = [newId(), command.note.trim(), this.clock.now()];
      const { personId } = actor;
      await insertOneOff(tx, { id, consumableId, firstDay, lastDay, note, personId, madeAt });
      await audit(tx, actor, 'one-off.marked', consumableId, { id, firstDay, lastDay, note });
      return toDto(await oneMark(tx, id));
    });
  }

  async withdraw(actor: Actor, key: string, id: string): Promise<Claimed<OneOffDto>> {
    const operation = `POST /api/reorder/one-offs/${id}/withdrawal`;
    return this.uow.runOnce({ actor, key, operation, body: {} }, async (tx) => {
      const { consumableId } = await oneMark(tx, id);
      const by = { personId: actor.personId, at: this.clock.now() };
      if (!(await withdrawOneOff(tx, id, by))) {
        throw refusePurchasing('already_withdrawn', 'This mark was taken back before.');
      }
      await audit(tx, actor, 'one-off.withdrawn', consumableId, { id });
      return toDto(await oneMark(tx, id));
    });
  }
}

async function oneMark(tx: Tx, id: string): Promise<OneOffMark> {
  const [mark] = await loadOneOffs(tx, id);
  if (!mark) throw refuse('not_found', 'There is no mark with this id.');
  return mark;
}

function audit(
  tx: Tx,
  actor: Actor,
  action: string,
  consumableId: string,
  details: Readonly<Record<string, unknown>>,
): Promise<void> {
  return recordAudit(tx, actor, {
    ...{ action, subjectKind: 'consumable', subjectId: consumableId, details },
  });
}

function toDto(mark: OneOffMark): OneOffDto {
  const { id, consumableId, firstDay, lastDay, note, person } = mark;
  return {
    ...{ id, consumableId, firstDay, lastDay, note, by: person },
    madeAt: mark.madeAt.toISOString(),
    withdrawn: mark.withdrawnAt !== null,
  };
}
