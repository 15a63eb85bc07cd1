import { archOf, type IsoTooth, isPrimary, quadrantOf, toothKind } from '#lib/dentition';
import type { Text } from '../../text/text.js';

/** 'upper left central incisor' */
export function toothName(t: Text, tooth: IsoTooth): string {
  const quadrant = quadrantOf(tooth);
  return t.chairside.mouth.name({
    kind: t.chairside.mouth.kinds[toothKind(tooth)],
    arch: archOf(tooth),
    side: quadrant === 1 || quadrant === 4 ? 'right' : 'left',
    primary: isPrimary(tooth),
  });
}

/** What the service says about a field, as a sentence in the person's language. */
export function fieldSentence(t: Text, message: string): string {
  const [pattern, words] = t.chairside.fieldWords.find(([known]) => known.test(message)) ?? [];
  return t.problems.fieldWords(pattern && words ? message.replace(pattern, words) : message);
}

export function consumableName(of: {
  readonly name: string;
  readonly shade?: string | null;
  readonly size?: string | null;
  readonly grit?: string | null;
}): string {
  return [of.name, of.shade, of.size, of.grit]
    .filter((part) => part !== null && part !== undefined && part !== '')
    .join(', ');
}
