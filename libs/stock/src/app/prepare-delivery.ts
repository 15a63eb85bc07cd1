import { formatMoney, formatQuantity, money, quantity, ZERO_MONEY } from '#lib/measure';
import { type Actor, currencyStep, refuse, type Tx, unknownReference } from '#lib/platform';
import type { Dispensing } from '../domain/candidate.js';
import { type LandedDelivery, landDelivery, type NotLanded } from '../domain/land-delivery.js';
import { type Pack, type PlannedLine, planLines, type TypedLine } from '../domain/plan-lines.js';
import type { ReceiveDeliveryDto } from '../http/delivery.dto.js';
import { refuseStock } from '../stock.refusals.js';

const MOST = 999_999_999_999_000_000n;

/** A delivery as it will be booked: its layers with what each costs to get here. */
export interface Prepared {
  readonly lines: readonly PlannedLine[];
  readonly landed: LandedDelivery;
}

/** Checks all that a delivery names, plans its layers and works out what each costs. */
export async function prepareDelivery(
  tx: Tx,
  actor: Actor,
  command: ReceiveDeliveryDto,
): Promise<Prepared> {
  if (command.lines.length === 0 && (command.faults ?? []).length === 0) {
    throw refuse('invalid_request', 'A delivery has at least one line.', [
      { field: 'lines', message: 'must have at least 1 entries' },
    ]);
  }
  await checkSupplier(tx, command.supplierId);
  const packs = await loadPacks(tx, command);
  await checkLocations(tx, command);
  const step = currencyStep(actor.currency);
  const typed = command.lines.map(typedLine);
  const lines = planLines(typed, (line) => packs.get(line.presentationId) ?? gone(), step);
  if (!Array.isArray(lines)) {
    throw refuse('invalid_request', 'The lines of this delivery do not fit together.', [lines]);
  }
  return { lines, landed: land(command, lines, step) };
}

function typedLine(line: ReceiveDeliveryDto['lines'][number]): TypedLine {
  return {
    presentationId: line.presentationId,
    packs: line.packs,
    packPrice: money(line.packPrice),
    locationId: line.locationId,
    orderLineId: line.orderLineId ?? null,
    sample: line.sample ?? false,
    weight: line.weightGrams ? quantity(line.weightGrams) : null,
    ...lotOf(line),
    lots: (line.lots ?? []).map((lot) => ({ packs: lot.packs, ...lotOf(lot) })),
    parts: (line.parts ?? []).map((part) => ({ consumableId: part.consumableId, ...lotOf(part) })),
  };
}

function lotOf(of: { lotNumber?: string | null; expiresOn?: string | null }) {
  return { lotNumber: of.lotNumber?.trim() ?? null, expiresOn: of.expiresOn ?? null };
}

async function checkSupplier(tx: Tx, id: string): Promise<void> {
  const [row] = await tx.query<{ active: boolean }>('SELECT active FROM suppliers WHERE id = $1', [
    id,
  ]);
  if (!row) throw unknownReference('supplierId', 'supplier');
  if (!row.active) throw notInUse('supplierId', 'supplier');
}

function notInUse(field: string, what: string) {
  return refuseStock('not_in_use', `This ${what} is no longer in use.`, [
    { field, message: `names a ${what} that is no longer in use` },
  ]);
}

interface ContentRow {
  readonly consumable_id: string;
  readonly dispensing: Dispensing;
  readonly containers_per_pack: number;
  readonly content_per_container: string;
}

interface PackRow extends ContentRow {
  readonly id: string;
  readonly active: boolean;
  readonly parts: readonly (ContentRow & { readonly cost_share: string })[];
}

const PACKS = `
SELECT p.id, p.consumable_id, p.dispensing, p.containers_per_pack, p.content_per_container, p.active,
  (SELECT coalesce(json_agg(json_build_object('consumable_id', q.consumable_id,
     'dispensing', q.dispensing, 'containers_per_pack', q.containers_per_pack,
     'content_per_container', q.content_per_container::text, 'cost_share', q.cost_share::text)
     ORDER BY q.position), '[]')
   FROM presentation_parts q WHERE q.presentation_id = p.id) AS parts
FROM presentations p WHERE p.id = ANY($1::uuid[])`;

/** The packs that a delivery names, with their parts. */
async function loadPacks(tx: Tx, command: ReceiveDeliveryDto): Promise<ReadonlyMap<string, Pack>> {
  const named = [
    ...command.lines.map((line, i) => ({ id: line.presentationId, at: `lines[${i}]` })),
    ...(command.faults ?? []).map((one, i) => ({ id: one.presentationId, at: `faults[${i}]` })),
  ];
  const rows = await tx.query<PackRow>(PACKS, [named.map(({ id }) => id)]);
  const byId = new Map(rows.map((row) => [row.id, row]));
  for (const { id, at } of named) {
    const row = byId.get(id);
    if (!row) throw unknownReference(`${at}.presentationId`, 'presentation');
    if (!row.active) throw notInUse(`${at}.presentationId`, 'presentation');
  }
  return new Map(rows.map((row) => [row.id, toPack(row)]));
}

function toPack(row: PackRow): Pack {
  return {
    ...toContent(row),
    parts: row.parts.map((part) => ({ ...toContent(part), share: quantity(part.cost_share) })),
  };
}

function toContent(row: ContentRow) {
  return {
    consumableId: row.consumable_id,
    dispensing: row.dispensing,
    containersPerPack: row.containers_per_pack,
    contentPerContainer: quantity(row.content_per_container),
  };
}

async function checkLocations(tx: Tx, command: ReceiveDeliveryDto): Promise<void> {
  const rows = await tx.query<{ id: string; active: boolean }>(
    'SELECT id, active FROM locations WHERE id = ANY($1::uuid[])',
    [command.lines.map((line) => line.locationId)],
  );
  const active = new Map(rows.map((row) => [row.id, row.active]));
  command.lines.forEach((line, i) => {
    const known = active.get(line.locationId);
    if (known === undefined) throw unknownReference(`lines[${i}].locationId`, 'location');
    if (!known) throw notInUse(`lines[${i}].locationId`, 'location');
  });
}

function land(
  command: ReceiveDeliveryDto,
  lines: readonly PlannedLine[],
  step: bigint,
): LandedDelivery {
  const spreadKey = command.spreadKey ?? 'value';
  if (spreadKey === 'weight') refuseWithoutWeight(command);
  const amount = (text: string | null | undefined) => (text ? money(text) : ZERO_MONEY);
  const landed = landDelivery({
    lines,
    freight: amount(command.freight),
    duty: amount(command.duty),
    discount: amount(command.discount),
    spreadKey,
    step,
  });
  if (!landed.ok) throw notLanded(landed);
  refuseTooMuch(landed);
  lines.forEach((line, i) => {
    const cost = landed.landed[i] ?? ZERO_MONEY;
    if (line.quantity <= MOST && cost <= MOST) return;
    const shown = `${formatQuantity(line.quantity)} for ${formatMoney(cost)}`;
    throw refuseStock('too_large', `Line ${line.index + 1} is too large: ${shown}.`, [
      { field: `lines[${line.index}].packs`, message: 'makes more than the book can hold' },
    ]);
  });
  return landed;
}

/** A delivery whose totals the book can hold. */
export function refuseTooMuch({
  goodsTotal,
  landedTotal,
}: Pick<LandedDelivery, 'goodsTotal' | 'landedTotal'>): void {
  const most = goodsTotal > landedTotal ? goodsTotal : landedTotal;
  if (most <= MOST) return;
  throw refuseStock('too_large', `This delivery is too large: ${formatMoney(most)}.`, [
    { field: 'lines', message: 'cost more together than the book can hold' },
  ]);
}

/** What a sample weighs bears no cost, so nobody has to weigh it. */
function refuseWithoutWeight(command: ReceiveDeliveryDto): void {
  const errors = command.lines.flatMap((line, i) =>
    line.sample || line.weightGrams
      ? []
      : [
          {
            field: `lines[${i}].weightGrams`,
            message: 'is wanted when costs are spread by weight',
          },
        ],
  );
  if (errors.length === 0) return;
  throw refuse(
    'invalid_request',
    'To spread costs by weight, every line needs its weight.',
    errors,
  );
}

export function notLanded({ reason, field }: NotLanded) {
  return reason === 'discount too large'
    ? refuseStock('discount_too_large', 'The discount is larger than the goods it is given on.', [
        { field, message: 'must not be more than the goods cost' },
      ])
    : refuseStock('nothing_to_bear', `There is nothing paid for that could bear the ${field}.`, [
        { field, message: 'cannot be spread: nothing of this delivery was paid for' },
      ]);
}

function gone(): never {
  throw new Error('A presentation of a delivery was lost');
}
