import { IdField, OutFlag, OutId, OutInstant, OutList, OutText, TextField } from '#lib/platform';

export class NewSubstituteDto {
  @IdField({ description: 'What is missing.' })
  consumableId: string;

  @IdField({ description: 'What may stand in for it, when a person agrees.' })
  standInId: string;

  @TextField(500, { optional: true, example: 'Only where it does not show.' })
  note?: string | null;
}

export class SubstitutePairDto {
  @OutId()
  id: string;

  @OutId()
  consumableId: string;

  @OutId()
  standInId: string;

  @OutText({ nullable: true })
  note: string | null;

  @OutText({ description: 'Who said so.' })
  by: string;

  @OutInstant()
  madeAt: string;

  @OutFlag({ description: 'True: taken back; it is not offered any more.' })
  withdrawn: boolean;
}

export class SubstitutePairListDto {
  @OutList(() => SubstitutePairDto, { description: 'The latest first.' })
  pairs: SubstitutePairDto[];
}
