import { STOCK_UNITS, type StockUnit } from '#lib/measure';
import {
  ChoiceField,
  DecimalField,
  FlagField,
  IdField,
  ObjectField,
  OutChoice,
  OutDecimal,
  OutFlag,
  OutId,
  OutList,
  OutObject,
  OutText,
  OutWhole,
  TextField,
  WholeField,
} from '#lib/platform';
import { LIFE_UNITS, type LifeUnit } from '../domain/effective-expiry.js';
import { bothWays, ListQueryDto } from './list-query.dto.js';

class LifeAfterOpeningDto {
  @WholeField(1, 1200, { example: 6 })
  value: number;

  @ChoiceField(LIFE_UNITS, { example: 'month' })
  unit: LifeUnit;
}

/** What may be said of a consumable, and left out or taken back with null. */
class ConsumableAttributesDto {
  @TextField(80, { optional: true, description: 'Free text.', example: 'Body 2' })
  shade?: string | null;

  @TextField(80, { optional: true, example: 'medium' })
  opacity?: string | null;

  @TextField(80, { optional: true, example: 'flowable' })
  viscosity?: string | null;

  @TextField(80, { optional: true, example: '12 mm' })
  size?: string | null;

  @TextField(80, { optional: true, example: 'fine' })
  grit?: string | null;

  @ObjectField(() => LifeAfterOpeningDto, {
    optional: true,
    description: 'How long an opened container may be used; null: until the label says.',
  })
  lifeAfterOpening?: LifeAfterOpeningDto | null;

  @DecimalField({ optional: true, min: '0', description: 'Order when this little is left.' })
  reorderAt?: string | null;

  @DecimalField({ optional: true, min: '0', description: 'Order so that this much is there.' })
  reorderUpTo?: string | null;

  @DecimalField({ optional: true, above: '0', max: '100', example: '2.0' })
  densityGPerCm3?: string | null;
}

export class NewConsumableDto extends ConsumableAttributesDto {
  @IdField({ optional: true, description: 'Made by the sender; sent again it changes nothing.' })
  id?: string;

  @TextField(200, { example: 'Universal paste' })
  name: string;

  @TextField(80, { example: 'composite' })
  category: string;

  @ChoiceField(STOCK_UNITS, { description: 'Pieces and uses are counted whole.', example: 'g' })
  stockUnit: StockUnit;
}

export class ConsumableChangesDto extends ConsumableAttributesDto {
  @TextField(200, { optional: true })
  name?: string;

  @TextField(80, { optional: true })
  category?: string;

  @ChoiceField(STOCK_UNITS, { optional: true, description: 'Only before the first delivery.' })
  stockUnit?: StockUnit;

  @FlagField({ optional: true })
  active?: boolean;
}

export class ConsumableQueryDto extends ListQueryDto {
  @TextField(80, { optional: true, description: 'The whole category, in any case.' })
  category?: string;

  @TextField(80, { optional: true, description: 'The whole shade, in any case.' })
  shade?: string;

  @ChoiceField(bothWays('name', 'category', 'reorderAt', 'reorderUpTo'), {
    optional: true,
    description: "By name when left out; '-' turns the order round.",
  })
  sort?: string;
}

class LifeAfterOpeningOut {
  @OutWhole({ example: 6 })
  value: number;

  @OutChoice(LIFE_UNITS, { example: 'month' })
  unit: LifeUnit;
}

export class ConsumableDto {
  @OutId()
  id: string;

  @OutText({ example: 'Universal paste' })
  name: string;

  @OutText({ example: 'composite' })
  category: string;

  @OutChoice(STOCK_UNITS, { example: 'g' })
  stockUnit: StockUnit;

  @OutText({ nullable: true, example: 'Body 2' })
  shade: string | null;

  @OutText({ nullable: true })
  opacity: string | null;

  @OutText({ nullable: true })
  viscosity: string | null;

  @OutText({ nullable: true })
  size: string | null;

  @OutText({ nullable: true })
  grit: string | null;

  @OutObject(() => LifeAfterOpeningOut, { nullable: true })
  lifeAfterOpening: LifeAfterOpeningOut | null;

  @OutDecimal({ nullable: true, example: '4' })
  reorderAt: string | null;

  @OutDecimal({ nullable: true, example: '12' })
  reorderUpTo: string | null;

  @OutDecimal({ nullable: true, example: '2' })
  densityGPerCm3: string | null;

  @OutFlag()
  active: boolean;
}

export class ConsumablePageDto {
  @OutList(() => ConsumableDto)
  items: readonly ConsumableDto[];

  @OutText({ nullable: true, description: 'Send as cursor for the next page.' })
  nextCursor: string | null;
}

class CategoryDto {
  @OutText({ example: 'composite' })
  name: string;

  @OutWhole({ description: 'Active consumables in it.', example: 7 })
  consumables: number;
}

export class CategoriesDto {
  @OutList(() => CategoryDto)
  items: readonly CategoryDto[];
}
