import { failed, type RowFate } from '../fate.js';
import { type CellProblem, type ProblemCode, problem } from '../problems.js';
import type { ListRow } from '../read-rows.js';
import { nameKey } from './merge.js';

/** Ids by name in lower case; null where two have the same name. */
export type Names = ReadonlyMap<string, string | null>;

export interface BookedFacts {
  readonly templates: Names;
  readonly dentists: Names;
  readonly locations: Names;
  /** By "name / shade / size / grit", of what is said. */
  readonly consumables: Names;
}

export interface BookedRestorationRow {
  readonly templateId: string;
  readonly tooth: string | null;
  readonly surfaces: string | null;
  readonly cavityClass: string | null;
  readonly size: string | null;
  readonly reason: string | null;
  readonly shades: readonly string[];
}

/** A visit as one or several rows of a list say it. */
export interface BookedGroup {
  readonly rows: readonly ListRow[];
  readonly title: string;
  readonly day: string;
  readonly externalReference: string | null;
  readonly chartReference: string | null;
  readonly alike: number;
  readonly dentistId: string | null;
  readonly locationId: string | null;
  readonly restorations: readonly BookedRestorationRow[];
}

export interface ReadBookings {
  readonly groups: readonly BookedGroup[];
  /** Of the rows that could not be read. */
  readonly failed: readonly RowFate[];
}

const OF_THE_VISIT = ['day', 'chart', 'alike', 'dentist', 'location'];

/** Puts the rows of a list together to visits, and finds what they name. */
export function readBookings(facts: BookedFacts, rows: readonly ListRow[]): ReadBookings {
  const grouped = new Map<string, ListRow[]>();
  rows.forEach((row) => {
    const reference = row.values.get('externalReference');
    const visit = row.values.get('visit');
    const key = reference ? `r ${reference}` : visit ? `v ${visit}` : `n ${row.number}`;
    const group = grouped.get(key);
    if (group) group.push(row);
    else grouped.set(key, [row]);
  });
  const groups: BookedGroup[] = [];
  const bad: RowFate[] = [];
  for (const group of grouped.values()) {
    const read = group.map((row) => readRow(facts, row));
    const wrong = read.some((each) => each.problems.length > 0);
    const clash = wrong ? [] : clashes(group);
    const [first] = group;
    const [head] = read;
    if (!first || !head) continue;
    if (!wrong && clash.length === 0) {
      groups.push(groupOf(group, head, read));
      continue;
    }
    group.forEach((row, i) => {
      const own = [...(read[i]?.problems ?? []), ...clash.filter((each) => each.row === row)];
      const others = problem(null, 'other-row-of-visit');
      bad.push(failed(row.number, titleOf(row), own.length > 0 ? own : [others]));
    });
  }
  return { groups, failed: bad };
}

interface ReadRow {
  readonly problems: readonly CellProblem[];
  readonly dentistId: string | null;
  readonly locationId: string | null;
  readonly restoration: BookedRestorationRow;
}

function readRow(facts: BookedFacts, row: ListRow): ReadRow {
  const { values } = row;
  const problems = [...row.problems];
  const find = (column: string, names: Names, none: ProblemCode): string | null => {
    const name = values.get(column);
    if (name === undefined) return null;
    const found = names.get(nameKey(name));
    if (found) return found;
    problems.push(problem(column, found === null ? 'several-of-name' : none, name));
    return null;
  };
  if (problems.length === 0) {
    if (!values.has('day')) problems.push(problem('day', 'day-blank'));
    if (!values.has('template')) problems.push(problem('template', 'plan-blank'));
  }
  const restoration = {
    templateId: find('template', facts.templates, 'no-template-in-use') ?? '',
    tooth: values.get('tooth') ?? null,
    surfaces: values.get('surfaces') ?? null,
    cavityClass: values.get('cavityClass') ?? null,
    size: values.get('size') ?? null,
    reason: values.get('reason') ?? null,
    shades: readShades(facts.consumables, values.get('shades'), problems),
  };
  return {
    problems,
    dentistId: find('dentist', facts.dentists, 'no-dentist'),
    locationId: find('location', facts.locations, 'no-location-in-use'),
    restoration,
  };
}

function readShades(known: Names, said: string | undefined, problems: CellProblem[]): string[] {
  if (said === undefined) return [];
  const key = (text: string) =>
    nameKey(
      text
        .split('/')
        .map((part) => part.trim())
        .join(' / '),
    );
  const whole = known.get(key(said));
  if (whole) return [whole];
  return said.split(';').flatMap((part) => {
    const name = part.trim();
    if (name === '') return [];
    const found = known.get(key(name));
    if (found) return [found];
    const why = found === null ? 'several-of-name' : 'no-consumable';
    problems.push(problem('shades', why, name));
    return [];
  });
}

interface Clash extends CellProblem {
  readonly row: ListRow;
}

/** Rows of one visit that say different things of it. */
function clashes(group: readonly ListRow[]): Clash[] {
  const [first, ...others] = group;
  if (!first) return [];
  return others.flatMap((row) =>
    OF_THE_VISIT.flatMap((column) => {
      const [one, other] = [first.values.get(column), row.values.get(column)];
      if (other === undefined || one === other) return [];
      const wrong =
        one === undefined
          ? problem(column, 'contradicts-in-visit-blank', first.number)
          : problem(column, 'contradicts-in-visit', first.number, one);
      return [{ row, ...wrong }];
    }),
  );
}

function titleOf({ values }: ListRow): string {
  return [values.get('day'), values.get('chart'), values.get('template')]
    .filter(Boolean)
    .join(', ');
}

function groupOf(rows: readonly ListRow[], head: ReadRow, read: readonly ReadRow[]): BookedGroup {
  const [first] = rows;
  const values = first?.values ?? new Map<string, string>();
  return {
    rows,
    title: first ? titleOf(first) : '',
    day: values.get('day') ?? '',
    externalReference: values.get('externalReference') ?? null,
    chartReference: values.get('chart') ?? null,
    alike: Number(values.get('alike') ?? '1'),
    dentistId: head.dentistId,
    locationId: head.locationId,
    restorations: read.map((each) => each.restoration),
  };
}
