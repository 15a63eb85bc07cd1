import { Injectable } from '@nestjs/common';
import { formatMoney, moneyFromMicro } from '#lib/measure';
import { type Actor, refuse, UnitOfWork } from '#lib/platform';
import { microOf, moneyText } from '#lib/stock';
import { type CostedRestoration, sharesOf } from '#lib/visits';
import type { RestorationExplainedDto } from '../http/restoration.dto.js';
import { type LineRow, type LinesWithSources, loadCostLines, toCostedLine } from './cost-lines.js';
import { RESTORATION_FACTS, type RestorationRow, toRestoration } from './restoration-facts.js';

const ONE = `${RESTORATION_FACTS} WHERE r.practice_id = $1 AND r.id = $2`;

const OF_VISIT = `
SELECT id, tooth, minutes, length(surfaces) AS surfaces FROM restorations
WHERE practice_id = $1 AND visit_id = $2 ORDER BY position`;

const CATEGORIES = `
SELECT category, cost FROM restoration_costs
WHERE practice_id = $1 AND restoration_id = $2 ORDER BY cost DESC, category`;

interface SiblingRow extends CostedRestoration {
  readonly id: string;
}

interface CategoryRow {
  readonly category: string;
  readonly cost: string;
}

/** Where the cost of one restoration comes from, down to the movements and the prices paid. */
@Injectable()
export class ExplainRestorationCost {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, id: string): Promise<RestorationExplainedDto> {
    const { practiceId } = actor;
    return this.uow.read(practiceId, async (tx) => {
      const [row] = await tx.query<RestorationRow>(ONE, [practiceId, id]);
      if (!row) throw refuse('not_found', 'There is no restoration with this id.');
      const siblings = await tx.query<SiblingRow>(OF_VISIT, [practiceId, row.visit_id]);
      const categories = await tx.query<CategoryRow>(CATEGORIES, [practiceId, id]);
      const found = await loadCostLines(tx, {
        practiceId,
        visitId: row.visit_id,
        restorationId: id,
        tooth: row.tooth,
      });
      return explain(actor, row, siblings, categories, found);
    });
  }
}

function explain(
  actor: Actor,
  row: RestorationRow,
  siblings: readonly SiblingRow[],
  categories: readonly CategoryRow[],
  found: LinesWithSources,
): RestorationExplainedDto {
  const at = siblings.findIndex((sibling) => sibling.id === row.id);
  const shared = found.lines.map((line) => {
    const share = shareOf(line, at, siblings, row.cost_share_key);
    const text = formatMoney(moneyFromMicro(share));
    return { share, dto: toCostedLine(line, text, found.sources.get(line.id) ?? []) };
  });
  const exact = shared.reduce((sum, line) => sum + line.share, 0n);
  const lines = shared.map((line) => line.dto);
  return {
    ...toRestoration(row, actor),
    currency: actor.currency,
    costShareKey: row.cost_share_key,
    estimated: lines.some((line) => line.estimated),
    visitCost: moneyText(row.material_cost),
    categories: categories.map((c) => ({ category: c.category, cost: moneyText(c.cost) })),
    ownLines: lines.filter((line) => line.belongsTo === 'restoration'),
    sharedLines: lines.filter((line) => line.belongsTo !== 'restoration'),
    exactCost: formatMoney(moneyFromMicro(exact)),
    rounding: formatMoney(moneyFromMicro(microOf(row.cost) - exact)),
  };
}

/** The part of a line that a restoration bears, worked out as it was when the visit was posted. */
function shareOf(
  line: LineRow,
  at: number,
  siblings: readonly SiblingRow[],
  key: RestorationRow['cost_share_key'],
): bigint {
  const shares = sharesOf(
    {
      restoration: line.restoration_id === null ? null : at,
      tooth: line.tooth,
      attempt: line.attempt,
      category: line.category,
      cost: moneyFromMicro(microOf(line.cost)),
    },
    siblings,
    key,
  );
  return shares.get(at) ?? 0n;
}
