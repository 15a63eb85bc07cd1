import type { CavityClass, CavitySize, Reason } from '#lib/dentition';
import type { CostShareKey, IsoDate } from '#lib/platform';
import type { BookedRestorationInput } from '#lib/visits';
import type { DentistName, PlaceKey, RoomKey, SupplierKey } from './practice.js';
import type { BalancePayload, ChargeLine, PlanKey } from './prices.js';

export interface DemoRestoration {
  readonly id: string;
  readonly tooth: string;
  readonly surfaces: string;
  readonly cavityClass?: CavityClass;
  readonly size: CavitySize;
  readonly reason: Reason;
  readonly templateId: string;
  readonly templateVersion: number;
  readonly shades?: string[];
  readonly attempts?: number;
  readonly cycles?: number;
  readonly volumeMm3?: string;
  readonly depthMm?: string;
  readonly minutes?: number;
}

export interface DemoUsage {
  readonly restoration?: number;
  readonly consumableId: string;
  readonly placed: string;
  readonly dispensed: string;
}

/** A delivery line, and so a layer, by the delivery's reference and the position in it from 1. */
export interface LayerRef {
  readonly reference: string;
  readonly line: number;
}

/** Goods of a layer as they lie at a place: sealed, or opened on a day. */
export interface Pick {
  readonly layer: LayerRef;
  readonly place: PlaceKey;
  readonly openedOn: IsoDate | null;
}

export interface LotRef {
  readonly consumableId: string;
  readonly lotNumber: string;
}

export interface VisitPayload {
  readonly id: string;
  readonly chartReference: string;
  readonly visitedOn: IsoDate;
  readonly dentist: DentistName;
  readonly room: RoomKey;
  readonly staffCount: number;
  readonly costShareKey?: CostShareKey;
  readonly restorations: DemoRestoration[];
  readonly usage?: DemoUsage[];
  readonly scanned?: readonly LotRef[];
}

/** A booking as the scenario tells it. */
export interface DemoBooking {
  readonly reference: string;
  readonly day: IsoDate;
  readonly chartReference: string | null;
  readonly alike: number;
  readonly dentist: DentistName | null;
  readonly room: RoomKey | null;
  readonly restorations: readonly BookedRestorationInput[];
}

export interface DeliveryLine {
  readonly consumable: string;
  readonly presentationId: string;
  readonly packs: number;
  readonly packPrice: string;
  readonly place: PlaceKey;
  readonly lotNumber: string | null;
  readonly expiresOn: IsoDate | null;
  /** Of a kit: parts that have lots of their own. */
  readonly parts?: readonly LotRef[];
}

export interface OrderedPacks {
  readonly consumable: string;
  readonly packs: number;
}

/** An order as it was sent. */
export interface SentOrder {
  readonly orderedOn: IsoDate;
  readonly expectedOn: IsoDate;
  readonly lines: readonly OrderedPacks[];
}

export interface OrderPayload {
  readonly supplier: SupplierKey;
  readonly lines: readonly OrderedPacks[];
  readonly note: string | null;
  /** How far it has come; a sent one says when. */
  readonly upTo: 'draft' | 'approved' | 'cancelled' | Omit<SentOrder, 'lines'>;
  /** What somebody heard on the phone when asking where it is. */
  readonly chased?: string;
}

export interface DeliveryPayload {
  readonly supplier: SupplierKey;
  readonly receivedOn: IsoDate;
  readonly reference: string;
  readonly freight: string;
  readonly discount: string;
  readonly lines: readonly DeliveryLine[];
  /** The order that it answers; left out: nobody kept one. */
  readonly order?: SentOrder;
}

export type WasteReason = 'expired' | 'after-opening limit' | 'wrong shade opened' | 'contaminated';

interface Payloads {
  person: { readonly signInName: string };
  supplier: { readonly supplier: SupplierKey };
  location: { readonly place: PlaceKey };
  consumable: {
    readonly consumable: string;
    readonly reorderAt: string;
    readonly reorderUpTo: string;
  };
  presentation: { readonly consumable: string; readonly pack: number };
  template: { readonly template: string };
  templateVersion: { readonly template: string; readonly version: number };
  delivery: DeliveryPayload;
  /** What else is in a pack of the list. */
  kit: { readonly consumable: string; readonly pack: number };
  priceList: {
    readonly consumable: string;
    readonly prices: readonly { readonly fromPacks: number; readonly packPrice: string }[];
  };
  standIn: { readonly consumable: string; readonly standIn: string; readonly note: string };
  /** A line whose lot was read wrongly. */
  correction: {
    readonly of: LayerRef;
    readonly line: DeliveryLine;
    readonly lotNumber: string;
    readonly note: string;
  };
  /** An invoice that says another price of a line than was booked. */
  invoice: { readonly of: LayerRef; readonly packPrice: string; readonly number: string };
  reverseDelivery: { readonly reference: string; readonly note: string };
  move: { readonly from: Pick; readonly to: PlaceKey; readonly quantity: string };
  opening: { readonly from: Pick };
  writeOff: {
    readonly from: Pick;
    /** Null: all that is there. */
    readonly quantity: string | null;
    readonly reason: WasteReason;
    readonly note: string;
  };
  return: { readonly from: Pick; readonly quantity: string; readonly note: string };
  /** By how much more or less is there than the book says; null: nothing is left. */
  count: { readonly of: Pick; readonly difference: string | null };
  lotStatus: {
    readonly lot: LotRef;
    readonly status: 'recalled' | 'quarantined' | 'released';
    readonly note: string;
  };
  visit: VisitPayload;
  order: OrderPayload;
  bookings: { readonly bookings: readonly DemoBooking[] };
  fee: { readonly code: string; readonly validFrom: IsoDate };
  feeVersion: { readonly code: string; readonly validFrom: IsoDate };
  plan: { readonly plan: PlanKey; readonly checkedOn: IsoDate };
  planTerms: { readonly plan: PlanKey; readonly term: number; readonly validFrom: IsoDate };
  costRate: { readonly rate: number; readonly validFrom: IsoDate };
  balance: BalancePayload;
  charges: {
    readonly visitId: string;
    readonly note: string | null;
    readonly lines: readonly ChargeLine[];
  };
  reverseVisit: { readonly visitId: string; readonly note: string };
}

export type StepKind = keyof Payloads;

export type StepOf<K extends StepKind> = {
  readonly date: IsoDate;
  readonly kind: K;
  /** Names the step for ever: the same scenario has the same keys. */
  readonly key: string;
  readonly payload: Payloads[K];
};

/** One thing that is done in the demo book, in the words of the scenario. */
export type Step = { [K in StepKind]: StepOf<K> }[StepKind];
