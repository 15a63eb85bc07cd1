import { ApiProperty } from '@nestjs/swagger';
import { IsString, MaxLength, MinLength } from 'class-validator';
import { LABEL_FORMS, LABEL_NOTES, LABEL_PROBLEMS, LONGEST_LABEL, OWN_SUBJECTS } from '#lib/labels';
import { STOCK_UNITS } from '#lib/measure';
import {
  OutChoice,
  OutDate,
  OutFlag,
  OutId,
  OutList,
  OutObject,
  OutText,
  OutWhole,
} from '#lib/platform';

export class ReadLabelDto {
  /** Unlike other text it may hold control characters: a separator is one. */
  @ApiProperty({
    type: String,
    minLength: 1,
    maxLength: LONGEST_LABEL,
    description:
      'As the scanner sends it, with or without symbology identifier. Several symbols of one label ' +
      'stand in lines of their own.',
    example: '(01)09521234543213(17)261231(10)A1',
  })
  @IsString({ message: 'must be text' })
  @MinLength(1, { message: 'must not be empty' })
  @MaxLength(LONGEST_LABEL, { message: `must be at most ${LONGEST_LABEL} characters` })
  text: string;
}

export class LabelElementDto {
  @OutText({ description: 'Application identifier, or a word for a part of a HIBC label.' })
  identifier: string;

  @OutText({ example: 'ADDITIONAL ID' })
  title: string;

  @OutText()
  value: string;
}

export class LabelDto {
  @OutChoice(['GS1', 'HIBC'])
  standard: string;

  @OutChoice(LABEL_FORMS)
  form: string;

  @OutText({ nullable: true, description: 'The kind of symbol, if the scanner said so.' })
  carrier: string | null;

  @OutText({ nullable: true, example: '09521234543213' })
  deviceIdentifier: string | null;

  @OutText({ nullable: true, example: '09521234543213' })
  gtin14: string | null;

  @OutText({ nullable: true, description: 'The company code of a HIBC label.' })
  labeler: string | null;

  @OutText({ nullable: true, example: 'A1' })
  lot: string | null;

  @OutDate({ nullable: true, description: 'The last day of the month if no day is stated.' })
  expiry: string | null;

  @OutText({ nullable: true, example: '16:00' })
  expiryTime: string | null;

  @OutDate({ nullable: true })
  productionDate: string | null;

  @OutText({ nullable: true })
  serial: string | null;

  @OutWhole({ nullable: true })
  quantity: number | null;

  @OutList(() => LabelElementDto, { description: 'Whatever else the label says.' })
  others: readonly LabelElementDto[];

  @OutText({
    description: 'The same for every way to write this label.',
    example: '(01)09521234543213(17)261231(10)A1',
  })
  canonical: string;

  @ApiProperty({ type: 'array', items: { type: 'string', enum: [...LABEL_NOTES] } })
  notes: readonly string[];
}

export class LabelProblemDto {
  @OutChoice(LABEL_PROBLEMS)
  code: string;

  @OutWhole({ description: 'The character it is about, counted from 0.' })
  position: number;

  @OutText({ nullable: true })
  identifier: string | null;

  @OutText({ example: 'There is no month 13.' })
  message: string;

  @OutText({ nullable: true, description: 'The check digit or character that would be right.' })
  expected: string | null;
}

export class LabelMatchDto {
  @OutId()
  presentationId: string;

  @OutText()
  presentationName: string;

  @OutFlag()
  active: boolean;

  @OutId()
  consumableId: string;

  @OutText()
  consumableName: string;

  @OutChoice(STOCK_UNITS)
  stockUnit: string;

  @OutId({ nullable: true, description: 'The lot of the label, if it was ever received.' })
  lotId: string | null;

  @OutChoice(['released', 'quarantined', 'recalled'], { nullable: true })
  lotStatus: string | null;

  @OutDate({ nullable: true, description: 'What the book holds, to be compared with the label.' })
  lotExpiresOn: string | null;
}

export class OwnLabelDto {
  @OutChoice(OWN_SUBJECTS)
  kind: string;

  @OutId({ nullable: true })
  locationId: string | null;

  @OutText({ nullable: true })
  locationName: string | null;

  @OutId({ nullable: true, description: 'The opened container.' })
  holdingId: string | null;

  @OutId({ nullable: true })
  presentationId: string | null;

  @OutText({ nullable: true })
  presentationName: string | null;

  @OutWhole({ nullable: true })
  containersPerPack: number | null;

  @OutText({ nullable: true })
  deviceIdentifier: string | null;

  @OutId({ nullable: true })
  consumableId: string | null;

  @OutText({ nullable: true })
  consumableName: string | null;

  @OutText({ nullable: true, description: 'Shade, size and grit.' })
  variant: string | null;

  @OutChoice(STOCK_UNITS, { nullable: true })
  stockUnit: string | null;

  @OutId({ nullable: true })
  lotId: string | null;

  @OutText({ nullable: true })
  lotNumber: string | null;

  @OutChoice(['released', 'quarantined', 'recalled'], { nullable: true })
  lotStatus: string | null;

  @OutDate({ nullable: true })
  expiresOn: string | null;

  @OutDate({ nullable: true })
  openedOn: string | null;

  @OutDate({ nullable: true, description: 'The last day of an opened container.' })
  useBy: string | null;
}

export class LabelReadingDto {
  @OutObject(() => LabelDto, { nullable: true })
  label: LabelDto | null;

  @OutObject(() => LabelProblemDto, { nullable: true, description: 'Why there is no label.' })
  problem: LabelProblemDto | null;

  @OutList(() => LabelMatchDto, { description: 'Presentations with this device identifier.' })
  matches: readonly LabelMatchDto[];

  @OutObject(() => OwnLabelDto, {
    nullable: true,
    description: 'Of a label that was printed here.',
  })
  own: OwnLabelDto | null;
}
