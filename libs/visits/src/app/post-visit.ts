import { Injectable } from '@nestjs/common';
import { formatSurfaces } from '#lib/dentition';
import {
  type Actor,
  type Claimed,
  Clock,
  newId,
  refuse,
  type Tx,
  UnitOfWork,
  unknownReference,
} from '#lib/platform';
import { applyStockChanges, StockArrivals, type Take } from '#lib/stock';
import type { VisitFacts } from '../db/visit-facts.js';
import { insertVisit, type NewShortfall, type NewVisit } from '../db/visit-record.js';
import type { PostVisitDto } from '../http/visit-inputs.dto.js';
import type { VisitDto } from '../http/visit-outputs.dto.js';
import { VisitReader } from '../queries/visit-reader.js';
import { refuseVisit } from '../visits.refusals.js';
import { type PlannedVisit, planVisit } from './plan-visit.js';
import { type IssueChanges, issueChanges } from './visit-changes.js';
import { viewOf } from './visit-view.js';

/** Records a visit: stock leaves first-expired-first-out and every restoration gets its cost. */
@Injectable()
export class PostVisit {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly arrivals: StockArrivals,
    private readonly reader: VisitReader,
  ) {}

  async run(actor: Actor, key: string, command: PostVisitDto): Promise<Claimed<VisitDto>> {
    const operation = 'POST /api/visits';
    return this.uow.runOnce({ actor, key, operation, body: command }, (tx) =>
      this.post(tx, actor, command),
    );
  }

  private async post(tx: Tx, actor: Actor, command: PostVisitDto): Promise<VisitDto> {
    refuseFuture(command.visitedOn, this.clock.today(actor.timeZone));
    refuseRepeatedIds(command);
    const { dentistId, chartReference } = command;
    const purpose = { dentistId, chartReference, lock: true };
    const planned = await planVisit(tx, actor, command, purpose);
    const dentist = checkDentist(planned.facts);
    const recordedAt = this.clock.now();
    const visit = newVisit(command, planned, recordedAt);
    const open = await insertVisit(tx, actor.personId, visit).catch(refuseIds);
    if (!open) throw bookingClosed();
    const { changes, movementOf } = movementsOf(visit, planned);
    if (changes.movements.length > 0) await applyStockChanges(tx, actor.personId, changes);
    if (planned.late.length > 0) {
      // Entered late: goods that came after the visit's day settle its shortfall at once.
      await this.arrivals.announce(tx, actor, planned.late);
      return this.reader.get(tx, actor, visit.id);
    }
    const ids = {
      restorations: visit.restorations.map((r) => r.id),
      lines: visit.lines.map((line) => line.id),
      movementOf,
    };
    return {
      ...viewOf(planned, actor, command.visitedOn, ids),
      id: visit.id,
      chartReference: visit.chartReference,
      dentist: { id: dentist.id, name: dentist.display_name },
      recordedAt: recordedAt.toISOString(),
      recordedBy: actor.displayName,
      reversal: null,
    };
  }
}

export function refuseFuture(day: string, today: string): void {
  if (day <= today) return;
  throw refuseVisit('date_in_future', `${day} is after today, ${today}.`, [
    { field: 'visitedOn', message: `must not be after today, ${today}` },
  ]);
}

function refuseRepeatedIds(command: PostVisitDto): void {
  const seen = new Set<string>();
  command.restorations.forEach(({ id }, i) => {
    if (id && seen.has(id)) throw alreadyThere(`restorations[${i}].id`, 'was given before');
    if (id) seen.add(id);
  });
}

const FIELD_OF: Record<string, string> = {
  visits_pkey: 'id',
  restorations_pkey: 'restorations',
  restoration_costs_pkey: 'restorations',
};

/** Ids come from the client: one in the book already, or a booking that is none, is its mistake. */
function refuseIds(error: unknown): never {
  const constraint = error instanceof Error && 'constraint' in error ? error.constraint : null;
  if (constraint === 'visits_practice_id_booked_visit_id_fkey') {
    throw unknownReference('bookedVisitId', 'booked visit');
  }
  const field = typeof constraint === 'string' ? FIELD_OF[constraint] : undefined;
  throw field ? alreadyThere(field, 'has an id that is in the book already') : error;
}

function bookingClosed() {
  return refuseVisit('booking_closed', 'The booked visit was recorded or dropped before.', [
    { field: 'bookedVisitId', message: 'names a booked visit that is not to come any more' },
  ]);
}

function alreadyThere(field: string, message: string) {
  return refuse('already_exists', `${field} ${message}.`, [{ field, message }]);
}

function checkDentist(facts: VisitFacts): NonNullable<VisitFacts['dentist']> {
  const { dentist } = facts;
  if (!dentist) throw unknownReference('dentistId', 'person');
  if (dentist.role !== 'dentist' && dentist.role !== 'owner') {
    throw refuseVisit('not_a_dentist', `${dentist.display_name} is not a dentist.`, [
      { field: 'dentistId', message: 'names a person who is not a dentist of the practice' },
    ]);
  }
  return dentist;
}

function newVisit(command: PostVisitDto, planned: PlannedVisit, recordedAt: Date): NewVisit {
  const lines = planned.issued.lines.map((line) => ({
    ...line.draft,
    id: newId(),
    charged: line.charged,
    cost: line.cost,
  }));
  return {
    id: command.id ?? newId(),
    chartReference: command.chartReference.trim(),
    visitedOn: command.visitedOn,
    dentistId: command.dentistId,
    locationId: command.locationId,
    staffCount: planned.staffCount,
    costShareKey: planned.costShareKey,
    withoutAnaesthetic: planned.withoutAnaesthetic,
    recordedAt,
    bookedVisitId: command.bookedVisitId ?? null,
    restorations: planned.restorations.map((r, i) => ({
      id: command.restorations[i]?.id ?? newId(),
      tooth: r.tooth,
      surfaces: formatSurfaces(r.surfaces),
      cavityClass: r.cavityClass ?? null,
      reason: r.reason,
      templateId: r.template.templateId,
      templateVersion: r.template.version,
      shades: r.shades,
      attempts: r.attempts,
      cycles: r.cycles,
      volumeMm3: r.volumeMm3,
      volumeSource: r.volumeSource,
      lengthMm: r.lengthMm,
      widthMm: r.widthMm,
      depthMm: r.depthMm,
      minutes: r.minutes,
      assistantMinutes: r.assistantMinutes,
      redoOf: planned.redoOf[i]?.id ?? null,
    })),
    lines,
    shortfalls: shortfallsOf(planned, (i) => lines[i]?.id ?? ''),
    cost: planned.cost,
  };
}

function shortfallsOf(planned: PlannedVisit, lineId: (index: number) => string): NewShortfall[] {
  return planned.issued.lines.flatMap(({ draft, missing }, i) =>
    missing === null
      ? []
      : [{ ...missing, id: newId(), usageLineId: lineId(i), consumableId: draft.consumableId }],
  );
}

function movementsOf(visit: NewVisit, planned: PlannedVisit): IssueChanges {
  return issueChanges(planned.issued.plan, (take: Take) => {
    const line = visit.lines[take.need];
    if (!line) throw new Error('A take belongs to no usage line');
    return { visitId: visit.id, usageLineId: line.id };
  });
}
