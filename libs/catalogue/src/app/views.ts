import type { StockUnit } from '#lib/measure';
import type { ConsumableEntity } from '../db/consumable.entity.js';
import type { LocationEntity } from '../db/location.entity.js';
import type { PresentationEntity } from '../db/presentation.entity.js';
import type { SupplierEntity } from '../db/supplier.entity.js';
import type { LifeAfterOpening } from '../domain/effective-expiry.js';
import type { LocationKind } from '../domain/location-tree.js';
import type { Dispensing } from '../domain/presentation-rules.js';
import type { SupplierLanguage } from '../domain/supplier-language.js';
import { plainMoney, plainQuantity } from './texts.js';

export interface SupplierView {
  readonly id: string;
  readonly name: string;
  readonly email: string | null;
  readonly language: SupplierLanguage;
  readonly customerNumber: string | null;
  readonly active: boolean;
}

export interface LocationView {
  readonly id: string;
  readonly name: string;
  readonly kind: LocationKind;
  readonly parentId: string | null;
  readonly active: boolean;
}

export interface ConsumableView {
  readonly id: string;
  readonly name: string;
  readonly category: string;
  readonly stockUnit: StockUnit;
  readonly shade: string | null;
  readonly opacity: string | null;
  readonly viscosity: string | null;
  readonly size: string | null;
  readonly grit: string | null;
  readonly lifeAfterOpening: LifeAfterOpening | null;
  readonly reorderAt: string | null;
  readonly reorderUpTo: string | null;
  readonly densityGPerCm3: string | null;
  readonly active: boolean;
}

export interface PresentationView {
  readonly id: string;
  readonly consumableId: string;
  readonly supplierId: string | null;
  readonly name: string;
  readonly dispensing: Dispensing;
  readonly containersPerPack: number;
  readonly contentPerContainer: string;
  readonly deviceIdentifier: string | null;
  readonly articleCode: string | null;
  readonly listPrice: string | null;
  readonly active: boolean;
}

export function supplierView(row: SupplierEntity): SupplierView {
  const { practiceId: _, ...view } = row;
  return view;
}

export function locationView(row: LocationEntity): LocationView {
  const { practiceId: _, ...view } = row;
  return view;
}

export function consumableView(row: ConsumableEntity): ConsumableView {
  const { practiceId: _, lifeAfterOpening: value, lifeAfterOpeningUnit: unit, ...view } = row;
  return {
    ...view,
    lifeAfterOpening: value === null || unit === null ? null : { value, unit },
    reorderAt: plainQuantity(row.reorderAt),
    reorderUpTo: plainQuantity(row.reorderUpTo),
    densityGPerCm3: plainQuantity(row.densityGPerCm3),
  };
}

export function presentationView(row: PresentationEntity): PresentationView {
  const { practiceId: _, ...view } = row;
  return {
    ...view,
    contentPerContainer: plainQuantity(row.contentPerContainer) ?? row.contentPerContainer,
    listPrice: plainMoney(row.listPrice),
  };
}
