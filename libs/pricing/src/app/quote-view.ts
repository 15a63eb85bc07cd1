import { formatSurfaces, formatTooth } from '#lib/dentition';
import { formatMoney, formatQuantity, type Money } from '#lib/measure';
import type { Actor } from '#lib/platform';
import type { QuotedLine, QuotedWay } from '../domain/compare-ways.js';
import { FEWEST_RECORDED, type Range } from '../domain/resample.js';
import type { QuotedRestorationDto, QuoteQuestionDto } from '../http/quote.dto.js';
import type {
  QuoteDto,
  QuotedConsumableDto,
  QuotedLineDto,
  QuotedPlanDto,
  QuotedWayDto,
  RangeDto,
} from '../http/quote-answer.dto.js';
import type { QuotedRestorationAnswerDto } from '../http/quoted-restoration.dto.js';
import { consumableOf, type WorkedOutQuote } from './work-out-quote.js';

export function quoteView(quote: WorkedOutQuote, actor: Actor, body: QuoteQuestionDto): QuoteDto {
  const { location } = quote.facts;
  return {
    quotedOn: quote.day,
    currency: actor.currency,
    chartReference: body.chartReference?.trim() ?? null,
    location: location && { id: location.id, name: location.name },
    toothNotation: quote.notation,
    plan: planView(quote),
    chairMinuteCost: orNull(quote.chairMinuteCost),
    targetContributionPerHour: body.targetContributionPerHour ?? null,
    restorations: body.restorations.map((input, i) => restorationView(quote, input, i)),
    unpriced: unpriced(quote),
    ways: quote.ways.map((way) => wayView(way, quote)),
  };
}

function planView({ plan }: WorkedOutQuote): QuotedPlanDto | null {
  if (!plan) return null;
  const { row, balance } = plan;
  return {
    id: row.id,
    name: row.name,
    inNetwork: row.inNetwork,
    feeCeiling: row.feeCeiling,
    ceilingSource: row.ceilingSource,
    ceilingCheckedOn: row.ceilingCheckedOn,
    downgradeBilled: row.downgradeBilled,
    deductibleLeft: formatMoney(balance.deductibleLeft),
    maximumLeft: orNull(balance.maximumLeft),
    leftAsOf: plan.asOf,
  };
}

function restorationView(
  quote: WorkedOutQuote,
  input: QuotedRestorationDto,
  position: number,
): QuotedRestorationAnswerDto {
  const restoration = quote.restorations[position];
  const quoted = quote.charges[position];
  if (!restoration || !quoted) throw new Error('A restoration of a quote has no charge');
  const { template } = restoration;
  const { fee, allowed, alternate, coverage } = quoted.charge;
  return {
    tooth: formatTooth(restoration.tooth, quote.notation),
    surfaces: formatSurfaces(restoration.surfaces),
    reason: restoration.reason,
    template: { id: template.templateId, name: template.name },
    attempts: restoration.attempts,
    withoutAnaesthetic: input.withoutAnaesthetic ?? false,
    volumeMm3: formatQuantity(restoration.volumeMm3),
    volumeSource: restoration.volumeSource,
    feeCode: quoted.feeCode,
    fee: formatMoney(fee),
    allowedFee: orNull(allowed),
    alternateFee: orNull(alternate),
    coverage: coverage === null ? null : formatQuantity(coverage),
    recorded: recordedOf(quote, position),
  };
}

function recordedOf(quote: WorkedOutQuote, position: number): number {
  return quote.recordedOwn[position]?.length ?? 0;
}

function unpriced({ facts }: WorkedOutQuote): QuotedConsumableDto[] {
  return [...facts.consumables.values()]
    .filter((consumable) => consumable.unitCost === null)
    .map(({ id, name, shade, stock_unit: unit }) => ({ id, name, shade, unit }));
}

function wayView(way: QuotedWay, quote: WorkedOutQuote): QuotedWayDto {
  const recorded = Math.min(...way.lines.map((line) => recordedOf(quote, line.position)));
  return {
    way: way.kind,
    visits: way.visits.map(({ positions, minutes, material }) => {
      return { restorations: positions, minutes, material: formatMoney(material) };
    }),
    lines: way.lines.map(lineView),
    fee: formatMoney(way.fee),
    planPays: formatMoney(way.planPays),
    patientPays: formatMoney(way.patientPays),
    writeOff: formatMoney(way.writeOff),
    material: formatMoney(way.material),
    minutes: way.minutes,
    chairCost: orNull(way.chairCost),
    assistantMinutes: way.assistantMinutes,
    assistantCost: orNull(way.assistantCost),
    contribution: formatMoney(way.contribution),
    contributionPerHour: orNull(way.contributionPerHour),
    afterChairTime: orNull(way.afterChairTime),
    neededIncome: orNull(way.neededIncome),
    recorded,
    rangeMissing: way.materialRange ? null : tooFew(recorded),
    materialRange: rangeView(way.materialRange),
    contributionRange: rangeView(way.contributionRange),
    repeated: way.repeated.map(({ consumableId, quantity, cost }) => {
      const { id, name, shade, stock_unit: unit } = consumableOf(quote.facts, consumableId);
      const consumable = { id, name, shade, unit };
      return { consumable, quantity: formatQuantity(quantity), cost: formatMoney(cost) };
    }),
    repeatedMinutes: way.repeatedMinutes,
  };
}

function tooFew(recorded: number): string {
  return `Only ${recorded} restorations like one of these are recorded, fewer than ${FEWEST_RECORDED}.`;
}

function lineView(line: QuotedLine): QuotedLineDto {
  const { planPays, patientPays, writeOff, deductibleUsed, covered, exhausted } = line.share;
  return {
    restoration: line.position,
    visit: line.visit,
    fee: formatMoney(line.fee),
    planPays: formatMoney(planPays),
    patientPays: formatMoney(patientPays),
    writeOff: formatMoney(writeOff),
    deductibleUsed: formatMoney(deductibleUsed),
    covered,
    exhausted,
    material: formatMoney(line.material),
    materialAlone: formatMoney(line.materialAlone),
    minutes: line.minutes,
    incomeLimit: orNull(line.incomeLimit),
    lowestFee: orNull(line.lowestFee),
  };
}

function rangeView(range: Range | null): RangeDto | null {
  if (!range) return null;
  const { p10, p50, p90 } = range;
  return { p10: formatMoney(p10), p50: formatMoney(p50), p90: formatMoney(p90) };
}

function orNull(amount: Money | null | undefined): string | null {
  return amount === null || amount === undefined ? null : formatMoney(amount);
}
