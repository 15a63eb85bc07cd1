import type { Group } from './group-by.js';
import type { Costs } from './spread.js';

/** What every restoration of a cell has in common. */
export interface Kind {
  readonly templateId: string;
  readonly templateName: string;
  readonly reason: string;
  readonly dentistId: string;
  readonly dentistName: string;
}

/** Figures of one kind of restoration in one span of days; money in millionths. */
export interface Cell {
  readonly kind: Kind;
  readonly month: string;
  readonly restorations: number;
  /** Visits as the rows count them, and as their total does. */
  readonly rowVisits: number;
  readonly allVisits: number;
  readonly own: bigint;
  readonly shared: bigint;
  readonly retake: bigint;
  readonly costs: Costs;
  /** Costs that no longer count; they are among those of other cells. */
  readonly removed?: Costs;
}

export interface CategoryCost {
  readonly kind: Kind;
  readonly month: string;
  readonly category: string;
  readonly cost: bigint;
}

/** The sums of a row of the report, or of all of them. */
export interface Sums {
  restorations: number;
  visits: number;
  own: bigint;
  shared: bigint;
  retake: bigint;
  readonly costs: Costs[];
  readonly removed: Costs[];
  readonly categories: Map<string, bigint>;
}

export interface CostRow {
  readonly kind: Kind;
  readonly month: string;
  readonly sums: Sums;
}

const OF_KIND = {
  template: (kind: Kind) => kind.templateId,
  reason: (kind: Kind) => kind.reason,
  dentist: (kind: Kind) => kind.dentistId,
} as const;

/** Adds cells up to the rows of a report and to their total. */
export class CostGroups {
  readonly totals = nothing();
  private readonly rows = new Map<string, Map<string, CostRow>>();
  private readonly parts = new Map<Kind, string>();

  constructor(private readonly groups: readonly Group[]) {}

  add(cell: Cell): void {
    const { sums } = this.rowOf(cell.kind, cell.month);
    addTo(sums, cell, cell.rowVisits);
    addTo(this.totals, cell, cell.allVisits);
  }

  addCategory({ kind, month, category, cost }: CategoryCost): void {
    const { categories } = this.rowOf(kind, month).sums;
    categories.set(category, (categories.get(category) ?? 0n) + cost);
    this.totals.categories.set(category, (this.totals.categories.get(category) ?? 0n) + cost);
  }

  /** The rows that have restorations, in the order of what they are grouped by. */
  sorted(): CostRow[] {
    const rows = [...this.rows.values()].flatMap((ofMonth) => [...ofMonth.values()]);
    return rows.filter(({ sums }) => sums.restorations > 0).sort((a, b) => this.order(a, b));
  }

  private order(a: CostRow, b: CostRow): number {
    for (const group of this.groups) {
      const [x, y] = [keyOf(a, group), keyOf(b, group)];
      if (x !== y) return x < y ? -1 : 1;
    }
    return 0;
  }

  private rowOf(kind: Kind, month: string): CostRow {
    const shown = this.groups.includes('month') ? month : '';
    let ofMonth = this.rows.get(shown);
    if (!ofMonth) {
      ofMonth = new Map();
      this.rows.set(shown, ofMonth);
    }
    const part = this.partOf(kind);
    let row = ofMonth.get(part);
    if (!row) {
      row = { kind, month: shown, sums: nothing() };
      ofMonth.set(part, row);
    }
    return row;
  }

  private partOf(kind: Kind): string {
    let part = this.parts.get(kind);
    if (part === undefined) {
      const known = this.groups.filter((group) => group !== 'month');
      part = known.map((group) => OF_KIND[group](kind)).join(' ');
      this.parts.set(kind, part);
    }
    return part;
  }
}

function keyOf({ kind, month }: CostRow, group: Group): string {
  return group === 'month' ? month : OF_KIND[group](kind);
}

function nothing(): Sums {
  const sums = { restorations: 0, visits: 0, own: 0n, shared: 0n, retake: 0n };
  return { ...sums, costs: [], removed: [], categories: new Map() };
}

function addTo(sums: Sums, cell: Cell, visits: number): void {
  sums.restorations += cell.restorations;
  sums.visits += visits;
  sums.own += cell.own;
  sums.shared += cell.shared;
  sums.retake += cell.retake;
  sums.costs.push(cell.costs);
  if (cell.removed) sums.removed.push(cell.removed);
}
