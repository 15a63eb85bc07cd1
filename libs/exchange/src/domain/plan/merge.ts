import type { Change } from '../fate.js';
import { type CellProblem, problem } from '../problems.js';

/** What a thing of the book is, by column; null where it says nothing. */
export type Values = Readonly<Record<string, string | null>>;

export interface Thing {
  readonly id: string;
  readonly values: Values;
}

interface Entry {
  readonly id: string;
  /** What the book had; undefined for what the file brings. */
  readonly before: Values | undefined;
  values: Record<string, string | null>;
  /** Which row of this file said a value. */
  readonly saidBy: Map<string, number>;
}

export interface MergeRules {
  /** What a new thing has where the file says nothing. */
  readonly defaults: Values;
  /** Columns that a new thing needs. */
  readonly needed: readonly string[];
  /** What a new thing, or a change of one, must be besides; may name several problems. */
  readonly check?: (thing: Thing, before: Values | undefined) => readonly CellProblem[];
  /** The id of a new thing, by its key. */
  readonly newId: (key: string) => string;
}

export interface Merge {
  readonly outcome: 'new' | 'changed' | 'same';
  readonly id: string;
  readonly changes: readonly Change[];
}

export type Merged =
  | { readonly ok: true; readonly merge: Merge }
  | { readonly ok: false; readonly problems: readonly CellProblem[] };

export interface ToWrite {
  readonly id: string;
  readonly before: Values | undefined;
  readonly values: Values;
}

/**
 * Puts rows of a file into what the book has, in memory: known things are found by their key, blank
 * cells leave what there is, and two rows of one file that say different things of one thing are refused.
 */
export class MergeBook {
  private readonly entries = new Map<string, Entry>();

  constructor(
    book: Iterable<readonly [string, Thing]>,
    private readonly rules: MergeRules,
  ) {
    for (const [key, { id, values }] of book) {
      this.entries.set(key, { id, before: values, values: { ...values }, saidBy: new Map() });
    }
  }

  find(key: string): Thing | undefined {
    return this.entries.get(key);
  }

  /** Takes in what a row says of the thing with this key, or nothing of it when something is wrong. */
  merge(key: string, said: ReadonlyMap<string, string>, row: number): Merged {
    const known = this.entries.get(key);
    const problems: CellProblem[] = [];
    for (const [column, value] of said) {
      const earlier = known?.saidBy.get(column);
      const before = known?.values[column];
      if (earlier === undefined || before === value) continue;
      problems.push(problem(column, 'contradicts', earlier, before ?? ''));
    }
    if (!known) {
      for (const column of this.rules.needed) {
        if (said.has(column)) continue;
        problems.push(problem(column, 'needed-when-new'));
      }
    }
    const entry = known ?? this.fresh(key);
    const values = { ...entry.values, ...Object.fromEntries(said) };
    if (problems.length === 0) {
      problems.push(...(this.rules.check?.({ id: entry.id, values }, entry.before) ?? []));
    }
    if (problems.length > 0) return { ok: false, problems };
    const changes = known ? changesOf(entry.values, values) : [];
    this.entries.set(key, entry);
    entry.values = values;
    for (const column of said.keys()) {
      if (!entry.saidBy.has(column)) entry.saidBy.set(column, row);
    }
    const outcome = known ? (changes.length > 0 ? 'changed' : 'same') : 'new';
    return { ok: true, merge: { outcome, id: entry.id, changes } };
  }

  /** Takes back what a row did to a thing that only this file brings, or all its changes. */
  forget(key: string): void {
    const entry = this.entries.get(key);
    if (!entry) return;
    if (entry.before === undefined) this.entries.delete(key);
    else entry.values = { ...entry.before };
  }

  toWrite(): ToWrite[] {
    return [...this.entries.values()].flatMap(({ id, before, values }) =>
      before !== undefined && changesOf(before, values).length === 0
        ? []
        : [{ id, before, values }],
    );
  }

  all(): IterableIterator<[string, Thing & { readonly before: Values | undefined }]> {
    return this.entries.entries();
  }

  private fresh(key: string): Entry {
    const { newId, defaults } = this.rules;
    return { id: newId(key), before: undefined, values: { ...defaults }, saidBy: new Map() };
  }
}

function changesOf(before: Values, after: Values): Change[] {
  return Object.entries(after).flatMap(([column, to]) => {
    const from = before[column] ?? null;
    return from === to ? [] : [{ column, from, to }];
  });
}

/** What of a write is about these columns; undefined where it changes none of them. */
export function partOfWrite(write: ToWrite, columns: readonly string[]): ToWrite | undefined {
  const only = (values: Values) => Object.fromEntries(columns.map((c) => [c, values[c] ?? null]));
  const part = {
    id: write.id,
    before: write.before && only(write.before),
    values: only(write.values),
  };
  const changed = changesOf(part.before ?? {}, part.values).length > 0;
  return changed ? part : undefined;
}

/** What of a write is about the other columns; a new thing always is. */
export function restOfWrite(write: ToWrite, columns: readonly string[]): ToWrite | undefined {
  const others = Object.keys(write.values).filter((column) => !columns.includes(column));
  return partOfWrite(write, others);
}

/** A name as it is compared: the book's unique indexes use lower case. */
export function nameKey(...parts: readonly (string | null | undefined)[]): string {
  return parts.map((part) => (part ?? '').toLowerCase()).join('\u0000');
}
