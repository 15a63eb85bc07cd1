import { ApiProperty, type ApiPropertyOptions } from '@nestjs/swagger';

interface Output {
  readonly nullable?: boolean;
  readonly description?: string;
  readonly example?: unknown;
}

function output(schema: ApiPropertyOptions, more: Output): PropertyDecorator {
  const { nullable, description, example } = more;
  return ApiProperty({
    ...schema,
    ...(nullable ? { nullable: true } : {}),
    ...(description ? { description } : {}),
    ...(example === undefined ? {} : { example }),
  } as ApiPropertyOptions);
}

/** Describe the fields of an answer; they check nothing. Each is always present, null if nullable. */
export const OutId = (more: Output = {}) => output({ type: String, format: 'uuid' }, more);
export const OutText = (more: Output = {}) => output({ type: String }, more);
export const OutDate = (more: Output = {}) => output({ type: String, format: 'date' }, more);
export const OutInstant = (more: Output = {}) =>
  output({ type: String, format: 'date-time' }, more);
export const OutDecimal = (more: Output = {}) => output({ type: String, format: 'decimal' }, more);
export const OutWhole = (more: Output = {}) => output({ type: 'integer' }, more);
export const OutFlag = (more: Output = {}) => output({ type: Boolean }, more);
export const OutChoice = (choices: readonly string[], more: Output = {}) =>
  output({ type: String, enum: [...choices] }, more);
export const OutList = (item: () => new () => object, more: Output = {}) =>
  output({ type: () => item(), isArray: true }, more);
export const OutTexts = (more: Output = {}) =>
  output({ type: 'array', items: { type: 'string' } }, more);
export const OutObject = (item: () => new () => object, more: Output = {}) =>
  output({ type: () => item() }, more);
