import { createHash } from 'node:crypto';
import type { TemplateOf } from '#lib/procedures';
import type { ConsumableFacts } from '../db/visit-facts.js';
import type { BookedPlan, RecordedRestoration } from '../domain/booked-plan.js';
import type { BookedRestoration } from '../domain/booked-visit.js';

/** So many plans are remembered: those of a busy practice for two months. */
const MOST_REMEMBERED = 4000;

interface Known {
  readonly templateOf: TemplateOf;
  readonly recorded: ReadonlyMap<string, readonly RecordedRestoration[]>;
  readonly consumables: ReadonlyMap<string, ConsumableFacts>;
}

/**
 * Plans of booked visits, each kept under everything that it depends on: what was booked, the version
 * of its templates, what was recorded with them lately, and how the consumables come. So a plan is
 * never out of date, and the screens that ask every minute do not plan the same days anew.
 */
export class PlanMemory {
  private readonly plans = new Map<string, BookedPlan>();

  /** The plan of a booking as of what is known now; made when it was not made before. */
  of(known: Known): (booked: readonly BookedRestoration[], make: () => BookedPlan) => BookedPlan {
    const templates = new Map<string, string>();
    return (booked, make) => {
      const parts = booked.map((each) => {
        const { templateId, shades } = each;
        const template = templates.get(templateId) ?? templateKey(templateId, known);
        templates.set(templateId, template);
        return `${JSON.stringify(each)} ${template} ${shades.map((id) => itemKey(id, known))}`;
      });
      const key = hashed(parts);
      const plan = this.plans.get(key) ?? make();
      this.plans.delete(key);
      this.plans.set(key, plan);
      const [oldest] = this.plans.keys();
      if (this.plans.size > MOST_REMEMBERED && oldest !== undefined) this.plans.delete(oldest);
      return plan;
    };
  }
}

function templateKey(id: string, known: Known): string {
  const template = known.templateOf(id);
  const recorded = known.recorded.get(id) ?? [];
  const named = [
    ...(template?.lines.flatMap((line) => line.consumableId ?? []) ?? []),
    ...recorded.flatMap((each) => each.shades),
  ];
  const items = [...new Set(named)].map((each) => itemKey(each, known));
  const lately = recorded.map((each) => JSON.stringify(each, exactly));
  return hashed([id, String(template?.version), ...lately, ...items]);
}

function itemKey(id: string, { consumables }: Known): string {
  const facts = consumables.get(id);
  return `${id} ${facts?.stock_unit} ${facts?.dose}`;
}

function exactly(_key: string, value: unknown): unknown {
  return typeof value === 'bigint' ? value.toString() : value;
}

function hashed(parts: readonly string[]): string {
  const hash = createHash('sha256');
  for (const part of parts) hash.update(`${part};`);
  return hash.digest('base64');
}
