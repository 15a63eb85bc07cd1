import { Injectable } from '@nestjs/common';
import {
  type Actor,
  type CostShareKey,
  type FieldError,
  invalidFields,
  newId,
  type Tx,
  UnitOfWork,
} from '#lib/platform';
import { PracticeEntity } from '../db/practice.entity.js';
import { currencyProblem, timeZoneProblem } from '../domain/practice-rules.js';
import { insertPerson, preparePerson } from './add-person.js';
import { recordAudit } from './record-audit.js';

export interface NewPractice {
  readonly practice: {
    readonly name: string;
    readonly timeZone: string;
    readonly currency: string;
    readonly toothNotation?: 'iso' | 'universal' | undefined;
    readonly costShareKey?: CostShareKey | undefined;
    readonly expiryWarningDays?: number | undefined;
  };
  readonly owner: {
    readonly displayName: string;
    readonly signInName: string;
    readonly password: string;
  };
  readonly practiceId?: string;
  readonly ownerId?: string;
}

/** Opens the book of a practice together with its first owner, and answers as whom to go on. */
@Injectable()
export class CreatePractice {
  constructor(private readonly uow: UnitOfWork) {}

  /** `first` runs in the same transaction before anything is stored; what it throws stops all. */
  async run(command: NewPractice, first?: (tx: Tx) => Promise<void>): Promise<Actor> {
    const practice = practiceRow(command);
    const person = await preparePerson(
      { ...command.owner, role: 'owner' },
      practice.id,
      command.ownerId,
      'owner.',
    );
    const actor: Actor = {
      personId: person.id,
      displayName: person.displayName,
      signInName: person.signInName,
      role: person.role,
      practiceId: practice.id,
      practiceName: practice.name,
      timeZone: practice.timeZone,
      currency: practice.currency,
      toothNotation: practice.toothNotation,
      costShareKey: practice.costShareKey,
      expiryWarningDays: practice.expiryWarningDays,
    };
    return this.uow.run(practice.id, async (tx) => {
      await first?.(tx);
      await tx.manager.insert(PracticeEntity, practice);
      await insertPerson(tx, person, 'owner.');
      await recordAudit(tx, actor, {
        action: 'practice.created',
        subjectKind: 'practice',
        subjectId: practice.id,
        details: { ...practice, owner: person.signInName },
      });
      return actor;
    });
  }
}

function practiceRow(command: NewPractice): PracticeEntity {
  const { name, timeZone, currency, ...more } = command.practice;
  const length = name.trim().length;
  const problems = {
    name: length >= 1 && length <= 200 ? undefined : 'must be 1 to 200 characters',
    timeZone: timeZoneProblem(timeZone),
    currency: currencyProblem(currency),
  };
  const errors: FieldError[] = Object.entries(problems).flatMap(([field, message]) =>
    message === undefined ? [] : [{ field: `practice.${field}`, message }],
  );
  if (errors.length > 0) throw invalidFields(errors);
  return {
    id: command.practiceId ?? newId(),
    name: name.trim(),
    timeZone,
    currency,
    toothNotation: more.toothNotation ?? 'iso',
    costShareKey: more.costShareKey ?? 'equal',
    expiryWarningDays: more.expiryWarningDays ?? 60,
  };
}
