export interface PackFacts {
  readonly id: string;
  readonly name: string;
  readonly active: boolean;
  readonly supplier: string | null;
  readonly dispensing: string;
  /** In millionths of the stock unit. */
  readonly content: bigint;
  readonly containers: number;
  readonly listPrice: bigint | null;
  /** It is a kit, of which the consumable is a part. */
  readonly inKit: boolean;
}

export interface StockedConsumable {
  readonly id: string;
  readonly stockUnit: string;
  readonly packs: readonly PackFacts[];
  readonly life: { readonly value: number; readonly unit: 'day' | 'month' } | null;
}

export interface LotFacts {
  readonly status: string;
  readonly expiresOn: string | null;
  /** No delivery of it is left, so that its expiry may be put right. */
  readonly free: boolean;
}

/** What the book knows that rows of opening stock are checked against. */
export interface OpeningFacts {
  readonly today: string;
  /** By the key of a consumable. */
  readonly consumables: ReadonlyMap<string, StockedConsumable>;
  /** By name in lower case. */
  readonly locations: ReadonlyMap<string, { readonly id: string; readonly active: boolean }>;
  readonly suppliers: ReadonlyMap<string, string>;
  /** By consumable id and lot number, as `lotKey` makes it. */
  readonly lots: ReadonlyMap<string, LotFacts>;
}

/** What a row of opening stock means. */
export interface OpeningRow {
  readonly number: number;
  readonly title: string;
  /** By which the row is known again; the same row of the same file has the same. */
  readonly identity: string;
  /** All that the row says; another text means that the row was changed. */
  readonly content: string;
  readonly rowKey: string | null;
  readonly consumableId: string;
  readonly presentationId: string;
  readonly supplierId: string;
  readonly receivedOn: string;
  readonly locationId: string;
  readonly lotNumber: string | null;
  readonly expiresOn: string | null;
  readonly lotStatus: 'released' | 'quarantined' | 'recalled';
  readonly quantity: bigint;
  readonly packs: number;
  readonly packPrice: bigint;
  readonly value: bigint;
  readonly openedOn: string | null;
  readonly useBy: string | null;
  readonly life: StockedConsumable['life'];
}

/** A row that was booked before, or a holding of this very book that the row was written from. */
export interface EarlierRow {
  /** What the row said then; empty when it was something else than now. */
  readonly content: string;
  readonly day: string;
}

export function lotKey(consumableId: string, lotNumber: string): string {
  return `${consumableId} ${lotNumber}`;
}
