import {
  DecimalField,
  ListField,
  OutDecimal,
  OutList,
  OutText,
  OutWhole,
  TextField,
  WholeField,
} from '#lib/platform';

export class KindOfWorkDto {
  @TextField(200, { example: 'Front tooth composite, cosmetic' })
  name: string;

  @DecimalField({ min: '0', description: 'What one brings in.', example: '320' })
  price: string;

  @DecimalField({ min: '0', description: 'What one more costs: its material.', example: '4.33' })
  variable: string;

  @WholeField(0, 1_000_000, {
    description: 'How many a month: the mix, the plan, and the most that are asked for.',
    example: 20,
  })
  number: number;

  @DecimalField({
    optional: true,
    above: '0',
    max: '100000',
    description: 'Chair time of one; must be stated where chairHours is.',
    example: '50',
  })
  minutes?: string | null;
}

export class MonthQuestionDto {
  @DecimalField({
    min: '0',
    description: 'Cost of a month that stays whatever is done.',
    example: '18000',
  })
  fixedCost: string;

  @DecimalField({ optional: true, min: '0', description: '0 when left out.', example: '2000' })
  targetProfit?: string | null;

  @DecimalField({
    optional: true,
    min: '0',
    max: '1000000',
    description: 'Chair hours of the month, to see what fits when they are short.',
    example: '120',
  })
  chairHours?: string | null;

  @ListField(() => KindOfWorkDto, { min: 1, max: 32 })
  kinds: KindOfWorkDto[];
}

export class MonthOfKindDto {
  @OutText()
  name: string;

  @OutDecimal({ description: 'Price less variable cost of one.' })
  contribution: string;

  @OutDecimal({ nullable: true, description: 'The same as a share of the price; null: price 0.' })
  contributionShare: string | null;

  @OutDecimal({ description: 'Of all that are planned.' })
  contributionOfAll: string;

  @OutDecimal({ nullable: true, description: 'Null: its chair time was not stated.' })
  contributionPerHour: string | null;

  @OutDecimal({
    nullable: true,
    description: 'How many pay for fixed cost and wished profit, in the proportions of the plan.',
  })
  needed: string | null;

  @OutWhole({ nullable: true, description: 'needed, rounded up; null: it cannot be earned.' })
  neededWhole: number | null;

  @OutWhole({ nullable: true, description: 'Which goes first for a scarce hour, from 1.' })
  rank: number | null;

  @OutDecimal({ nullable: true, description: 'How many fit into the hours in that order.' })
  fits: string | null;
}

export class MonthOfWorkDto {
  @OutList(() => MonthOfKindDto)
  kinds: readonly MonthOfKindDto[];

  @OutDecimal()
  revenue: string;

  @OutDecimal()
  contribution: string;

  @OutDecimal({ description: 'Contribution less fixed cost.' })
  income: string;

  @OutDecimal({
    nullable: true,
    description: 'Contribution divided by income: so many percent more of it for 1 % more work.',
  })
  leverage: string | null;

  @OutDecimal({
    nullable: true,
    description: 'Revenue that pays for fixed cost and wished profit; null: none does.',
  })
  breakEvenRevenue: string | null;

  @OutDecimal({ nullable: true, description: 'Revenue less breakEvenRevenue.' })
  safety: string | null;

  @OutDecimal({ nullable: true, description: 'safety as a share of revenue.' })
  safetyShare: string | null;

  @OutDecimal({ nullable: true, description: 'Chair hours that the plan takes.' })
  chairHours: string | null;
}
