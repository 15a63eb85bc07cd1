import {
  ChoiceField,
  FlagField,
  IdField,
  OutChoice,
  OutFlag,
  OutId,
  OutList,
  OutText,
  TextField,
} from '#lib/platform';
import { SUPPLIER_LANGUAGES, type SupplierLanguage } from '../domain/supplier-language.js';
import { bothWays, ListQueryDto } from './list-query.dto.js';

export class SupplierQueryDto extends ListQueryDto {
  @ChoiceField(bothWays('name', 'email'), {
    optional: true,
    description: "By name when left out; '-' turns the order round.",
  })
  sort?: string;
}

export class NewSupplierDto {
  @IdField({ optional: true, description: 'Made by the sender; sent again it changes nothing.' })
  id?: string;

  @TextField(200, { example: 'Harbour Supplies' })
  name: string;

  @TextField(254, {
    optional: true,
    description: 'Where orders go.',
    example: 'orders@harbour.example',
  })
  email?: string | null;

  @ChoiceField(SUPPLIER_LANGUAGES, { optional: true, description: 'Of orders; en when left out.' })
  language?: SupplierLanguage;

  @TextField(60, { optional: true, description: 'The number of the practice at the supplier.' })
  customerNumber?: string | null;
}

export class SupplierChangesDto {
  @TextField(200, { optional: true })
  name?: string;

  @TextField(254, { optional: true })
  email?: string | null;

  @ChoiceField(SUPPLIER_LANGUAGES, { optional: true, description: 'Of orders.' })
  language?: SupplierLanguage;

  @TextField(60, { optional: true, description: 'The number of the practice at the supplier.' })
  customerNumber?: string | null;

  @FlagField({ optional: true })
  active?: boolean;
}

export class SupplierDto {
  @OutId()
  id: string;

  @OutText({ example: 'Harbour Supplies' })
  name: string;

  @OutText({ nullable: true, example: 'orders@harbour.example' })
  email: string | null;

  @OutChoice(SUPPLIER_LANGUAGES, { description: 'In which orders are written.' })
  language: string;

  @OutText({ nullable: true, description: 'The number of the practice at the supplier.' })
  customerNumber: string | null;

  @OutFlag()
  active: boolean;
}

export class SupplierPageDto {
  @OutList(() => SupplierDto)
  items: readonly SupplierDto[];

  @OutText({ nullable: true, description: 'Send as cursor for the next page.' })
  nextCursor: string | null;
}
