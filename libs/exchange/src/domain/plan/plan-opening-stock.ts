import { isWholeUnit } from '#lib/measure';
import { failed, problem, type RowFate } from '../fate.js';
import type { CellProblem, ListRow } from '../read-rows.js';
import { nameKey } from './merge.js';
import {
  type EarlierRow,
  lotKey,
  type OpeningFacts,
  type OpeningRow,
  type PackFacts,
  type StockedConsumable,
} from './opening-rows.js';
import { consumableKey, consumableTitle, micro } from './plan-consumables.js';

/** A row that was understood, or the fate of one that was not. */
export type ReadOpening =
  | { readonly ok: true; readonly row: OpeningRow }
  | { readonly ok: false; readonly fate: RowFate };

const ONE = 1_000_000n;
const MOST = 1_000_000_000n * ONE;

/** Finds out what each row of opening stock means; names everything that is wrong with it. */
export function readOpening(facts: OpeningFacts, rows: readonly ListRow[]): ReadOpening[] {
  return rows.map((row) => {
    const title = [consumableTitle(row.values), row.values.get('lotNumber')]
      .filter(Boolean)
      .join(', ');
    if (row.problems.length > 0)
      return { ok: false, fate: failed(row.number, title, row.problems) };
    const reader = new RowReader(facts, row.values);
    const read = reader.read(row.number, title);
    if (read) return { ok: true, row: read };
    return { ok: false, fate: failed(row.number, title, reader.problems) };
  });
}

/** Reads one row, collecting what is wrong with it. */
class RowReader {
  readonly problems: CellProblem[] = [];

  constructor(
    private readonly facts: OpeningFacts,
    private readonly values: ReadonlyMap<string, string>,
  ) {}

  read(number: number, title: string): OpeningRow | undefined {
    const consumable = this.consumable();
    const pack = consumable && this.pack(consumable);
    const locationId = this.location();
    const days = this.days();
    if (!consumable || !pack) return undefined;
    const supplierId = this.supplier(pack);
    const goods = this.goods(consumable, pack);
    const lot = this.lot(consumable);
    if (!locationId || !supplierId || !goods || !lot || !days) return undefined;
    if (this.problems.length > 0) return undefined;
    return {
      number,
      title,
      identity: this.identity(consumable.id, pack.id, locationId),
      content: JSON.stringify([...this.values].sort(([a], [b]) => (a < b ? -1 : 1))),
      rowKey: this.values.get('rowKey') ?? null,
      consumableId: consumable.id,
      presentationId: pack.id,
      supplierId,
      locationId,
      life: consumable.life,
      ...goods,
      ...lot,
      ...days,
    };
  }

  private wrong(column: string | null, message: string): undefined {
    this.problems.push(problem(column, message));
    return undefined;
  }

  private consumable(): StockedConsumable | undefined {
    if (!this.values.has('consumable')) {
      return this.wrong('consumable', 'is blank; every row needs a consumable');
    }
    const found = this.facts.consumables.get(consumableKey(this.values));
    const title = consumableTitle(this.values);
    return (
      found ??
      this.wrong('consumable', `names no consumable of the book (${title}); bring it in first`)
    );
  }

  private pack({ packs }: StockedConsumable): PackFacts | undefined {
    const name = this.values.get('presentation');
    if (name !== undefined) {
      const found = packs.find((pack) => nameKey(pack.name) === nameKey(name));
      return found ?? this.wrong('presentation', `names no pack of this consumable (${name})`);
    }
    const inUse = packs.filter((pack) => pack.active);
    const [only] = inUse;
    if (inUse.length === 1 && only) return only;
    const many = inUse.map((pack) => pack.name).join(', ');
    return this.wrong(
      'presentation',
      many === ''
        ? 'is blank, and the consumable has no pack in use'
        : `is blank; which of: ${many}?`,
    );
  }

  private location(): string | undefined {
    const name = this.values.get('location');
    if (name === undefined) return this.wrong('location', 'is blank; where does it lie?');
    const found = this.facts.locations.get(nameKey(name));
    if (!found) return this.wrong('location', `names no location of the book (${name})`);
    return found.active ? found.id : this.wrong('location', `is no longer in use (${name})`);
  }

  private supplier(pack: PackFacts): string | undefined {
    const name = this.values.get('supplier') ?? pack.supplier;
    if (name === null) {
      return this.wrong('supplier', 'is blank, and the pack has no supplier either');
    }
    const found = this.facts.suppliers.get(nameKey(name));
    return found ?? this.wrong('supplier', `names no supplier of the book (${name})`);
  }

  private goods({ stockUnit }: StockedConsumable, pack: PackFacts) {
    const perPack = pack.content * BigInt(pack.containers);
    const packs = this.values.get('packs');
    const typed = this.values.get('quantity');
    const byPacks = packs === undefined ? undefined : BigInt(packs) * perPack;
    const byUnits = typed === undefined ? undefined : micro(typed);
    if (byPacks !== undefined && byUnits !== undefined && byPacks !== byUnits) {
      return this.wrong('quantity', 'does not go with the number of packs; give one of them');
    }
    const quantity = byUnits ?? byPacks;
    if (quantity === undefined) return this.wrong('quantity', 'is blank, and so are the packs');
    if (isWholeUnit(stockUnit) && quantity % ONE !== 0n) {
      return this.wrong('quantity', `must be whole, because stock is kept in ${stockUnit}s`);
    }
    if (this.values.has('openedOn')) this.openable(pack, quantity);
    return this.worth({ pack, quantity, perPack });
  }

  private openable(pack: PackFacts, quantity: bigint): void {
    if (pack.dispensing !== 'multi-use') {
      this.wrong('openedOn', `does not go with a pack for ${pack.dispensing} use`);
    } else if (quantity > pack.content) {
      this.wrong('quantity', 'is more than one opened container holds; use a row for each');
    }
  }

  private worth(of: {
    readonly pack: PackFacts;
    readonly quantity: bigint;
    readonly perPack: bigint;
  }) {
    const { pack, quantity, perPack } = of;
    const typed = this.values.get('value');
    const paid = this.values.get('packPrice');
    const price = paid === undefined ? pack.listPrice : micro(paid);
    const byPrice = price === null ? undefined : divided(price * quantity, perPack);
    const value = typed === undefined ? byPrice : micro(typed);
    if (value === undefined) {
      return this.wrong(
        'packPrice',
        'is blank, and the pack has no list price; write 0 if it was free',
      );
    }
    const known = typed === undefined || paid !== undefined ? price : null;
    const packPrice = known ?? divided(value * perPack, quantity);
    const packs = Number((quantity + perPack - 1n) / perPack);
    if (packs > 1_000_000) return this.wrong('quantity', 'is more than the book can hold');
    if (packPrice > MOST) return this.wrong('value', 'is too much for so little');
    return { quantity, value, packPrice, packs };
  }

  private lot({ id }: StockedConsumable) {
    const lotNumber = this.values.get('lotNumber') ?? null;
    const expiresOn = this.values.get('expiresOn') ?? null;
    const said = this.values.get('lotStatus') as OpeningRow['lotStatus'] | undefined;
    const known = lotNumber === null ? undefined : this.facts.lots.get(lotKey(id, lotNumber));
    if (known && !known.free && known.expiresOn !== expiresOn) {
      const recorded = known.expiresOn ?? 'no expiry date';
      return this.wrong('expiresOn', `differs from the book, which has ${recorded} for this lot`);
    }
    if (known && said !== undefined && known.status !== said) {
      return this.wrong('lotStatus', `differs from the book, where this lot is ${known.status}`);
    }
    const lotStatus = said ?? ((known?.status ?? 'released') as OpeningRow['lotStatus']);
    return { lotNumber, expiresOn, lotStatus };
  }

  private days() {
    const { today } = this.facts;
    const openedOn = this.values.get('openedOn') ?? null;
    const useBy = this.values.get('useBy') ?? null;
    const receivedOn = this.values.get('receivedOn') ?? openedOn ?? today;
    const expiresOn = this.values.get('expiresOn');
    if (receivedOn > today) return this.wrong('receivedOn', `must not be after today, ${today}`);
    if (openedOn !== null && openedOn > today) {
      return this.wrong('openedOn', `must not be after today, ${today}`);
    }
    if (openedOn !== null && openedOn < receivedOn) {
      return this.wrong('openedOn', `is before it was received, ${receivedOn}`);
    }
    if (useBy !== null && openedOn === null) {
      return this.wrong('useBy', 'goes with an opened container only; when was it opened?');
    }
    if (useBy !== null && expiresOn !== undefined && useBy > expiresOn) {
      return this.wrong('useBy', `must not be after the label's expiry, ${expiresOn}`);
    }
    return { openedOn, useBy, receivedOn };
  }

  private identity(consumableId: string, packId: string, locationId: string): string {
    const key = this.values.get('rowKey');
    if (key !== undefined) return JSON.stringify(['key', key]);
    const said = ['lotNumber', 'expiresOn', 'openedOn', 'receivedOn', 'supplier'];
    const rest = said.map((column) => this.values.get(column)?.toLowerCase() ?? null);
    return JSON.stringify([consumableId, packId, locationId, ...rest]);
  }
}

function divided(numerator: bigint, denominator: bigint): bigint {
  return (numerator + denominator / 2n) / denominator;
}

/** Which rows are new, which were booked before, and which say the same twice or contradict others. */
export function judgeOpening(
  read: readonly ReadOpening[],
  earlier: ReadonlyMap<string, EarlierRow>,
): { readonly fates: RowFate[]; readonly fresh: OpeningRow[] } {
  const seen = new Map<string, OpeningRow>();
  const lots = new Map<string, OpeningRow>();
  const fresh: OpeningRow[] = [];
  const fates = read.map((each): RowFate => {
    if (!each.ok) return each.fate;
    const { row } = each;
    const wrong = twiceSaid(row, seen) ?? otherLot(row, lots);
    if (wrong) return failed(row.number, row.title, [wrong]);
    const before = earlier.get(row.identity);
    const done = { row: row.number, title: row.title, changes: [], problems: [] };
    if (!before) {
      fresh.push(row);
      return { ...done, fate: 'new' };
    }
    if (before.content === row.content) return { ...done, fate: 'same' };
    const message = `was brought in on ${before.day} and said something else then; correct it by a count`;
    return failed(row.number, row.title, [problem(null, message)]);
  });
  return { fates, fresh };
}

function twiceSaid(row: OpeningRow, seen: Map<string, OpeningRow>): CellProblem | undefined {
  const other = seen.get(row.identity);
  if (!other) {
    seen.set(row.identity, row);
    return undefined;
  }
  const says = other.content === row.content ? 'says the same as' : 'contradicts';
  const message = `${says} row ${other.number}; if both are there, tell them apart by a row key`;
  return problem(row.rowKey === null ? null : 'rowKey', message);
}

/** Two rows of one lot that give it different dates or states. */
function otherLot(row: OpeningRow, lots: Map<string, OpeningRow>): CellProblem | undefined {
  if (row.lotNumber === null) return undefined;
  const key = lotKey(row.consumableId, row.lotNumber);
  const other = lots.get(key);
  if (!other) {
    lots.set(key, row);
    return undefined;
  }
  if (other.expiresOn !== row.expiresOn) {
    const said = other.expiresOn ?? 'no expiry date';
    return problem('expiresOn', `contradicts row ${other.number}, which has ${said} for this lot`);
  }
  if (other.lotStatus === row.lotStatus) return undefined;
  const message = `contradicts row ${other.number}, where this lot is ${other.lotStatus}`;
  return problem('lotStatus', message);
}
