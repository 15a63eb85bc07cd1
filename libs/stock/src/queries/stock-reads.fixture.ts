import type pg from 'pg';
import { newId } from '#lib/platform';
import { insertRows as insert } from './insert-rows.fixture.js';
import { ids } from './stock-reads-ids.fixture.js';

function layer(index: number, more: object): object {
  return {
    id: ids.layers[index],
    practice_id: ids.practice,
    delivery_id: ids.delivery,
    line_number: index + 1,
    location_id: ids.store,
    packs: 1,
    pack_price: '10',
    received_on: '2026-01-10',
    lot_status: 'released',
    out_quantity: '0',
    out_cost: '0',
    ...more,
  };
}

const practice_id = ids.practice;
const named = (id: string, name: string, more: object = {}) => ({ id, practice_id, name, ...more });

export async function fillBook(client: pg.Client): Promise<void> {
  await fillCatalogue(client);
  await fillStock(client);
  await insert(client, 'holdings', holdingRows());
  await fillVisit(client);
  await insert(client, 'movements', movementRows());
}

async function fillCatalogue(client: pg.Client): Promise<void> {
  const place = { time_zone: 'Europe/Vienna', currency: 'EUR' };
  await insert(client, 'practices', [
    { id: ids.practice, name: 'North', ...place },
    { id: ids.stranger, name: 'South', ...place },
  ]);
  await insert(client, 'people', [
    {
      id: ids.person,
      practice_id,
      display_name: 'Mira Holt',
      sign_in_name: 'mira',
      password_hash: 'x',
      role: 'owner',
    },
  ]);
  await insert(client, 'suppliers', [named(ids.supplier, 'Northgate Supplies')]);
  await insert(client, 'locations', [
    named(ids.store, 'Store', { kind: 'store' }),
    named(ids.room, 'Room 2', { kind: 'room' }),
  ]);
  await insert(client, 'consumables', [
    named(ids.paste, 'Paste', {
      category: 'paste',
      stock_unit: 'g',
      shade: 'Body 2',
      reorder_at: '5',
    }),
    named(ids.wedges, 'Wedge 100%', {
      category: 'wedge',
      stock_unit: 'piece',
      shade: null,
      reorder_at: null,
    }),
    named(ids.spare, 'Adhesive', {
      category: 'adhesive',
      stock_unit: 'mL',
      shade: null,
      reorder_at: '2',
    }),
  ]);
}

async function fillStock(client: pg.Client): Promise<void> {
  const pack = { containers_per_pack: 3, content_per_container: '1' };
  await insert(client, 'presentations', [
    named(ids.pastePack, 'Syringe', { consumable_id: ids.paste, dispensing: 'multi-use', ...pack }),
    named(ids.wedgePack, 'Box', { consumable_id: ids.wedges, dispensing: 'by-piece', ...pack }),
  ]);
  const lot = (id: string, consumable_id: string, lot_number: string | null, more: object) => ({
    id,
    practice_id,
    consumable_id,
    lot_number,
    ...more,
  });
  await insert(client, 'lots', [
    lot(ids.good, ids.paste, 'LX-1', { expires_on: '2027-01-31', status: 'released' }),
    lot(ids.old, ids.paste, null, { expires_on: '2026-05-03', status: 'released' }),
    lot(ids.recalled, ids.wedges, 'W_9', { expires_on: null, status: 'recalled' }),
  ]);
  await insert(client, 'deliveries', [
    {
      id: ids.delivery,
      practice_id,
      supplier_id: ids.supplier,
      received_on: '2026-01-10',
      reference: 'DN-2041',
      goods_total: '30',
      landed_total: '30',
      recorded_by: ids.person,
    },
  ]);
  const paste = {
    consumable_id: ids.paste,
    presentation_id: ids.pastePack,
    dispensing: 'multi-use',
    content_per_container: '1',
  };
  await insert(client, 'layers', [
    layer(0, {
      ...paste,
      lot_id: ids.good,
      expires_on: '2027-01-31',
      received: '3',
      landed_cost: '10',
    }),
    layer(1, {
      ...paste,
      lot_id: ids.old,
      expires_on: '2026-05-03',
      received: '2',
      landed_cost: '12',
    }),
    layer(2, {
      ...paste,
      consumable_id: ids.wedges,
      presentation_id: ids.wedgePack,
      dispensing: 'by-piece',
      lot_id: ids.recalled,
      expires_on: null,
      lot_status: 'recalled',
      received: '100',
      landed_cost: '8',
    }),
  ]);
}

async function fillVisit(client: pg.Client): Promise<void> {
  await insert(client, 'visits', [
    {
      id: ids.visit,
      practice_id,
      chart_reference: 'C-1',
      visited_on: '2026-04-01',
      dentist_id: ids.person,
      location_id: ids.room,
      staff_count: 2,
      cost_share_key: 'equal',
      material_cost: '1',
      retake_cost: '0',
      estimated: true,
      recorded_by: ids.person,
    },
  ]);
  await insert(client, 'usage_lines', [
    {
      id: ids.line,
      practice_id,
      visit_id: ids.visit,
      position: 1,
      consumable_id: ids.spare,
      attempt: 1,
      planned: '0.2',
      placed: '0.2',
      dispensed: '0.2',
      charged: '0.2',
      cost: '1',
    },
  ]);
  await insert(client, 'shortfalls', [
    {
      id: ids.shortfall,
      practice_id,
      usage_line_id: ids.line,
      visit_id: ids.visit,
      consumable_id: ids.spare,
      location_id: ids.room,
      used_on: '2026-04-01',
      quantity: '0.2',
      settled: '0.05',
      unit_cost: '5',
      cost_known: true,
    },
  ]);
}

function holdingRows(): object[] {
  const row = (index: number, of: 0 | 1 | 2, on_hand: string, more: object = {}) => ({
    id: ids.holdings[index],
    practice_id: ids.practice,
    layer_id: ids.layers[of],
    location_id: ids.store,
    on_hand,
    opened_on: null,
    use_by: null,
    ...more,
  });
  const room = { location_id: ids.room };
  return [
    row(0, 0, '1'),
    row(1, 0, '1', room),
    row(2, 0, '1', { ...room, opened_on: '2026-05-01', use_by: '2026-06-01' }),
    row(3, 1, '2'),
    row(4, 2, '100'),
  ];
}

function movementRows(): object[] {
  const base = {
    practice_id: ids.practice,
    occurred_on: '2026-01-10',
    recorded_by: ids.person,
    out_of_order: false,
    from_holding_id: null,
    from_location_id: null,
    to_holding_id: null,
    to_location_id: null,
    waste_reason: null,
    note: null,
    reverses_id: null,
  };
  const receipt = (of: 0 | 1 | 2, holding: number, quantity: string, cost: string) => ({
    ...base,
    id: newId(),
    layer_id: ids.layers[of],
    from_account: 'supplier',
    to_account: 'location',
    to_holding_id: ids.holdings[holding],
    to_location_id: ids.store,
    quantity,
    cost,
  });
  const here = { holding: ids.holdings[0], location: ids.store };
  return [
    receipt(0, 0, '3', '10'),
    receipt(1, 3, '2', '12'),
    receipt(2, 4, '100', '8'),
    {
      ...base,
      id: ids.writeOff,
      layer_id: ids.layers[0],
      from_account: 'location',
      to_account: 'waste',
      from_holding_id: here.holding,
      from_location_id: here.location,
      quantity: '1',
      cost: '3.333333',
      waste_reason: 'damaged',
      note: 'Fell down.',
    },
    {
      ...base,
      id: ids.undo,
      layer_id: ids.layers[0],
      from_account: 'waste',
      to_account: 'location',
      to_holding_id: here.holding,
      to_location_id: here.location,
      quantity: '1',
      cost: '3.333333',
      note: 'It was another one.',
      reverses_id: ids.writeOff,
      occurred_on: '2026-01-11',
    },
  ];
}
