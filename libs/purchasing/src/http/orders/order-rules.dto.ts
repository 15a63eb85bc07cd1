import { DecimalField, OutDecimal, TextField, WholeField } from '#lib/platform';

/** Written as a whole: what is left out is not set. */
export class OrderRulesDto {
  @DecimalField({
    optional: true,
    min: '0',
    description: 'What orders approved in a month may come to. Null: there is no budget.',
    example: '1500.00',
  })
  monthlyBudget?: string | null;

  @DecimalField({
    optional: true,
    min: '0',
    description: 'Larger orders are for the owner to approve. Null: orders of any size.',
    example: '400.00',
  })
  approveUpTo?: string | null;

  @WholeField(0, 60, { description: 'Days past the expected one until an order is late.' })
  lateAfterDays: number;

  @TextField(300, {
    optional: true,
    description: 'Where goods go; printed on orders.',
    example: 'Mill Lane 3, 12345 Millbrook',
  })
  deliverTo?: string | null;
}

export class OrderRulesAnswerDto extends OrderRulesDto {
  @OutDecimal({ nullable: true, description: "Left of this month's budget; null: no budget." })
  budgetLeft: string | null;
}
