import { Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { ChangeConsumable } from './app/change-consumable.js';
import { ChangeLocation } from './app/change-location.js';
import { ChangePresentation } from './app/change-presentation.js';
import { ChangeSupplier } from './app/change-supplier.js';
import { CreateConsumable } from './app/create-consumable.js';
import { CreateLocation } from './app/create-location.js';
import { CreatePresentation } from './app/create-presentation.js';
import { CreateSupplier } from './app/create-supplier.js';
import { GetConsumable } from './app/get-consumable.js';
import { GetLocation } from './app/get-location.js';
import { GetPresentation } from './app/get-presentation.js';
import { GetSupplier } from './app/get-supplier.js';
import { ListCategories } from './app/list-categories.js';
import { ListConsumables } from './app/list-consumables.js';
import { ListLocations } from './app/list-locations.js';
import { ListPresentations } from './app/list-presentations.js';
import { ListSuppliers } from './app/list-suppliers.js';
import { PresentationParts } from './app/presentation-parts.js';
import { PrintLabels } from './app/print-labels.js';
import { ReadLabel } from './app/read-label.js';
import { ConsumableEntity } from './db/consumable.entity.js';
import { LocationEntity } from './db/location.entity.js';
import { PresentationEntity } from './db/presentation.entity.js';
import { SupplierEntity } from './db/supplier.entity.js';
import { CategoriesController } from './http/categories.controller.js';
import { ConsumablesController } from './http/consumables.controller.js';
import { LabelsController } from './http/labels.controller.js';
import { LocationsController } from './http/locations.controller.js';
import { PresentationPartsController } from './http/presentation-parts.controller.js';
import { PresentationsController } from './http/presentations.controller.js';
import { SuppliersController } from './http/suppliers.controller.js';

const CREATORS = [CreateConsumable, CreateLocation, CreatePresentation, CreateSupplier];

@Module({
  imports: [
    TypeOrmModule.forFeature([
      ConsumableEntity,
      LocationEntity,
      PresentationEntity,
      SupplierEntity,
    ]),
  ],
  controllers: [
    CategoriesController,
    ConsumablesController,
    LabelsController,
    LocationsController,
    PresentationPartsController,
    PresentationsController,
    SuppliersController,
  ],
  providers: [
    ...CREATORS,
    ChangeConsumable,
    ChangeLocation,
    ChangePresentation,
    ChangeSupplier,
    GetConsumable,
    GetLocation,
    GetPresentation,
    GetSupplier,
    ListCategories,
    ListConsumables,
    ListLocations,
    ListPresentations,
    ListSuppliers,
    PresentationParts,
    PrintLabels,
    ReadLabel,
  ],
  exports: CREATORS,
})
export class CatalogueModule {}
