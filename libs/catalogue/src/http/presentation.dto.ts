import {
  ChoiceField,
  DecimalField,
  FlagField,
  IdField,
  OutChoice,
  OutDecimal,
  OutFlag,
  OutId,
  OutList,
  OutText,
  OutWhole,
  TextField,
  WholeField,
} from '#lib/platform';
import { DISPENSINGS, type Dispensing } from '../domain/presentation-rules.js';
import { ListQueryDto } from './list-query.dto.js';

const HOW =
  'multi-use: opened once, used often. single-dose: charged whole. by-piece: piece by piece.';

export class NewPresentationDto {
  @IdField({ optional: true, description: 'Made by the sender; sent again it changes nothing.' })
  id?: string;

  @IdField({ description: 'What is in it.' })
  consumableId: string;

  @IdField({ optional: true, description: 'Who usually delivers it.' })
  supplierId?: string | null;

  @TextField(200, { example: 'Box of 20 capsules' })
  name: string;

  @ChoiceField(DISPENSINGS, { description: HOW, example: 'single-dose' })
  dispensing: Dispensing;

  @WholeField(1, 100_000, { example: 20 })
  containersPerPack: number;

  @DecimalField({ above: '0', max: '1000000', description: 'In stock units.', example: '0.25' })
  contentPerContainer: string;

  @TextField(100, { optional: true, description: 'As it is read from the label of the pack.' })
  deviceIdentifier?: string | null;

  @TextField(60, { optional: true, description: 'What the supplier calls it on orders.' })
  articleCode?: string | null;

  @DecimalField({ optional: true, min: '0', description: 'Of one pack.', example: '110.00' })
  listPrice?: string | null;
}

export class PresentationChangesDto {
  @IdField({ optional: true })
  supplierId?: string | null;

  @TextField(200, { optional: true })
  name?: string;

  @ChoiceField(DISPENSINGS, { optional: true, description: 'Only before the first delivery.' })
  dispensing?: Dispensing;

  @WholeField(1, 100_000, { optional: true })
  containersPerPack?: number;

  @DecimalField({
    optional: true,
    above: '0',
    max: '1000000',
    description: 'Only before the first delivery.',
  })
  contentPerContainer?: string;

  @TextField(100, { optional: true })
  deviceIdentifier?: string | null;

  @TextField(60, { optional: true })
  articleCode?: string | null;

  @DecimalField({ optional: true, min: '0' })
  listPrice?: string | null;

  @FlagField({ optional: true })
  active?: boolean;
}

export class PresentationQueryDto extends ListQueryDto {
  @IdField({ optional: true })
  consumableId?: string;

  @IdField({ optional: true })
  supplierId?: string;

  @TextField(100, { optional: true, description: 'The whole identifier, as read from a label.' })
  deviceIdentifier?: string;
}

export class PresentationDto {
  @OutId()
  id: string;

  @OutId()
  consumableId: string;

  @OutId({ nullable: true })
  supplierId: string | null;

  @OutText({ example: 'Box of 20 capsules' })
  name: string;

  @OutChoice(DISPENSINGS, { description: HOW, example: 'single-dose' })
  dispensing: Dispensing;

  @OutWhole({ example: 20 })
  containersPerPack: number;

  @OutDecimal({ example: '0.25' })
  contentPerContainer: string;

  @OutText({ nullable: true })
  deviceIdentifier: string | null;

  @OutText({ nullable: true, description: 'What the supplier calls it on orders.' })
  articleCode: string | null;

  @OutDecimal({ nullable: true, example: '110.00' })
  listPrice: string | null;

  @OutFlag()
  active: boolean;
}

export class PresentationPageDto {
  @OutList(() => PresentationDto)
  items: readonly PresentationDto[];

  @OutText({ nullable: true, description: 'Send as cursor for the next page.' })
  nextCursor: string | null;
}
