import type { Format } from '../../../text/format.js';
import type { Text } from '../../../text/text.js';
import type { Movement } from '../api/list-movements.js';
import type { Place } from '../api/list-places.js';
import { nameOf } from '../parts/what.js';

type Side = Movement['from'];

/** One side of a movement in the person's language: 'Room 2, open container', 'waste: expired'. */
export function sideWords(
  side: Side,
  movement: Movement,
  places: readonly Place[],
  { movements, shelves }: Text,
): string {
  switch (side.account) {
    case 'location': {
      const place = places.find(({ id }) => id === side.locationId)?.name;
      if (place === undefined) return side.words;
      return side.words === place ? place : movements.openContainer(place);
    }
    case 'supplier':
      return side.words;
    case 'return':
      return movements.accounts.return.toLocaleLowerCase();
    case 'visit':
      return movements.visit;
    case 'count':
      return movements.count;
    case 'waste': {
      const reasons: Readonly<Record<string, string>> = shelves.reasons;
      const reason = reasons[movement.wasteReason ?? ''];
      return reason === undefined ? movements.accounts.waste : movements.waste(reason);
    }
  }
}

/** What happened, in the person's language. */
export function kindWords({ kind }: Pick<Movement, 'kind'>, { movements }: Text): string {
  const kinds: Readonly<Record<string, string>> = movements.kinds;
  return kinds[kind] ?? kind;
}

/** A movement in a sentence, for asking whether to reverse it. */
export function sentenceOf(
  movement: Movement,
  places: readonly Place[],
  format: Format,
  t: Text,
): string {
  const { consumable, lot, quantity, from, to } = movement;
  const path = `${sideWords(from, movement, places, t)} → ${sideWords(to, movement, places, t)}`;
  return t.movements.sentence(
    kindWords(movement, t),
    format.quantity(quantity, consumable.unit),
    nameOf(consumable),
    t.movements.lot(lot.lotNumber ?? t.ui.notStated),
    path,
  );
}

/** What may be reversed on its own: not a reversal, nothing reversed, nothing of a visit or delivery. */
export function canReverse({ reversesId, reversedById, visitId, from }: Movement): boolean {
  return (
    reversesId === null && reversedById === null && visitId === null && from.account !== 'supplier'
  );
}
