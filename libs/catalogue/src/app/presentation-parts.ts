import { Injectable } from '@nestjs/common';
import { recordAudit } from '#lib/access';
import { formatQuantity, quantity, quantityFromMicro, type StockUnit } from '#lib/measure';
import { type Actor, type Tx, UnitOfWork, unknownReference } from '#lib/platform';
import { PresentationEntity } from '../db/presentation.entity.js';
import { type Dispensing, packingProblems } from '../domain/presentation-rules.js';
import { findNamed, findToChange } from './find.js';
import { refuseMisfits } from './refuse-misfits.js';

export interface PartInput {
  readonly consumableId: string;
  readonly dispensing: Dispensing;
  readonly containersPerPack: number;
  readonly contentPerContainer: string;
  /** Of the price of the pack, with at most four digits after the point. */
  readonly sharePercent: string;
}

export interface PartView extends PartInput {
  readonly consumableName: string;
  readonly stockUnit: StockUnit;
}

export interface PartsView {
  /** What is left of the price for the pack's own content. */
  readonly ownSharePercent: string;
  readonly parts: readonly PartView[];
}

interface PartRow {
  readonly consumable_id: string;
  readonly name: string;
  readonly stock_unit: StockUnit;
  readonly dispensing: Dispensing;
  readonly containers_per_pack: number;
  readonly content_per_container: string;
  readonly percent: string;
}

const PARTS = `
SELECT q.consumable_id, concat_ws(', ', c.name, c.shade, c.size) AS name, c.stock_unit, q.dispensing,
       q.containers_per_pack, q.content_per_container, (q.cost_share * 100)::text AS percent
FROM presentation_parts q JOIN consumables c ON c.id = q.consumable_id
WHERE q.practice_id = $1 AND q.presentation_id = $2
ORDER BY q.position`;

const INSERT = `
INSERT INTO presentation_parts (presentation_id, practice_id, position, consumable_id, dispensing,
  containers_per_pack, content_per_container, cost_share)
SELECT $2, current_practice(), r.position, r."consumableId", r.dispensing, r."containersPerPack",
  r."contentPerContainer", r."sharePercent" / 100
FROM json_to_recordset($1::json) AS r(position int, "consumableId" uuid, dispensing text,
  "containersPerPack" int, "contentPerContainer" numeric, "sharePercent" numeric)`;

/** What else is in a pack: the parts of a kit, or the other consumables of a mixed box. */
@Injectable()
export class PresentationParts {
  constructor(private readonly uow: UnitOfWork) {}

  async get(actor: Actor, id: string): Promise<PartsView> {
    return this.uow.read(actor.practiceId, async (tx) => {
      await findNamed(tx, PresentationEntity, id, 'presentation');
      return readParts(tx, id);
    });
  }

  /** Sets all parts at once; what was received before keeps what it was received as. */
  async set(actor: Actor, id: string, parts: readonly PartInput[]): Promise<PartsView> {
    return this.uow.run(actor.practiceId, async (tx) => {
      const own = await findToChange(tx, PresentationEntity, id, 'presentation');
      await check(tx, own, parts);
      const before = await readParts(tx, id);
      await tx.query('DELETE FROM presentation_parts WHERE presentation_id = $1', [id]);
      const rows = parts.map((part, i) => ({ position: i + 1, ...part }));
      await tx.query(INSERT, [JSON.stringify(rows), id]);
      const after = await readParts(tx, id);
      await recordAudit(tx, actor, {
        action: 'presentation.parts set',
        subjectKind: 'presentation',
        subjectId: id,
        details: { parts: { was: before.parts, is: after.parts } },
      });
      return after;
    });
  }
}

async function readParts(tx: Tx, id: string): Promise<PartsView> {
  const rows = await tx.query<PartRow>(PARTS, [tx.practiceId, id]);
  const parts = rows.map((row) => ({
    consumableId: row.consumable_id,
    consumableName: row.name,
    stockUnit: row.stock_unit,
    dispensing: row.dispensing,
    containersPerPack: row.containers_per_pack,
    contentPerContainer: formatQuantity(quantity(row.content_per_container)),
    sharePercent: formatQuantity(quantity(percentText(row.percent))),
  }));
  const rest = HUNDRED - sumOf(parts);
  return { ownSharePercent: formatQuantity(quantityFromMicro(rest)), parts };
}

const HUNDRED = 100_000_000n;

/** A share of six digits times a hundred has eight of them, the last two nothing. */
const percentText = (percent: string) => percent.replace(/(\.\d{6})0+$/, '$1');

function sumOf(parts: readonly PartInput[]): bigint {
  return parts.reduce((sum, part) => sum + quantity(part.sharePercent), 0n);
}

async function check(tx: Tx, own: PresentationEntity, parts: readonly PartInput[]): Promise<void> {
  const rows = await tx.query<{ id: string; stock_unit: StockUnit }>(
    'SELECT id, stock_unit FROM consumables WHERE id = ANY($1::uuid[])',
    [parts.map((part) => part.consumableId)],
  );
  const units = new Map(rows.map((row) => [row.id, row.stock_unit]));
  const problems = parts.flatMap((part, i) => {
    const stockUnit = units.get(part.consumableId);
    const at = `parts[${i}]`;
    if (!stockUnit) throw unknownReference(`${at}.consumableId`, 'consumable');
    if (part.consumableId === own.consumableId) {
      return [{ field: `${at}.consumableId`, message: "is the pack's own content already" }];
    }
    if (parts.findIndex((one) => one.consumableId === part.consumableId) !== i) {
      return [{ field: `${at}.consumableId`, message: 'is named twice' }];
    }
    const contentPerContainer = quantity(part.contentPerContainer);
    return packingProblems({ stockUnit, dispensing: part.dispensing, contentPerContainer }).map(
      (one) => ({ ...one, field: `${at}.${one.field}` }),
    );
  });
  if (sumOf(parts) > HUNDRED) {
    problems.push({ field: 'parts', message: 'have shares of more than 100 % together' });
  }
  refuseMisfits(problems);
}
