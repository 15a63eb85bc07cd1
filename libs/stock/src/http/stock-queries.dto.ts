import { ChoiceField, DateField, IdField, PageQuery, TextField } from '#lib/platform';

export const STOCK_STATUSES = [
  'usable',
  'expired',
  'quarantined',
  'recalled',
  'not yet received',
  'opened later',
] as const;

export const ACCOUNTS = ['supplier', 'location', 'visit', 'waste', 'count', 'return'] as const;

export class StockQueryDto extends PageQuery {
  @IdField({ optional: true, description: 'This one holding.' })
  holdingId?: string;

  @IdField({ optional: true })
  consumableId?: string;

  @TextField(80, { optional: true, example: 'paste' })
  category?: string;

  @TextField(80, { optional: true, example: 'Body 2' })
  shade?: string;

  @IdField({ optional: true, description: 'This location itself, not those inside it.' })
  locationId?: string;

  @IdField({ optional: true })
  lotId?: string;

  @ChoiceField(['true', 'false'], { optional: true, description: 'Opened containers, or sealed.' })
  opened?: 'true' | 'false';

  @ChoiceField(STOCK_STATUSES, { optional: true })
  status?: (typeof STOCK_STATUSES)[number];

  @TextField(120, { optional: true, description: 'Part of a name, shade, size, grit or lot.' })
  q?: string;

  @ChoiceField(['consumable', 'expiry', 'value'], {
    optional: true,
    description: 'By name when left out; by expiry: soonest first; by value: dearest first.',
  })
  sort?: 'consumable' | 'expiry' | 'value';
}

export class StockSummaryQueryDto extends PageQuery {
  @IdField({ optional: true, description: 'This one consumable.' })
  consumableId?: string;

  @TextField(80, { optional: true })
  category?: string;

  @TextField(80, { optional: true })
  shade?: string;

  @TextField(120, { optional: true, description: 'Part of a name, shade, size or grit.' })
  q?: string;

  @IdField({ optional: true, description: 'Only what is at this location.' })
  locationId?: string;

  @ChoiceField(['consumable', 'expiry', 'value'], {
    optional: true,
    description: 'By name when left out; by expiry: soonest first; by value: dearest first.',
  })
  sort?: 'consumable' | 'expiry' | 'value';
}

export class MovementQueryDto extends PageQuery {
  @IdField({ optional: true })
  layerId?: string;

  @IdField({ optional: true })
  visitId?: string;

  @IdField({ optional: true })
  consumableId?: string;

  @IdField({ optional: true })
  lotId?: string;

  @ChoiceField(ACCOUNTS, { optional: true, description: 'On either side of the movement.' })
  account?: (typeof ACCOUNTS)[number];

  @DateField({ optional: true, description: 'First day on which it happened.' })
  from?: string;

  @DateField({ optional: true, description: 'Last day on which it happened.' })
  to?: string;
}

export class DeliveryQueryDto extends PageQuery {
  @IdField({ optional: true })
  supplierId?: string;

  @DateField({ optional: true, description: 'First day of receipt.' })
  from?: string;

  @DateField({ optional: true, description: 'Last day of receipt.' })
  to?: string;

  @TextField(80, { optional: true, description: 'Part of the reference.' })
  q?: string;
}

export class ShortfallQueryDto extends PageQuery {
  @ChoiceField(['true', 'false'], { optional: true, description: 'Still open, or settled.' })
  open?: 'true' | 'false';

  @IdField({ optional: true })
  consumableId?: string;

  @IdField({ optional: true })
  visitId?: string;
}
