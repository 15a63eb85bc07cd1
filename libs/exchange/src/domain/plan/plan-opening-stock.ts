import { isWholeUnit } from '#lib/measure';
import { failed, type RowFate } from '../fate.js';
import { type CellProblem, problem } from '../problems.js';
import type { ListRow } from '../read-rows.js';
import { goodsKey, goodsTitle } from './goods.js';
import { nameKey } from './merge.js';
import {
  type EarlierRow,
  lotKey,
  type OpeningFacts,
  type OpeningRow,
  type PackFacts,
  type StockedConsumable,
} from './opening-rows.js';
import { micro } from './plan-consumables.js';

/** A row that was understood, or the fate of one that was not. */
export type ReadOpening =
  | { readonly ok: true; readonly row: OpeningRow }
  | { readonly ok: false; readonly fate: RowFate };

const ONE = 1_000_000n;
const MOST = 1_000_000_000n * ONE;

/** Finds out what each row of opening stock means; names everything that is wrong with it. */
export function readOpening(facts: OpeningFacts, rows: readonly ListRow[]): ReadOpening[] {
  return rows.map((row) => {
    const title = [goodsTitle(row.values), row.values.get('lotNumber')].filter(Boolean).join(', ');
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

  private wrong(...said: Parameters<typeof problem>): undefined {
    this.problems.push(problem(...said));
    return undefined;
  }

  private consumable(): StockedConsumable | undefined {
    if (!this.values.has('consumable')) {
      return this.wrong('consumable', 'consumable-blank');
    }
    const found = this.facts.consumables.get(goodsKey(this.values));
    const title = goodsTitle(this.values);
    return found ?? this.wrong('consumable', 'no-consumable-yet', title);
  }

  private pack({ packs }: StockedConsumable): PackFacts | undefined {
    const name = this.values.get('presentation');
    if (name !== undefined) {
      const named = packs.filter((pack) => nameKey(pack.name) === nameKey(name));
      const found = named.find((pack) => !pack.inKit) ?? named[0];
      return found ?? this.wrong('presentation', 'no-pack', name);
    }
    const inUse = packs.filter((pack) => pack.active && !pack.inKit);
    const [only] = inUse;
    if (inUse.length === 1 && only) return only;
    const many = inUse.map((pack) => pack.name).join(', ');
    return many === ''
      ? this.wrong('presentation', 'no-pack-in-use')
      : this.wrong('presentation', 'which-pack', many);
  }

  private location(): string | undefined {
    const name = this.values.get('location');
    if (name === undefined) return this.wrong('location', 'location-blank');
    const found = this.facts.locations.get(nameKey(name));
    if (!found) return this.wrong('location', 'no-location', name);
    return found.active ? found.id : this.wrong('location', 'location-retired', name);
  }

  private supplier(pack: PackFacts): string | undefined {
    const name = this.values.get('supplier') ?? pack.supplier;
    if (name === null) {
      return this.wrong('supplier', 'nobody-delivers');
    }
    const found = this.facts.suppliers.get(nameKey(name));
    return found ?? this.wrong('supplier', 'no-supplier', name);
  }

  private goods({ stockUnit }: StockedConsumable, pack: PackFacts) {
    const perPack = pack.content * BigInt(pack.containers);
    const packs = this.values.get('packs');
    const typed = this.values.get('quantity');
    const byPacks = packs === undefined ? undefined : BigInt(packs) * perPack;
    const byUnits = typed === undefined ? undefined : micro(typed);
    if (byPacks !== undefined && byUnits !== undefined && byPacks !== byUnits) {
      return this.wrong('quantity', 'quantity-or-packs');
    }
    const quantity = byUnits ?? byPacks;
    if (quantity === undefined) return this.wrong('quantity', 'no-quantity');
    if (isWholeUnit(stockUnit) && quantity % ONE !== 0n) {
      return this.wrong('quantity', 'whole-quantity', stockUnit);
    }
    if (this.values.has('openedOn')) this.openable(pack, quantity);
    return this.worth({ pack, quantity, perPack });
  }

  private openable(pack: PackFacts, quantity: bigint): void {
    if (pack.dispensing !== 'multi-use') {
      this.wrong('openedOn', 'cannot-be-open', pack.dispensing);
    } else if (quantity > pack.content) {
      this.wrong('quantity', 'more-than-a-container');
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
      return this.wrong('packPrice', 'no-price');
    }
    const known = typed === undefined || paid !== undefined ? price : null;
    const packPrice = known ?? divided(value * perPack, quantity);
    const packs = Number((quantity + perPack - 1n) / perPack);
    if (packs > 1_000_000) return this.wrong('quantity', 'more-than-the-book');
    if (packPrice > MOST) return this.wrong('value', 'worth-too-much');
    return { quantity, value, packPrice, packs };
  }

  private lot({ id }: StockedConsumable) {
    const lotNumber = this.values.get('lotNumber') ?? null;
    const expiresOn = this.values.get('expiresOn') ?? null;
    const said = this.values.get('lotStatus') as OpeningRow['lotStatus'] | undefined;
    const known = lotNumber === null ? undefined : this.facts.lots.get(lotKey(id, lotNumber));
    if (known && !known.free && known.expiresOn !== expiresOn) {
      return known.expiresOn === null
        ? this.wrong('expiresOn', 'other-expiry-none')
        : this.wrong('expiresOn', 'other-expiry', known.expiresOn);
    }
    if (known && said !== undefined && known.status !== said) {
      return this.wrong('lotStatus', 'other-status', known.status);
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
    if (receivedOn > today) return this.wrong('receivedOn', 'after-today', today);
    if (openedOn !== null && openedOn > today) {
      return this.wrong('openedOn', 'after-today', today);
    }
    if (openedOn !== null && openedOn < receivedOn) {
      return this.wrong('openedOn', 'opened-before-received', receivedOn);
    }
    if (useBy !== null && openedOn === null) {
      return this.wrong('useBy', 'use-by-not-opened');
    }
    if (useBy !== null && expiresOn !== undefined && useBy > expiresOn) {
      return this.wrong('useBy', 'use-by-after-expiry', expiresOn);
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
    const wrongly = problem(null, 'said-otherwise-then', before.day);
    return failed(row.number, row.title, [wrongly]);
  });
  return { fates, fresh };
}

function twiceSaid(row: OpeningRow, seen: Map<string, OpeningRow>): CellProblem | undefined {
  const other = seen.get(row.identity);
  if (!other) {
    seen.set(row.identity, row);
    return undefined;
  }
  const says = other.content === row.content ? 'same-as-row' : 'other-than-row';
  return problem(row.rowKey === null ? null : 'rowKey', says, other.number);
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
    return other.expiresOn === null
      ? problem('expiresOn', 'row-expiry-none', other.number)
      : problem('expiresOn', 'row-expiry', other.number, other.expiresOn);
  }
  if (other.lotStatus === row.lotStatus) return undefined;
  return problem('lotStatus', 'row-status', other.number, other.lotStatus);
}
