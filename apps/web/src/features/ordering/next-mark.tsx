import { useText } from '../../text/text-provider.js';
import { StatusMark, type Tone } from '../../ui/status-mark.js';
import type { PlannedItem } from './api/planned-items.js';

const TONES: Readonly<Record<PlannedItem['next'], Tone>> = {
  'order now': 'danger',
  'held back': 'caution',
  'no offer': 'caution',
  'order later': 'good',
  'nothing expected': 'quiet',
};

const YEAR = 366;

/** What comes next of a consumable, and when. */
export function NextMark({ item }: { readonly item: PlannedItem }) {
  const w = useText().orderingItems;
  const { next, dueInDays } = item;
  if (next === 'order later' && dueInDays !== null) {
    return <StatusMark tone="good">{dueInDays > YEAR ? w.years : w.due(dueInDays)}</StatusMark>;
  }
  return <StatusMark tone={TONES[next]}>{w.nexts[next]}</StatusMark>;
}
