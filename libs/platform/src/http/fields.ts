import { applyDecorators } from '@nestjs/common';
import { ApiProperty, type ApiPropertyOptions } from '@nestjs/swagger';
import { Type } from 'class-transformer';
import {
  ArrayMaxSize,
  ArrayMinSize,
  IsArray,
  IsBoolean,
  IsIn,
  IsInt,
  IsOptional,
  IsString,
  Max,
  Min,
  registerDecorator,
  ValidateNested,
  type ValidationArguments,
} from 'class-validator';
import { parseDecimal } from '#lib/measure';
import { isIsoDate } from '../time/clock.js';
import { isId } from '../work/ids.js';

/**
 * Each decorator below both checks a field of a request and describes it in the OpenAPI document. An
 * optional field may be left out or be null, which means the same.
 */
interface Common {
  readonly optional?: boolean;
  readonly description?: string;
  readonly example?: unknown;
}

function documented(common: Common, schema: ApiPropertyOptions): PropertyDecorator[] {
  const property = ApiProperty({
    ...schema,
    required: !common.optional,
    ...(common.optional ? { nullable: true } : {}),
    ...(common.description ? { description: common.description } : {}),
    ...(common.example === undefined ? {} : { example: common.example }),
  } as ApiPropertyOptions);
  return common.optional ? [property, IsOptional()] : [property];
}

function check(
  name: string,
  validate: (value: unknown) => boolean,
  message: (args: ValidationArguments) => string,
): PropertyDecorator {
  return (target, property) => {
    registerDecorator({
      name,
      target: target.constructor,
      propertyName: String(property),
      validator: { validate, defaultMessage: (args) => (args ? message(args) : name) },
    });
  };
}

export function IdField(common: Common = {}): PropertyDecorator {
  return applyDecorators(
    ...documented(common, { type: String, format: 'uuid' }),
    check('id', isId, () => 'must be a UUID in lower case'),
  );
}

export function DateField(common: Common = {}): PropertyDecorator {
  return applyDecorators(
    ...documented({ example: '2026-05-04', ...common }, { type: String, format: 'date' }),
    check(
      'date',
      (value) => typeof value === 'string' && isIsoDate(value),
      () => 'must be a day that exists, written YYYY-MM-DD',
    ),
  );
}

/** Text of 1 to `max` characters that is not only blanks and holds no control characters. */
export function TextField(
  max: number,
  common: Common & { empty?: boolean } = {},
): PropertyDecorator {
  const least = common.empty ? 0 : 1;
  return applyDecorators(
    ...documented(common, { type: String, minLength: least, maxLength: max }),
    IsString({ message: 'must be text' }),
    check(
      'text',
      (v) => typeof v === 'string' && v.length <= max && v.trim().length >= least && !hasControl(v),
      () => `must be ${least} to ${max} characters of text without control characters`,
    ),
  );
}

function hasControl(text: string): boolean {
  for (const character of text) {
    const code = character.codePointAt(0) ?? 0;
    if (code < 0x20 || code === 0x7f || (code >= 0xd800 && code <= 0xdfff)) return true;
  }
  return false;
}

interface DecimalLimits extends Common {
  /** Digits allowed after the point; 6 is what the book stores. */
  readonly scale?: number;
  readonly min?: string;
  /** The smallest value itself is not allowed (e.g. more than 0). */
  readonly above?: string;
  readonly max?: string;
}

/** A decimal that travels as a string, e.g. "0.06". A JSON number is refused: it may have lost digits. */
export function DecimalField(limits: DecimalLimits = {}): PropertyDecorator {
  const scale = limits.scale ?? 6;
  const bound = (text: string | undefined) => {
    if (text === undefined) return undefined;
    const parsed = parseDecimal(text, scale);
    if (!parsed.ok) throw new Error(`${text} is not a limit at scale ${scale}`);
    return parsed.value;
  };
  const [min, above, max] = [
    bound(limits.min),
    bound(limits.above),
    bound(limits.max ?? '1000000000'),
  ];
  const words = [
    `must be a decimal in quotes with at most ${scale} digits after the point`,
    ...(limits.min === undefined ? [] : [`not below ${limits.min}`]),
    ...(limits.above === undefined ? [] : [`more than ${limits.above}`]),
    `at most ${limits.max ?? '1000000000'}`,
  ].join(', ');
  const valid = (value: unknown) => {
    if (typeof value !== 'string') return false;
    const parsed = parseDecimal(value, scale);
    if (!parsed.ok) return false;
    if (min !== undefined && parsed.value < min) return false;
    if (above !== undefined && parsed.value <= above) return false;
    return max === undefined || parsed.value <= max;
  };
  return applyDecorators(
    ...documented(limits, { type: String, format: 'decimal', pattern: '^-?\\d+(\\.\\d+)?$' }),
    check('decimal', valid, () => words),
  );
}

export function WholeField(min: number, max: number, common: Common = {}): PropertyDecorator {
  return applyDecorators(
    ...documented(common, { type: 'integer', minimum: min, maximum: max }),
    IsInt({ message: 'must be a whole number' }),
    Min(min, { message: `must be at least ${min}` }),
    Max(max, { message: `must be at most ${max}` }),
  );
}

/** A whole number in a query string, where everything is text. */
export function WholeQuery(min: number, max: number, common: Common = {}): PropertyDecorator {
  return applyDecorators(
    ...documented({ optional: true, ...common }, { type: 'integer', minimum: min, maximum: max }),
    check(
      'whole',
      (v) => typeof v === 'string' && /^\d{1,9}$/.test(v) && Number(v) >= min && Number(v) <= max,
      () => `must be a whole number from ${min} to ${max}`,
    ),
  );
}

export function FlagField(common: Common = {}): PropertyDecorator {
  return applyDecorators(
    ...documented(common, { type: Boolean }),
    IsBoolean({ message: 'must be true or false' }),
  );
}

export function ChoiceField(choices: readonly string[], common: Common = {}): PropertyDecorator {
  return applyDecorators(
    ...documented(common, { type: String, enum: [...choices] }),
    IsIn(choices, { message: `must be one of: ${choices.join(', ')}` }),
  );
}

interface ListLimits extends Common {
  readonly min?: number;
  readonly max?: number;
}

function isPlainObject(value: unknown): boolean {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** A list of objects, each checked by its own class. */
export function ListField(
  item: () => new () => object,
  limits: ListLimits = {},
): PropertyDecorator {
  const { min = 0, max = 200 } = limits;
  return applyDecorators(
    ...documented(limits, { type: () => item(), isArray: true, minItems: min, maxItems: max }),
    IsArray({ message: 'must be a list' }),
    check(
      'objects',
      (v) => !Array.isArray(v) || v.every(isPlainObject),
      () => 'must be a list of objects',
    ),
    ArrayMinSize(min, { message: `must have at least ${min} entries` }),
    ArrayMaxSize(max, { message: `must have at most ${max} entries` }),
    ValidateNested({ each: true, message: 'must be an object' }),
    Type(item),
  );
}

/** A list of ids without repetition. */
export function IdListField(limits: ListLimits = {}): PropertyDecorator {
  const { min = 0, max = 200 } = limits;
  const valid = (v: unknown) =>
    Array.isArray(v) &&
    v.length >= min &&
    v.length <= max &&
    v.every(isId) &&
    new Set(v).size === v.length;
  return applyDecorators(
    ...documented(limits, {
      type: 'array',
      items: { type: 'string', format: 'uuid' },
      minItems: min,
      maxItems: max,
    }),
    check('ids', valid, () => `must be a list of ${min} to ${max} different UUIDs`),
  );
}

/** A list of words from a closed set, without repetition. */
export function ChoiceListField(
  choices: readonly string[],
  limits: ListLimits = {},
): PropertyDecorator {
  const { min = 0, max = choices.length } = limits;
  const valid = (v: unknown) =>
    Array.isArray(v) &&
    v.length >= min &&
    v.length <= max &&
    v.every((x) => typeof x === 'string' && choices.includes(x)) &&
    new Set(v).size === v.length;
  return applyDecorators(
    ...documented(limits, { type: 'array', items: { type: 'string', enum: [...choices] } }),
    check('choices', valid, () => `must be a list of different words from: ${choices.join(', ')}`),
  );
}

/** One nested object. */
export function ObjectField(item: () => new () => object, common: Common = {}): PropertyDecorator {
  return applyDecorators(
    ...documented(common, { type: () => item() }),
    check('object', isPlainObject, () => 'must be an object'),
    ValidateNested({ message: 'must be an object' }),
    Type(item),
  );
}
