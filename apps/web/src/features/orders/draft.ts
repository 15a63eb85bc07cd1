import type { Shape } from '../../api/client.js';
import type { Text } from '../../text/text.js';
import { asDecimal } from '../../ui/decimal-text.js';
import type { FieldErrors } from '../../ui/use-form.js';
import type { Order } from './api/get-order.js';
import { goodsName } from './api/list-goods.js';
import { amountProblem, wholeProblem } from './typed-values.js';

/** A line as it is typed. `name` is what is shown of it; `id` is undefined for a new one. */
export interface DraftLine {
  readonly id: string | undefined;
  readonly presentationId: string;
  readonly goods: string;
  readonly pack: string;
  readonly packs: string;
  readonly packPrice: string;
}

export interface Draft {
  readonly supplierId: string;
  readonly lines: readonly DraftLine[];
  readonly freight: string;
  readonly reference: string;
  readonly note: string;
}

export const EMPTY_DRAFT: Draft = {
  ...{ supplierId: '', lines: [], freight: '', reference: '', note: '' },
};

export function draftOf(order: Order, typed: (decimal: string) => string): Draft {
  return {
    supplierId: order.supplier.id,
    lines: order.lines.map((line) => ({
      id: line.id,
      presentationId: line.presentation.id,
      goods: goodsName(line.consumable),
      pack: line.presentation.name,
      packs: String(line.packs),
      packPrice: line.packPrice === null ? '' : typed(line.packPrice),
    })),
    freight: order.freightByTerms ? '' : typed(order.freight),
    reference: order.reference ?? '',
    note: order.note ?? '',
  };
}

/** What the service takes of a draft. */
export function draftBody(draft: Draft): Omit<Shape<'OrderChangesDto'>, 'version'> {
  return {
    supplierId: draft.supplierId,
    lines: draft.lines.map(({ id, presentationId, packs, packPrice }) => ({
      ...(id === undefined ? {} : { id }),
      ...{ presentationId, packs: Number(packs), packPrice: asDecimal(packPrice) ?? null },
    })),
    freight: asDecimal(draft.freight) ?? null,
    reference: draft.reference.trim() || null,
    note: draft.note.trim() || null,
  };
}

export function draftErrors(draft: Draft, t: Text): FieldErrors {
  const w = t.orders.draft;
  return {
    supplierId: draft.supplierId === '' ? t.ui.required : undefined,
    add: draft.lines.length === 0 ? w.noGoods : undefined,
    freight: amountProblem(draft.freight, t),
    ...Object.fromEntries(
      draft.lines.flatMap(({ packs, packPrice }, i) => [
        [`lines[${i}].packs`, wholeProblem(packs, [1, 100_000], t)],
        [`lines[${i}].packPrice`, amountProblem(packPrice, t)],
      ]),
    ),
  };
}
