import { type AuditEntry, recordAudits } from '#lib/access';
import { type MasterRow, saveMany } from '#lib/catalogue';
import type { Actor, Tx } from '#lib/platform';
import { nameKey, type ToWrite, type Values } from '../domain/plan/merge.js';

interface Writing {
  readonly tx: Tx;
  readonly actor: Actor;
  readonly onProgress: (rows: number) => Promise<void>;
}

const AT_ONCE = 1_000;

const truth = (value: string | null | undefined) => value !== 'no';
const whole = (value: string | null | undefined) => (value == null ? null : Number(value));
const said = (value: string | null | undefined) => value ?? null;

/** Columns of lists that the trail of changes knows under another name. */
const AUDITED: Readonly<Record<string, string>> = {
  consumable: 'name',
  presentation: 'name',
  consumableActive: 'active',
  presentationActive: 'active',
  density: 'densityGPerCm3',
};

export async function writeSuppliers(to: Writing, writes: readonly ToWrite[]): Promise<void> {
  await inParts(to, 'supplier', writes, (part) =>
    saveMany(
      to.tx,
      'suppliers',
      part.map(({ id, values }) => ({
        id,
        name: said(values.name),
        email: said(values.email),
        language: said(values.language),
        customer_number: said(values.customerNumber),
        active: truth(values.active),
      })),
    ),
  );
}

/** All at once, because a place may hang below one that stands further down. */
export async function writeLocations(
  to: Writing,
  writes: readonly ToWrite[],
  known: ReadonlyMap<string, string>,
): Promise<void> {
  const idOf = new Map(known);
  for (const { id, values } of writes) idOf.set(nameKey(values.name), id);
  await saveMany(
    to.tx,
    'locations',
    writes.map(({ id, values }) => ({
      id,
      name: said(values.name),
      kind: said(values.kind),
      parent_id: values.parent ? (idOf.get(nameKey(values.parent)) ?? null) : null,
      active: truth(values.active),
    })),
  );
  await recordAudits(
    to.tx,
    to.actor,
    writes.map((write) => auditOf('location', write)),
  );
}

export async function writeConsumables(to: Writing, writes: readonly ToWrite[]): Promise<void> {
  await inParts(to, 'consumable', writes, (part) =>
    saveMany(to.tx, 'consumables', part.map(consumableRow)),
  );
}

function consumableRow({ id, values }: ToWrite): MasterRow<'consumables'> {
  return {
    id,
    name: said(values.consumable),
    category: said(values.category),
    stock_unit: said(values.stockUnit),
    shade: said(values.shade),
    opacity: said(values.opacity),
    viscosity: said(values.viscosity),
    size: said(values.size),
    grit: said(values.grit),
    life_after_opening: whole(values.lifeAfterOpening),
    life_after_opening_unit: said(values.lifeUnit),
    reorder_at: said(values.reorderAt),
    reorder_up_to: said(values.reorderUpTo),
    density_g_per_cm3: said(values.density),
    active: truth(values.consumableActive),
  };
}

export async function writePresentations(
  to: Writing,
  writes: readonly ToWrite[],
  suppliers: ReadonlyMap<string, string>,
): Promise<void> {
  await inParts(to, 'presentation', writes, (part) =>
    saveMany(
      to.tx,
      'presentations',
      part.map(({ id, values }) => ({
        id,
        consumable_id: said(values.consumableId),
        supplier_id: values.supplier ? (suppliers.get(nameKey(values.supplier)) ?? null) : null,
        name: said(values.presentation),
        dispensing: said(values.dispensing),
        containers_per_pack: whole(values.containersPerPack),
        content_per_container: said(values.contentPerContainer),
        device_identifier: said(values.deviceIdentifier),
        article_code: said(values.articleCode),
        list_price: said(values.listPrice),
        active: truth(values.presentationActive),
      })),
    ),
  );
}

async function inParts(
  { tx, actor, onProgress }: Writing,
  what: string,
  writes: readonly ToWrite[],
  save: (part: readonly ToWrite[]) => Promise<void>,
): Promise<void> {
  for (let from = 0; from < writes.length; from += AT_ONCE) {
    const part = writes.slice(from, from + AT_ONCE);
    await save(part);
    await recordAudits(
      tx,
      actor,
      part.map((write) => auditOf(what, write)),
    );
    await onProgress(from + part.length);
  }
}

function auditOf(what: string, { id, before, values }: ToWrite): AuditEntry {
  return {
    action: before ? `${what}.changed` : `${what}.created`,
    subjectKind: what,
    subjectId: id,
    details: before ? changed(before, values) : told(values),
  };
}

function changed(before: Values, values: Values): Record<string, unknown> {
  const [old, now] = [told(before), told(values)];
  return Object.fromEntries(
    Object.entries(now).flatMap(([key, to]) => {
      const from = old[key] ?? null;
      return JSON.stringify(from) === JSON.stringify(to) ? [] : [[key, { from, to }]];
    }),
  );
}

/** A thing under the names that the trail uses for it everywhere. */
function told({ lifeUnit, ...values }: Values): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(values).map(([key, value]) => {
      if (key !== 'lifeAfterOpening') return [AUDITED[key] ?? key, plain(key, value)];
      return [key, value === null ? null : { value: Number(value), unit: lifeUnit }];
    }),
  );
}

function plain(key: string, value: string | null): string | boolean | null {
  return /active$/i.test(key) ? value !== 'no' : value;
}
