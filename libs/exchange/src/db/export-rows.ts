import { formatTooth } from '#lib/dentition';
import type { Actor, Tx } from '#lib/platform';
import type { Kind } from '../domain/kinds.js';
import type { Values } from '../domain/plan/merge.js';
import {
  exportClosures,
  exportKitParts,
  exportPlanning,
  exportPriceLists,
  exportSubstitutes,
} from './export-ordering.js';
import { loadOpenBookings, type StoredBooking } from './load-booked.js';
import { loadConsumables, loadLocations } from './load-master.js';
import { loadPresentationsWithTerms, loadSuppliersWithTerms } from './load-ordering.js';

/** All of a kind that the book has, by the keys of its columns: what an import would need. */
export async function exportRows(tx: Tx, actor: Actor, kind: Kind): Promise<Values[]> {
  switch (kind) {
    case 'suppliers':
      return (await loadSuppliersWithTerms(tx)).map((thing) => thing.values);
    case 'closures':
      return exportClosures(tx);
    case 'locations':
      return (await loadLocations(tx)).map((thing) => thing.values);
    case 'consumables':
      return consumables(tx);
    case 'kit-parts':
      return exportKitParts(tx);
    case 'price-lists':
      return exportPriceLists(tx);
    case 'planning':
      return exportPlanning(tx);
    case 'substitutes':
      return exportSubstitutes(tx);
    case 'templates':
      return tx.query<Record<string, string | null>>(TEMPLATES);
    case 'opening-stock':
      return onHand(tx);
    case 'booked-visits':
      return bookedVisits(tx, actor);
  }
}

/** One row for each pack; a consumable without any has one of its own. */
async function consumables(tx: Tx): Promise<Values[]> {
  const packs = new Map<string, Values[]>();
  for (const { values } of await loadPresentationsWithTerms(tx)) {
    const { consumableId, ...pack } = values;
    const of = packs.get(consumableId ?? '');
    if (of) of.push(pack);
    else packs.set(consumableId ?? '', [pack]);
  }
  return (await loadConsumables(tx)).flatMap(({ id, values }) =>
    (packs.get(id) ?? [{}]).map((pack) => ({ ...values, ...pack })),
  );
}

/**
 * Everything that is on hand, each holding with its worth: its part of what is left of the layer's cost,
 * as a difference of rounded running totals, so that the holdings of a layer add up to it exactly. What
 * came in a kit names the kit, unless it is no part of it any more.
 */
const ON_HAND = `
SELECT c.name AS consumable, c.shade, c.size, c.grit,
       CASE WHEN p.consumable_id = c.id OR q.consumable_id IS NOT NULL THEN p.name END AS presentation,
       t.lot_number AS "lotNumber", l.expires_on::text AS "expiresOn", o.name AS location,
       trim_scale(h.on_hand)::text AS quantity, trim_scale(l.pack_price)::text AS "packPrice",
       trim_scale(round((l.landed_cost - l.out_cost) * h.up_to / h.whole, 6)
                  - round((l.landed_cost - l.out_cost) * (h.up_to - h.on_hand) / h.whole, 6)
       )::text AS value,
       h.opened_on::text AS "openedOn", h.use_by::text AS "useBy",
       l.received_on::text AS "receivedOn", u.name AS supplier, l.lot_status AS "lotStatus",
       h.id AS "rowKey"
FROM (SELECT *, sum(on_hand) OVER (PARTITION BY layer_id ORDER BY id) AS up_to,
             sum(on_hand) OVER (PARTITION BY layer_id) AS whole
      FROM holdings WHERE on_hand > 0) h
JOIN layers l ON l.id = h.layer_id
JOIN lots t ON t.id = l.lot_id
JOIN deliveries d ON d.id = l.delivery_id
JOIN suppliers u ON u.id = d.supplier_id
JOIN consumables c ON c.id = l.consumable_id
JOIN presentations p ON p.id = l.presentation_id
LEFT JOIN presentation_parts q
  ON q.presentation_id = p.id AND q.consumable_id = c.id
JOIN locations o ON o.id = h.location_id
ORDER BY lower(c.name), lower(c.shade), c.id, t.lot_number, lower(o.name), h.id`;

const YES_NO = (column: string) => `CASE WHEN ${column} THEN 'yes' ELSE 'no' END`;

/** The latest version of each template, line by line. */
const TEMPLATES = `
SELECT t.name AS template, v.minutes::text AS minutes, v.assistant_minutes::text AS "assistantMinutes",
       trim_scale(v.layer_thickness_mm)::text AS "layerThickness", v.note AS "versionNote",
       ${YES_NO('t.active')} AS active, c.name AS consumable, c.shade, c.size, c.grit, l.driver,
       trim_scale(l.placed)::text AS placed, trim_scale(l.dispensed)::text AS dispensed,
       ${YES_NO('l.every_attempt')} AS "everyAttempt", array_to_string(l.reasons, '; ') AS reasons,
       ${YES_NO('l.shares_dose')} AS "sharesDose", ${YES_NO('l.anaesthetic')} AS anaesthetic
FROM procedure_templates t
JOIN template_versions v ON v.template_id = t.id AND v.version = t.latest_version
JOIN template_lines l ON l.template_id = v.template_id AND l.version = v.version
LEFT JOIN consumables c ON c.id = l.consumable_id
ORDER BY lower(t.name), l.line_number`;

async function onHand(tx: Tx): Promise<Values[]> {
  return tx.query<Record<string, string | null>>(ON_HAND);
}

async function bookedVisits(tx: Tx, actor: Actor): Promise<Values[]> {
  const bookings = await loadOpenBookings(tx);
  const names = await loadNames(tx);
  return bookings.flatMap((booking, i) => bookedRows(booking, { actor, names, number: i + 1 }));
}

interface Names {
  readonly [id: string]: string;
}

async function loadNames(tx: Tx): Promise<Names> {
  const rows = await tx.query<{ id: string; name: string }>(
    `SELECT id, name FROM procedure_templates UNION ALL SELECT id, name FROM locations
     UNION ALL SELECT id, display_name FROM people
     UNION ALL SELECT id, concat_ws(' / ', name, shade, size, grit) FROM consumables`,
  );
  return Object.fromEntries(rows.map((row) => [row.id, row.name]));
}

interface Writing {
  readonly actor: Actor;
  readonly names: Names;
  readonly number: number;
}

/** One row for each restoration; what is left of alike visits that were kept in part. */
function bookedRows(booking: StoredBooking, { actor, names, number }: Writing): Values[] {
  const nameOf = (id: string | null) => (id === null ? null : (names[id] ?? null));
  return booking.restorations.map((each) => ({
    day: booking.day,
    externalReference: booking.externalReference,
    visit: String(number),
    chart: booking.chartReference,
    alike: String(booking.alike - booking.kept),
    dentist: nameOf(booking.dentistId),
    location: nameOf(booking.locationId),
    template: nameOf(each.templateId),
    tooth: each.tooth === null ? null : formatTooth(each.tooth, actor.toothNotation),
    surfaces: each.surfaces,
    cavityClass: each.cavityClass,
    size: each.size,
    reason: each.reason,
    shades: each.shades.length === 0 ? null : each.shades.map(nameOf).join('; '),
  }));
}
