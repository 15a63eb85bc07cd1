import { Injectable } from '@nestjs/common';
import { loadPresentationParts, setPresentationParts } from '#lib/catalogue';
import { Clock } from '#lib/platform';
import {
  loadOwnPlanning,
  loadPresentationTerms,
  loadSubstitutes,
  loadSupplyTerms,
  NOTHING_OWN,
  PLAIN_PRESENTATION,
  PLAIN_TERMS,
  takeInOwnPlanning,
  takeInPresentationTerms,
  takeInSubstitutes,
  takeInSupplyTerms,
} from '#lib/purchasing';
import { loadSuppliers } from '../db/load-master.js';
import { loadGoods } from '../db/load-ordering.js';
import type { RowFate } from '../domain/fate.js';
import { nameKey } from '../domain/plan/merge.js';
import type { ChildPlan } from '../domain/plan/plan-children.js';
import { closureOf, planClosures } from '../domain/plan/plan-closures.js';
import { partOf, planKitParts, planPriceLists, priceOf } from '../domain/plan/plan-packs.js';
import { planningOf, planPlanning, planSubstitutes } from '../domain/plan/plan-planning.js';
import type { ListRow } from '../domain/read-rows.js';
import { holdRows, settled } from './hold-rows.js';
import type { Importing } from './importing.js';

type Brings = (importing: Importing, rows: readonly ListRow[]) => Promise<RowFate[]>;

/** Brings in what ordering knows of suppliers, packs and consumables. */
@Injectable()
export class ImportOrdering {
  constructor(private readonly clock: Clock) {}

  readonly closures: Brings = async ({ tx, actor }, rows) => {
    const plan = await settled(
      async () => {
        const suppliers = await loadSuppliers(tx);
        const terms = await loadSupplyTerms(tx);
        return planClosures(
          {
            suppliers: new Map(suppliers.map(({ id, values }) => [nameKey(values.name), id])),
            closures: new Map([...terms].map(([id, each]) => [id, each.closures])),
          },
          rows,
        );
      },
      async (first) => holdRows(tx, 'suppliers', parentsOf(first)),
    );
    const terms = await loadSupplyTerms(tx);
    const said = plan.writes.map(({ parentId: id, after }) => {
      const before = terms.get(id) ?? null;
      return { id, before, after: { ...(before ?? PLAIN_TERMS), closures: after.map(closureOf) } };
    });
    await takeInSupplyTerms({ tx, actor }, said);
    return [...plan.fates];
  };

  readonly priceLists: Brings = async ({ tx, actor }, rows) => {
    const goods = await loadGoods(tx);
    const plan = await settled(
      async () => {
        const terms = await loadPresentationTerms(tx);
        const prices = new Map([...terms].map(([id, each]) => [id, each.prices]));
        return planPriceLists({ goods, prices }, rows);
      },
      async (first) => holdRows(tx, 'presentations', parentsOf(first)),
    );
    const terms = await loadPresentationTerms(tx);
    const said = plan.writes.map(({ parentId: id, after }) => {
      const before = terms.get(id) ?? null;
      const prices = after.map(priceOf);
      return { id, before, after: { ...(before ?? PLAIN_PRESENTATION), prices } };
    });
    await takeInPresentationTerms({ tx, actor }, said);
    return [...plan.fates];
  };

  readonly kitParts: Brings = async ({ tx, actor }, rows) => {
    const goods = await loadGoods(tx);
    const plan = await settled(
      async () => planKitParts({ goods, parts: await loadPresentationParts(tx) }, rows),
      async (first) => holdRows(tx, 'presentations', parentsOf(first)),
    );
    const kits = plan.writes.map(({ parentId, after }) => ({
      presentationId: parentId,
      parts: after.map(partOf),
    }));
    if (kits.length > 0) await setPresentationParts(tx, actor, kits);
    return [...plan.fates];
  };

  readonly planning: Brings = async ({ tx, actor }, rows) => {
    const goods = await loadGoods(tx);
    const { fates, writes } = await settled(
      async () => planPlanning({ goods, own: await loadOwnPlanning(tx) }, rows),
      async (first) => {
        const known = first.writes.flatMap(({ id, before }) => (before ? [id] : []));
        return holdRows(tx, 'consumable_planning', known);
      },
    );
    const said = writes.map(({ id, before, values }) => ({
      id,
      before: before ? planningOf(before) : NOTHING_OWN,
      after: planningOf(values),
    }));
    await takeInOwnPlanning({ tx, actor }, said);
    return [...fates];
  };

  readonly substitutes: Brings = async ({ tx, actor }, rows) => {
    const pairs = (await loadSubstitutes(tx)).filter((pair) => pair.withdrawnAt === null);
    const { fates, fresh } = planSubstitutes({ goods: await loadGoods(tx), pairs }, rows);
    await takeInSubstitutes({ tx, actor }, fresh, this.clock.now());
    return [...fates];
  };
}

function parentsOf({ writes }: ChildPlan): string[] {
  return writes.map((write) => write.parentId);
}
