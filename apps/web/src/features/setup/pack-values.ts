import { isWholeUnit, parseDecimal, quantity } from '#lib/measure';
import type { Shape } from '../../api/client.js';
import type { Text } from '../../text/text.js';
import { asDecimal } from '../../ui/decimal-text.js';
import type { FieldErrors } from '../../ui/use-form.js';
import type { Consumable } from './api/list-consumables.js';
import type { Presentation } from './api/list-presentations.js';
import type { Typed } from './template-draft.js';

export interface PackValues {
  readonly name: string;
  readonly dispensing: Presentation['dispensing'];
  readonly containersPerPack: string;
  readonly contentPerContainer: string;
  readonly supplierId: string;
  readonly deviceIdentifier: string;
  readonly articleCode: string;
  readonly listPrice: string;
  readonly active: boolean;
}

export function packValues(
  pack: Presentation | undefined,
  unit: Consumable['stockUnit'],
  typed: Typed,
): PackValues {
  const whole = isWholeUnit(unit);
  return {
    name: pack?.name ?? '',
    dispensing: pack?.dispensing ?? (whole ? 'by-piece' : 'multi-use'),
    containersPerPack: pack ? String(pack.containersPerPack) : whole ? '' : '1',
    contentPerContainer: pack ? typed(pack.contentPerContainer) : whole ? '1' : '',
    supplierId: pack?.supplierId ?? '',
    deviceIdentifier: pack?.deviceIdentifier ?? '',
    articleCode: pack?.articleCode ?? '',
    listPrice: pack?.listPrice ? typed(pack.listPrice) : '',
    active: pack?.active ?? true,
  };
}

export function packBody(values: PackValues): Shape<'PresentationChangesDto'> & {
  readonly name: string;
  readonly dispensing: Presentation['dispensing'];
  readonly containersPerPack: number;
  readonly contentPerContainer: string;
} {
  return {
    name: values.name.trim(),
    dispensing: values.dispensing,
    containersPerPack: Number(values.containersPerPack),
    contentPerContainer: asDecimal(values.contentPerContainer) ?? '',
    supplierId: values.supplierId || null,
    deviceIdentifier: values.deviceIdentifier.trim() || null,
    articleCode: values.articleCode.trim() || null,
    listPrice: asDecimal(values.listPrice) ?? null,
  };
}

export function packErrors(
  values: PackValues,
  unit: Consumable['stockUnit'],
  t: Text,
): FieldErrors {
  const w = t.setupCatalogue;
  const containers = values.containersPerPack.trim();
  const fits = /^\d{1,6}$/.test(containers) && Number(containers) >= 1;
  const byPiece = values.dispensing === 'by-piece' && !isWholeUnit(unit);
  const price = asDecimal(values.listPrice);
  const priceFits = values.listPrice.trim() === '' || (price !== undefined && price[0] !== '-');
  return {
    name: values.name.trim() === '' ? t.ui.required : undefined,
    dispensing: byPiece ? w.byPieceUnit : undefined,
    containersPerPack: fits ? undefined : t.setup.wholeBetween(1, 100_000),
    contentPerContainer: contentError(values.contentPerContainer, unit, t),
    listPrice: priceFits ? undefined : t.ui.decimal,
  };
}

function contentError(typed: string, unit: Consumable['stockUnit'], t: Text): string | undefined {
  if (typed.trim() === '') return t.ui.required;
  const content = asDecimal(typed);
  if (content === undefined) return t.ui.decimal;
  if (quantity(content) <= 0n) return t.setup.aboveZero;
  const whole = !isWholeUnit(unit) || parseDecimal(content, 0).ok;
  return whole ? undefined : t.setupCatalogue.wholeContent;
}
