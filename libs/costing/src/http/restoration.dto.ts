import { CAVITY_CLASSES, REASONS } from '#lib/dentition';
import {
  COST_SHARE_KEYS,
  OutChoice,
  OutDate,
  OutDecimal,
  OutFlag,
  OutId,
  OutList,
  OutObject,
  OutText,
  OutWhole,
} from '#lib/platform';
import { StockConsumableDto, StockLotDto, StockPersonDto, StockSupplierDto } from '#lib/stock';
import { CategoryCostDto } from './cost-report.dto.js';

export class CostedTemplateDto {
  @OutId()
  id: string;

  @OutText({ example: 'Posterior filling' })
  name: string;

  @OutWhole({ example: 2 })
  version: number;
}

export class RestorationSummaryDto {
  @OutId()
  id: string;

  @OutId()
  visitId: string;

  @OutDate()
  visitedOn: string;

  @OutText({ example: 'C-1023' })
  chartReference: string;

  @OutText({ example: '36', description: 'In the notation of the practice.' })
  tooth: string;

  @OutText({ example: 'MO' })
  surfaces: string;

  @OutChoice(CAVITY_CLASSES, { nullable: true })
  cavityClass: string | null;

  @OutChoice(REASONS)
  reason: string;

  @OutObject(() => CostedTemplateDto)
  template: CostedTemplateDto;

  @OutObject(() => StockPersonDto)
  dentist: StockPersonDto;

  @OutWhole({ description: 'More than 1: it was done again.' })
  attempts: number;

  @OutDecimal({ example: '12.85', description: 'Own and shared cost.' })
  cost: string;

  @OutDecimal({ example: '9.10' })
  ownCost: string;

  @OutDecimal({ example: '3.75' })
  sharedCost: string;

  @OutDecimal({ example: '0.00' })
  retakeCost: string;

  @OutFlag({ description: 'The visit was reversed: this no longer counts.' })
  reversed: boolean;
}

export class RestorationPageDto {
  @OutList(() => RestorationSummaryDto)
  items: RestorationSummaryDto[];

  @OutText({ nullable: true })
  nextCursor: string | null;
}

export class CostSourceDto {
  @OutId()
  movementId: string;

  @OutChoice(['used', 'came back'], { description: 'Came back: an entry that undoes a use.' })
  direction: string;

  @OutDecimal()
  quantity: string;

  @OutDecimal()
  cost: string;

  @OutText({ nullable: true, example: 'assumed' })
  sureness: string | null;

  @OutId({ nullable: true })
  reversesId: string | null;

  @OutId()
  layerId: string;

  @OutObject(() => StockLotDto)
  lot: StockLotDto;

  @OutId()
  deliveryId: string;

  @OutWhole()
  deliveryLine: number;

  @OutObject(() => StockSupplierDto)
  supplier: StockSupplierDto;

  @OutText({ example: 'Syringe of 4 g' })
  presentationName: string;

  @OutDecimal({ example: '72.00' })
  packPrice: string;

  @OutDate()
  receivedOn: string;
}

export class CostedLineDto {
  @OutId()
  usageLineId: string;

  @OutObject(() => StockConsumableDto)
  consumable: StockConsumableDto;

  @OutText({ nullable: true, description: 'What the template counted; null: added by hand.' })
  driver: string | null;

  @OutWhole({ description: '2 and more: material of a retake.' })
  attempt: number;

  @OutChoice(['restoration', 'tooth', 'visit'], { description: 'Whom the line belongs to.' })
  belongsTo: string;

  @OutDecimal()
  planned: string;

  @OutDecimal({ description: 'In the tooth.' })
  placed: string;

  @OutDecimal({ description: 'Out of the container.' })
  dispensed: string;

  @OutDecimal({ description: 'What left stock: whole single doses.' })
  charged: string;

  @OutDecimal({ description: 'Of the whole line.' })
  cost: string;

  @OutDecimal({ description: 'Of which this restoration bears so much.' })
  share: string;

  @OutFlag({ description: 'Part of the cost is a shortfall at the last known price.' })
  estimated: boolean;

  @OutDecimal({ description: 'The quantity that the book had no stock for and still has not.' })
  shortfall: string;

  @OutDecimal({ description: 'The part of the cost that is an estimate.' })
  estimatedCost: string;

  @OutList(() => CostSourceDto)
  sources: CostSourceDto[];
}

export class RestorationExplainedDto extends RestorationSummaryDto {
  @OutText({ example: 'EUR' })
  currency: string;

  @OutChoice(COST_SHARE_KEYS, { description: 'How the visit shared its common lines.' })
  costShareKey: string;

  @OutFlag({ description: 'Part of the cost is an estimate.' })
  estimated: boolean;

  @OutDecimal({ description: 'What the whole visit cost.' })
  visitCost: string;

  @OutList(() => CategoryCostDto, { description: 'Adds up to the cost.' })
  categories: CategoryCostDto[];

  @OutList(() => CostedLineDto)
  ownLines: CostedLineDto[];

  @OutList(() => CostedLineDto)
  sharedLines: CostedLineDto[];

  @OutDecimal({ description: 'The exact shares of all lines, before whole cents.' })
  exactCost: string;

  @OutDecimal({ description: 'Cost less exact cost: what rounding the visit to cents added.' })
  rounding: string;
}
