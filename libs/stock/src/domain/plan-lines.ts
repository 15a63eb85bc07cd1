import {
  type Money,
  moneyFromMicro,
  type Quantity,
  quantityFromMicro,
  splitLargestRemainder,
  ZERO_MONEY,
  ZERO_QUANTITY,
} from '#lib/measure';
import type { Day, Dispensing } from './candidate.js';

export interface LotOfLine {
  readonly lotNumber: string | null;
  readonly expiresOn: Day | null;
}

/** A line of a delivery as it was typed. */
export interface TypedLine extends LotOfLine {
  readonly presentationId: string;
  readonly packs: number;
  readonly packPrice: Money;
  readonly locationId: string;
  readonly orderLineId: string | null;
  readonly sample: boolean;
  /** Of the whole line, in millionths of a gram. */
  readonly weight: Quantity | null;
  /** Where one line came with several lots: how many packs of which. */
  readonly lots: readonly (LotOfLine & { readonly packs: number })[];
  /** Of a kit: the lots of its parts, where they have their own. */
  readonly parts: readonly (LotOfLine & { readonly consumableId: string })[];
}

/** What is in a pack of one consumable. */
export interface Content {
  readonly consumableId: string;
  readonly dispensing: Dispensing;
  readonly containersPerPack: number;
  readonly contentPerContainer: Quantity;
}

/** A pack as it is bought: a kit or a mixed box holds further parts, each with its share of the price. */
export interface Pack extends Content {
  /** Shares in millionths of the whole; the pack's own content bears the rest. */
  readonly parts: readonly (Content & { readonly share: bigint })[];
}

/** What becomes one layer. */
export interface PlannedLine extends LotOfLine {
  /** The typed line, from 0, and the field of the request in which its lot stands. */
  readonly index: number;
  readonly field: string;
  readonly presentationId: string;
  readonly consumableId: string;
  readonly dispensing: Dispensing;
  readonly contentPerContainer: Quantity;
  readonly locationId: string;
  readonly packs: number;
  readonly packPrice: Money;
  readonly quantity: Quantity;
  readonly weight: Quantity;
  readonly orderLineId: string | null;
  readonly sample: boolean;
  readonly kit: KitOfLine | null;
}

export interface KitOfLine extends LotOfLine {
  /** Of the price of the kit, in millionths of the whole. */
  readonly share: bigint;
  readonly packPrice: Money;
}

export interface LineTrouble {
  readonly field: string;
  readonly message: string;
}

const WHOLE = 1_000_000n;

/**
 * The layers that the lines of a delivery become: one for every line, for every lot where a line came
 * with several, and for every part of a kit. Price and weight of a kit are divided by the shares of its
 * parts, by largest remainder in steps of `step`, so that nothing is lost.
 */
export function planLines(
  lines: readonly TypedLine[],
  packOf: (line: TypedLine) => Pack,
  step: bigint,
): PlannedLine[] | LineTrouble {
  const planned: PlannedLine[] = [];
  for (const [index, line] of lines.entries()) {
    const pack = packOf(line);
    const trouble = troubleOf(line, pack, `lines[${index}]`);
    if (trouble) return trouble;
    planned.push(
      ...(pack.parts.length > 0 ? kit(index, line, pack, step) : lots(index, line, pack)),
    );
  }
  return planned;
}

function troubleOf(line: TypedLine, pack: Pack, at: string): LineTrouble | undefined {
  const isKit = pack.parts.length > 0;
  if (line.sample && line.packPrice !== 0n) {
    return { field: `${at}.packPrice`, message: 'must be 0: a free sample costs nothing' };
  }
  if (line.lots.length > 0) {
    if (isKit) {
      return {
        field: `${at}.lots`,
        message: 'must be left out: give each lot of kits its own line',
      };
    }
    if (line.lotNumber !== null || line.expiresOn !== null) {
      const field = line.lotNumber === null ? 'expiresOn' : 'lotNumber';
      return { field: `${at}.${field}`, message: 'must be left out where lots are listed' };
    }
    const sum = line.lots.reduce((total, lot) => total + lot.packs, 0);
    if (sum !== line.packs) {
      return { field: `${at}.lots`, message: `must add up to ${line.packs} packs, not ${sum}` };
    }
  }
  const known = new Set([pack.consumableId, ...pack.parts.map((part) => part.consumableId)]);
  const wrong = line.parts.findIndex(
    ({ consumableId }, i) =>
      !isKit ||
      !known.has(consumableId) ||
      line.parts.findIndex((part) => part.consumableId === consumableId) !== i,
  );
  if (wrong === -1) return undefined;
  const message = isKit ? 'must name each part of this pack once' : 'must be left out: not a kit';
  return { field: `${at}.parts[${wrong}].consumableId`, message };
}

function lots(index: number, line: TypedLine, pack: Pack): PlannedLine[] {
  const listed = line.lots.length > 0 ? line.lots : [line];
  const weights = splitLargestRemainder(
    line.weight ?? 0n,
    listed.map(({ packs }) => BigInt(packs)),
  );
  return listed.map(({ packs, lotNumber, expiresOn }, i) => ({
    ...common(index, line),
    field: line.lots.length > 0 ? `lines[${index}].lots[${i}]` : `lines[${index}]`,
    ...{ lotNumber, expiresOn, packs, packPrice: line.packPrice, orderLineId: line.orderLineId },
    ...content(pack, packs),
    weight: quantityFromMicro(weights[i] ?? 0n),
    kit: null,
  }));
}

/** A part without a lot of its own has the kit's. */
function kit(index: number, line: TypedLine, pack: Pack, step: bigint): PlannedLine[] {
  const own = WHOLE - pack.parts.reduce((sum, part) => sum + part.share, 0n);
  const all = [{ ...pack, share: own }, ...pack.parts];
  const shares = all.map(({ share }) => share);
  const prices = splitLargestRemainder(
    line.packPrice,
    shares,
    line.packPrice % step === 0n ? step : 1n,
  );
  const weights = splitLargestRemainder(line.weight ?? ZERO_QUANTITY, shares);
  return all.map((part, i) => {
    const named = line.parts.findIndex(({ consumableId }) => consumableId === part.consumableId);
    const own = line.parts[named];
    const lotNumber = own?.lotNumber ?? line.lotNumber;
    return {
      ...common(index, line),
      field: own ? `lines[${index}].parts[${named}]` : `lines[${index}]`,
      lotNumber,
      expiresOn: own?.expiresOn ?? line.expiresOn,
      packs: line.packs,
      packPrice: moneyFromMicro(prices[i] ?? ZERO_MONEY),
      // The order is answered once, by what the pack is bought for.
      orderLineId: i === 0 ? line.orderLineId : null,
      ...content(part, line.packs),
      weight: quantityFromMicro(weights[i] ?? 0n),
      kit: {
        ...{ lotNumber: line.lotNumber, expiresOn: line.expiresOn },
        ...{ share: part.share, packPrice: line.packPrice },
      },
    };
  });
}

function common(index: number, { presentationId, locationId, sample }: TypedLine) {
  return { index, presentationId, locationId, sample };
}

function content(of: Content, packs: number) {
  const { consumableId, dispensing, contentPerContainer } = of;
  const each = BigInt(of.containersPerPack) * contentPerContainer;
  const quantity = quantityFromMicro(BigInt(packs) * each);
  return { consumableId, dispensing, contentPerContainer, quantity };
}
