import { quantity } from '#lib/measure';
import type { Shape } from '../../api/client.js';
import type { Text } from '../../text/text.js';
import { asDecimal } from '../../ui/decimal-text.js';
import type { FieldErrors } from '../../ui/use-form.js';
import type { Consumable } from './api/list-consumables.js';
import type { Typed } from './template-draft.js';

export const STOCK_UNITS = ['g', 'mL', 'piece', 'cm', 'use'] as const;

/** Named by the paths by which the service knows them. */
export interface ConsumableValues {
  readonly name: string;
  readonly category: string;
  readonly stockUnit: Consumable['stockUnit'];
  readonly shade: string;
  readonly opacity: string;
  readonly viscosity: string;
  readonly size: string;
  readonly grit: string;
  readonly 'lifeAfterOpening.value': string;
  readonly 'lifeAfterOpening.unit': 'day' | 'month';
  readonly reorderAt: string;
  readonly reorderUpTo: string;
  readonly densityGPerCm3: string;
  readonly active: boolean;
}

export function consumableValues(
  consumable: Consumable | undefined,
  category: string,
  typed: Typed,
): ConsumableValues {
  const figure = (value: string | null | undefined) => (value ? typed(value) : '');
  const life = consumable?.lifeAfterOpening;
  return {
    name: consumable?.name ?? '',
    category: consumable?.category ?? category,
    stockUnit: consumable?.stockUnit ?? 'g',
    shade: consumable?.shade ?? '',
    opacity: consumable?.opacity ?? '',
    viscosity: consumable?.viscosity ?? '',
    size: consumable?.size ?? '',
    grit: consumable?.grit ?? '',
    'lifeAfterOpening.value': life ? String(life.value) : '',
    'lifeAfterOpening.unit': life?.unit ?? 'month',
    reorderAt: figure(consumable?.reorderAt),
    reorderUpTo: figure(consumable?.reorderUpTo),
    densityGPerCm3: figure(consumable?.densityGPerCm3),
    active: consumable?.active ?? true,
  };
}

export function consumableBody(values: ConsumableValues): Shape<'NewConsumableDto'> {
  const text = (typed: string) => typed.trim() || null;
  const figure = (typed: string) => asDecimal(typed) ?? null;
  const life = values['lifeAfterOpening.value'].trim();
  return {
    name: values.name.trim(),
    category: values.category.trim(),
    stockUnit: values.stockUnit,
    shade: text(values.shade),
    opacity: text(values.opacity),
    viscosity: text(values.viscosity),
    size: text(values.size),
    grit: text(values.grit),
    lifeAfterOpening:
      life === '' ? null : { value: Number(life), unit: values['lifeAfterOpening.unit'] },
    reorderAt: figure(values.reorderAt),
    reorderUpTo: figure(values.reorderUpTo),
    densityGPerCm3: figure(values.densityGPerCm3),
  };
}

export function consumableErrors(values: ConsumableValues, t: Text): FieldErrors {
  const life = values['lifeAfterOpening.value'].trim();
  const lifeFits =
    life === '' || (/^\d{1,4}$/.test(life) && Number(life) >= 1 && Number(life) <= 1200);
  return {
    name: values.name.trim() === '' ? t.ui.required : undefined,
    category: values.category.trim() === '' ? t.ui.required : undefined,
    'lifeAfterOpening.value': lifeFits ? undefined : t.setup.wholeBetween(1, 1200),
    ...reorderErrors(values, t),
    densityGPerCm3: decimalError(values.densityGPerCm3, t, true),
  };
}

function decimalError(typed: string, t: Text, aboveZero = false): string | undefined {
  if (typed.trim() === '') return undefined;
  const decimal = asDecimal(typed);
  if (decimal === undefined || decimal.startsWith('-')) return t.ui.decimal;
  return aboveZero && quantity(decimal) === 0n ? t.setup.aboveZero : undefined;
}

function reorderErrors({ reorderAt, reorderUpTo }: ConsumableValues, t: Text): FieldErrors {
  const w = t.setupCatalogue;
  const wrong = {
    reorderAt: decimalError(reorderAt, t),
    reorderUpTo: decimalError(reorderUpTo, t),
  };
  if (wrong.reorderAt !== undefined || wrong.reorderUpTo !== undefined) return wrong;
  const [at, upTo] = [asDecimal(reorderAt), asDecimal(reorderUpTo)];
  if (upTo !== undefined && at === undefined) return { reorderAt: w.reorderPair };
  const below = upTo !== undefined && at !== undefined && quantity(upTo) < quantity(at);
  return below ? { reorderUpTo: w.reorderOrder } : {};
}
