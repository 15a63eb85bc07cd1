import type { IsoDate, Tx } from '#lib/platform';
import { epochDay } from '../domain/forecast/calendar.js';
import {
  PLAIN_TERMS,
  type PlanningSettings,
  type SupplyTerms,
} from '../domain/planning/planning-settings.js';
import { type SupplierLead, supplierLead } from '../domain/planning/supplier-lead.js';
import { loadSentOrders } from './supply-facts.js';

/** The lead times of all suppliers; each is worked out when it is first asked for. */
export interface SupplierLeads {
  /** Of everybody whose terms or orders are known, and of nobody in particular. */
  readonly suppliers: readonly (string | null)[];
  /** `null`: nobody says the supplier. */
  of(supplierId: string | null): SupplierLead;
}

export async function loadSupplierLeads(
  tx: Tx,
  today: IsoDate,
  known: {
    readonly settings: PlanningSettings;
    readonly terms: ReadonlyMap<string, SupplyTerms>;
  },
): Promise<SupplierLeads> {
  const { settings, terms } = known;
  const sent = await loadSentOrders(tx, today);
  const leads = new Map<string | null, SupplierLead>();
  const reckon = (id: string | null) => {
    const [own, orders] = id === null ? [] : [terms.get(id), sent.get(id)];
    return supplierLead(own ?? PLAIN_TERMS, settings.leadDays, orders ?? [], epochDay(today));
  };
  return {
    suppliers: [null, ...new Set([...terms.keys(), ...sent.keys()])],
    of: (id) => {
      const found = leads.get(id) ?? reckon(id);
      leads.set(id, found);
      return found;
    },
  };
}
