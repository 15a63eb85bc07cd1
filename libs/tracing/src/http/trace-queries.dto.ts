import { IdField, PageQuery, TextField } from '#lib/platform';

export class LotQueryDto extends PageQuery {
  @TextField(60, {
    optional: true,
    description: 'The whole number, in any case.',
    example: 'LX-4471',
  })
  number?: string;

  @TextField(60, { optional: true, description: 'The beginning of the number, in any case.' })
  q?: string;

  @IdField({ optional: true, description: 'Numbers repeat between products.' })
  consumableId?: string;
}

export class TraceQueryDto extends PageQuery {}
