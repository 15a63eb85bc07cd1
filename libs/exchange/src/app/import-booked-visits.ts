import { Injectable } from '@nestjs/common';
import type { CavityClass, CavitySize, Reason } from '#lib/dentition';
import { type Actor, type FieldError, Refused } from '#lib/platform';
import { type BookedVisitInput, BookVisits, readBooking } from '#lib/visits';
import { loadBookedFacts, loadBookings, type StoredBooking } from '../db/load-booked.js';
import { type Fate, failed, type RowFate } from '../domain/fate.js';
import { type BookedGroup, readBookings } from '../domain/plan/booked-rows.js';
import { type CellProblem, problem } from '../domain/problems.js';
import type { ListRow } from '../domain/read-rows.js';
import type { Importing } from './importing.js';

/** Brings booked visits in: those with a reference are changed by it, others are known by what they say. */
@Injectable()
export class ImportBookedVisits {
  constructor(private readonly bookVisits: BookVisits) {}

  async run({ tx, actor, onProgress }: Importing, rows: readonly ListRow[]): Promise<RowFate[]> {
    const { groups, failed: bad } = readBookings(await loadBookedFacts(tx), rows);
    const stored = await loadBookings(
      tx,
      [...new Set(groups.map((group) => group.day))],
      groups.flatMap((group) => group.externalReference ?? []),
    );
    const fates = new Map<number, RowFate>(bad.map((fate) => [fate.row, fate]));
    const judged = judge(groups, stored, actor);
    const toBook = judged.flatMap((each) => (each.fate === 'same' ? [] : [each.group]));
    const wrong = await this.book({ tx, actor }, toBook);
    for (const { group, fate } of judged) {
      const problems = wrong.get(group) ?? [];
      for (const row of group.rows) fates.set(row.number, fateOf(group, { row, fate, problems }));
    }
    await onProgress(rows.length);
    return rows.map((row) => {
      const fate = fates.get(row.number);
      if (!fate) throw new Error(`Row ${row.number} got no fate`);
      return fate;
    });
  }

  /** Books them; answers what is wrong where something is, and then nothing was booked. */
  private async book(
    { tx, actor }: Pick<Importing, 'tx' | 'actor'>,
    groups: readonly BookedGroup[],
  ): Promise<Map<BookedGroup, readonly FieldError[]>> {
    const wrong = new Map<BookedGroup, FieldError[]>();
    if (groups.length === 0) return wrong;
    try {
      await this.bookVisits.runMany(tx, actor, groups.map(inputOf));
    } catch (error) {
      if (!(error instanceof Refused)) throw error;
      for (const { field, message } of error.fields) {
        const match = /^rows\[(\d+)\]\.(.*)$/.exec(field);
        const group = groups[Number(match?.[1])];
        if (!match || !group) throw error;
        wrong.set(group, [...(wrong.get(group) ?? []), { field: match[2] ?? '', message }]);
      }
      if (wrong.size === 0) throw error;
    }
    return wrong;
  }
}

interface Judged {
  readonly group: BookedGroup;
  readonly fate: Exclude<Fate, 'error'>;
}

function judge(
  groups: readonly BookedGroup[],
  stored: readonly StoredBooking[],
  actor: Actor,
): Judged[] {
  const byReference = new Map(
    stored.flatMap((each) => (each.externalReference ? [[each.externalReference, each]] : [])),
  );
  const nameless = new Map<string, number>();
  for (const each of stored) {
    if (each.externalReference) continue;
    const key = keyOf(each);
    nameless.set(key, (nameless.get(key) ?? 0) + 1);
  }
  return groups.map((group) => {
    const read = readBooking(inputOf(group), actor.toothNotation);
    if (!read.ok) return { group, fate: 'new' };
    const key = keyOf(read.booking);
    const before = byReference.get(group.externalReference ?? '');
    if (before) {
      const same = before.kept > 0 || keyOf(before) === key;
      return { group, fate: same ? 'same' : 'changed' };
    }
    const left = group.externalReference ? 0 : (nameless.get(key) ?? 0);
    if (left === 0) return { group, fate: 'new' };
    nameless.set(key, left - 1);
    return { group, fate: 'same' };
  });
}

function inputOf(group: BookedGroup): BookedVisitInput {
  return {
    day: group.day,
    chartReference: group.chartReference,
    dentistId: group.dentistId,
    locationId: group.locationId,
    externalReference: group.externalReference,
    alike: group.alike,
    restorations: group.restorations.map((each) => ({
      ...each,
      cavityClass: each.cavityClass as CavityClass | null,
      size: each.size as CavitySize | null,
      reason: each.reason as Reason | null,
    })),
  };
}

type Comparable = Pick<
  StoredBooking,
  'day' | 'chartReference' | 'dentistId' | 'locationId' | 'alike'
> & { readonly restorations: readonly object[] };

function keyOf(booking: Comparable): string {
  const { day, chartReference, dentistId, locationId, alike, restorations } = booking;
  const each = (restorations as StoredBooking['restorations']).map((r) => [
    ...[r.templateId, r.tooth === null ? null : String(r.tooth), r.surfaces, r.cavityClass],
    ...[r.size, r.reason, r.shades],
  ]);
  return JSON.stringify([day, chartReference, dentistId, locationId, alike, each]);
}

const COLUMNS: Readonly<Record<string, string>> = {
  day: 'day',
  chartReference: 'chart',
  dentistId: 'dentist',
  locationId: 'location',
  externalReference: 'externalReference',
  alike: 'alike',
  templateId: 'template',
};

interface RowOf {
  readonly row: ListRow;
  readonly fate: Fate;
  readonly problems: readonly FieldError[];
}

function fateOf(group: BookedGroup, { row, fate, problems }: RowOf): RowFate {
  const at = group.rows.indexOf(row);
  const own = problems.flatMap(({ field, message }): CellProblem[] => {
    const match = /^restorations\[(\d+)\]\.([a-zA-Z]+)/.exec(field);
    if (match && Number(match[1]) !== at) return [];
    if (!match && at > 0) return [];
    const name = match?.[2] ?? field;
    return [problem(COLUMNS[name] ?? name, 'other', message)];
  });
  if (own.length > 0) return failed(row.number, group.title, own);
  if (problems.length > 0) {
    return failed(row.number, group.title, [problem(null, 'other-row-of-visit')]);
  }
  return { row: row.number, fate, title: group.title, changes: [], problems: [] };
}
