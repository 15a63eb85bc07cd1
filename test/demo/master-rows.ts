import { CATALOGUE, consumableId, consumableOf, itemNumber, presentationId } from './catalogue.js';
import { demoId } from './dice.js';
import type { StepOf } from './steps.js';
import type { DemoVersion } from './template-parts.js';

/** Master data of the scenario in the words of the use cases. */
export function newConsumable(payload: StepOf<'consumable'>['payload']) {
  const { consumable, reorderAt, reorderUpTo } = payload;
  const row = consumableOf(consumable);
  return {
    id: consumableId(consumable),
    name: row.name,
    category: row.category,
    stockUnit: row.unit,
    shade: row.shade ?? null,
    opacity: row.opacity ?? null,
    viscosity: row.viscosity ?? null,
    size: row.size ?? null,
    grit: row.grit ?? null,
    lifeAfterOpening: row.life ? { value: row.life[0], unit: row.life[1] } : null,
    densityGPerCm3: row.density === undefined ? null : String(row.density),
    reorderAt,
    reorderUpTo,
  };
}

type PackRef = StepOf<'presentation'>['payload'];

function packOf({ consumable, pack }: PackRef) {
  const found = consumableOf(consumable).packs[pack];
  if (!found) throw new Error(`${consumable} has no pack ${pack}`);
  return found;
}

export function packId(ref: PackRef): string {
  return presentationId(ref.consumable, packOf(ref));
}

export function newPresentation(ref: PackRef) {
  const pack = packOf(ref);
  const position = CATALOGUE.findIndex((row) => row.key === ref.consumable);
  return {
    id: packId(ref),
    consumableId: consumableId(ref.consumable),
    supplierId: demoId('supplier', pack.supplier),
    name: pack.name,
    dispensing: pack.dispensing,
    containersPerPack: pack.containers,
    contentPerContainer: String(pack.content),
    deviceIdentifier: itemNumber(100 + 10 * position + ref.pack),
    listPrice: pack.price.toFixed(2),
  };
}

export function newVersion({ minutes, layerThicknessMm, note, lines }: DemoVersion) {
  const content = lines.map(({ consumable, ...line }) => ({
    ...line,
    consumableId: consumable === null ? null : consumableId(consumable),
  }));
  return { minutes, layerThicknessMm, note, lines: content };
}
