import 'reflect-metadata';
import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import type { FieldError } from '../problems/refused.js';
import { Refused } from '../problems/refused.js';
import {
  ChoiceField,
  ChoiceListField,
  DateField,
  DecimalField,
  FlagField,
  IdField,
  IdListField,
  ListField,
  ObjectField,
  TextField,
  WholeField,
  WholeQuery,
} from './fields.js';
import { createValidationPipe } from './validation.js';

class LineDto {
  @IdField()
  consumableId: string;

  @DecimalField({ above: '0', max: '1000' })
  quantity: string;
}

class RoomDto {
  @TextField(10)
  name: string;
}

class SampleDto {
  @TextField(20)
  name: string;

  @TextField(20, { optional: true, empty: true })
  note?: string;

  @DateField({ optional: true })
  day?: string;

  @DecimalField({ optional: true, scale: 2, min: '0' })
  price?: string;

  @WholeField(1, 10, { optional: true })
  staff?: number;

  @WholeQuery(1, 500)
  limit?: string;

  @FlagField({ optional: true })
  active?: boolean;

  @ChoiceField(['store', 'room'], { optional: true })
  kind?: string;

  @ChoiceListField(['decay', 'wear'], { optional: true })
  reasons?: string[];

  @IdListField({ optional: true, min: 1, max: 2 })
  shades?: string[];

  @ObjectField(() => RoomDto, { optional: true })
  room?: RoomDto;

  @ListField(() => LineDto, { optional: true, min: 1, max: 2 })
  lines?: LineDto[];
}

const ID = '01890000-0000-7000-8000-000000000001';
const OTHER = '01890000-0000-7000-8000-000000000002';
const pipe = createValidationPipe();

/** The fields at fault; none when the body is taken. */
async function faults(body: Record<string, unknown>): Promise<readonly FieldError[]> {
  const metadata = { type: 'body', metatype: SampleDto } as const;
  const answer: unknown = await pipe
    .transform({ name: 'x', ...body }, metadata)
    .catch((error: unknown) => error);
  if (answer instanceof Refused) {
    expect(answer.kind.status).toBe(400);
    return answer.fields;
  }
  expect(answer).toBeInstanceOf(SampleDto);
  return [];
}

describe('the decorators for fields of a request', () => {
  it.each([
    { note: '' },
    { day: '2028-02-29' },
    { price: '12.50' },
    { price: '0' },
    { staff: 10 },
    { limit: '500' },
    { active: false },
    { kind: 'room' },
    { reasons: ['wear', 'decay'] },
    { reasons: [] },
    { shades: [ID, OTHER] },
    { room: { name: 'Room 2' } },
    { lines: [{ consumableId: ID, quantity: '0.000001' }] },
  ])('take %j', async (body) => {
    expect(await faults(body)).toEqual([]);
  });

  it.each([
    ['name', { name: '   ' }],
    ['name', { name: 'x'.repeat(21) }],
    ['name', { name: 'a\nb' }],
    ['name', { name: 'a\0b' }],
    ['name', { name: '\ud800' }],
    ['name', { name: 7 }],
    ['name', { name: null }],
    ['day', { day: '2026-02-29' }],
    ['day', { day: '2026-2-3' }],
    ['price', { price: 12.5 }],
    ['price', { price: '12.505' }],
    ['price', { price: '-0.01' }],
    ['price', { price: '1e3' }],
    ['price', { price: '1000000000.01' }],
    ['staff', { staff: 0 }],
    ['staff', { staff: '3' }],
    ['staff', { staff: 2.5 }],
    ['limit', { limit: '501' }],
    ['limit', { limit: '+5' }],
    ['limit', { limit: ['5', '6'] }],
    ['active', { active: 'true' }],
    ['kind', { kind: 'Room' }],
    ['reasons', { reasons: ['wear', 'wear'] }],
    ['shades', { shades: [] }],
    ['shades', { shades: [ID, ID] }],
    ['room', { room: 'Room 2' }],
    ['room', { room: [] }],
    ['room.name', { room: {} }],
    ['lines', { lines: [] }],
    ['lines', { lines: { 0: {} } }],
    ['lines[0].quantity', { lines: [{ consumableId: ID, quantity: '0' }] }],
    ['lines[1].consumableId', { lines: [{ consumableId: ID, quantity: '1' }, { quantity: '1' }] }],
    ['lines[0].colour', { lines: [{ consumableId: ID, quantity: '1', colour: 'red' }] }],
    ['unheardOf', { unheardOf: 1 }],
  ])('name %s in %j', async (field, body) => {
    const found = await faults(body);
    expect(found.map((fault) => fault.field)).toContain(field);
    for (const { message } of found) expect(message).toMatch(/^(must|is) /);
  });

  it('never answer anything but a refusal or a body, whatever is sent', async () => {
    await fc.assert(
      fc.asyncProperty(fc.dictionary(fc.string(), fc.jsonValue()), async (body) => {
        await faults(body as Record<string, unknown>);
      }),
      { numRuns: 300 },
    );
  });
});
