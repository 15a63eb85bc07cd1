import type { OwnSubject } from '#lib/labels';
import type { Tx } from '#lib/platform';

/** What a label that the practice printed itself stands on. What does not apply is null. */
export interface OwnLabel {
  readonly kind: OwnSubject['kind'];
  readonly locationId: string | null;
  readonly locationName: string | null;
  readonly holdingId: string | null;
  readonly presentationId: string | null;
  readonly presentationName: string | null;
  /** Of what the container comes from: (91) may stand on it without a GTIN. */
  readonly containersPerPack: number | null;
  readonly deviceIdentifier: string | null;
  readonly consumableId: string | null;
  readonly consumableName: string | null;
  readonly variant: string | null;
  readonly stockUnit: string | null;
  readonly lotId: string | null;
  readonly lotNumber: string | null;
  readonly lotStatus: string | null;
  readonly expiresOn: string | null;
  readonly openedOn: string | null;
  /** The last day of an opened container. */
  readonly useBy: string | null;
}

const OF_LOT = `c.id AS "consumableId", c.name AS "consumableName", c.stock_unit AS "stockUnit",
  nullif(concat_ws(', ', c.shade, c.size, c.grit), '') AS variant,
  l.id AS "lotId", l.lot_number AS "lotNumber", l.status AS "lotStatus",
  l.expires_on AS "expiresOn"`;

const OF_PACK = `p.id AS "presentationId", p.name AS "presentationName",
  p.containers_per_pack AS "containersPerPack", p.device_identifier AS "deviceIdentifier"`;

const NO_STOCK = {
  ...{ presentationId: null, presentationName: null, containersPerPack: null },
  ...{ deviceIdentifier: null, consumableId: null, consumableName: null, variant: null },
  ...{ stockUnit: null, lotId: null, lotNumber: null, lotStatus: null, expiresOn: null },
  ...{ openedOn: null, useBy: null, holdingId: null },
};

interface Place {
  readonly locationId: string;
  readonly locationName: string;
}

async function places(tx: Tx, ids: readonly string[]): Promise<OwnLabel[]> {
  const rows = await tx.query<Place>(
    'SELECT id AS "locationId", name AS "locationName" FROM locations WHERE id = ANY($1::uuid[])',
    [ids],
  );
  return rows.map((row) => ({ kind: 'location', ...NO_STOCK, ...row }));
}

type OfLot = Omit<OwnLabel, 'kind' | 'locationId' | 'locationName' | 'holdingId' | 'openedOn'>;

/** A lot with the pack in which it came last. */
async function lots(tx: Tx, ids: readonly string[]): Promise<OwnLabel[]> {
  const rows = await tx.query<OfLot>(
    `SELECT ${OF_LOT}, ${OF_PACK}, NULL::date AS "useBy"
     FROM lots l
     JOIN consumables c ON c.practice_id = l.practice_id AND c.id = l.consumable_id
     LEFT JOIN LATERAL (
       SELECT y.presentation_id FROM layers y WHERE y.lot_id = l.id
       ORDER BY y.received_on DESC, y.id DESC LIMIT 1
     ) came ON true
     LEFT JOIN presentations p
       ON p.practice_id = l.practice_id AND p.id = came.presentation_id
     WHERE l.id = ANY($1::uuid[])`,
    [ids],
  );
  const nowhere = { locationId: null, locationName: null, holdingId: null, openedOn: null };
  return rows.map((row) => ({ kind: 'lot', ...row, ...nowhere }));
}

/** Holdings; one that is sealed is a shelf of its lot, and its label is that of the lot. */
async function containers(tx: Tx, ids: readonly string[]): Promise<OwnLabel[]> {
  const rows = await tx.query<Omit<OwnLabel, 'kind'>>(
    `SELECT ${OF_LOT}, ${OF_PACK}, h.id AS "holdingId", h.opened_on AS "openedOn",
       least(l.expires_on, h.use_by) AS "useBy",
       o.id AS "locationId", o.name AS "locationName"
     FROM holdings h
     JOIN layers y ON y.practice_id = h.practice_id AND y.id = h.layer_id
     JOIN lots l ON l.practice_id = y.practice_id AND l.id = y.lot_id
     JOIN consumables c ON c.practice_id = l.practice_id AND c.id = l.consumable_id
     JOIN presentations p ON p.practice_id = y.practice_id AND p.id = y.presentation_id
     JOIN locations o ON o.practice_id = h.practice_id AND o.id = h.location_id
     WHERE h.id = ANY($1::uuid[])`,
    [ids],
  );
  return rows.map((row) => ({ ...row, kind: row.openedOn === null ? 'lot' : 'container' }));
}

const FINDERS = { location: places, lot: lots, container: containers };

/** In the order of the ids; ids of which this practice has nothing are left out. */
export async function ownLabels(
  tx: Tx,
  kind: OwnSubject['kind'],
  ids: readonly string[],
): Promise<OwnLabel[]> {
  if (ids.length === 0) return [];
  const found = await FINDERS[kind](tx, ids);
  const idOf = { location: 'locationId', lot: 'lotId', container: 'holdingId' } as const;
  const byId = new Map(found.map((label) => [label[idOf[kind]], label]));
  return ids.flatMap((id) => byId.get(id.toLowerCase()) ?? []);
}
