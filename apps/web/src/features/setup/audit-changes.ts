/** One field that an entry of the audit trail speaks of. */
export interface AuditChange {
  readonly field: string;
  /** undefined when the entry says only how it is. */
  readonly from?: unknown;
  readonly to: unknown;
}

type Details = Readonly<Record<string, unknown>>;

function isRecord(value: unknown): value is Details {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

const same = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b);

/** Names of things nobody reads. */
const isId = (field: string) => field === 'id' || field.endsWith('Id') || field === 'practice';

/** What says nothing about something that is new. */
const isAsUsual = (field: string, value: unknown) =>
  value === null || value === false || (field === 'active' && value === true);

/**
 * What an entry says was changed, or what was written. The trail knows three ways of saying it:
 * `{ before, after }`, `{ field: { from, to } }`, and the fields as they are.
 */
export function auditChanges(details: Details): AuditChange[] {
  const { before, after, ...rest } = details;
  const changed =
    isRecord(before) && isRecord(after)
      ? Object.entries(after)
          .filter(([field, to]) => !same(before[field], to))
          .map(([field, to]) => ({ field, from: before[field] ?? null, to }))
      : [];
  const others = Object.entries(rest).map(([field, value]): AuditChange => {
    const pair = isRecord(value) && 'from' in value && 'to' in value;
    return pair ? { field, from: value.from, to: value.to } : { field, to: value };
  });
  const told = [...changed, ...others].filter(
    ({ field, to, from }) => !isId(field) && !(from === undefined && isAsUsual(field, to)),
  );
  return told.sort((a, b) => importance(a.field) - importance(b.field));
}

/** What one looks for comes first; the rest stays as it is. */
const FIRST = ['name', 'displayName', 'note', 'version'];

function importance(field: string): number {
  const place = FIRST.indexOf(field);
  return place < 0 ? FIRST.length : place;
}
