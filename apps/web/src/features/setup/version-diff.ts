import type { Shape } from '../../api/client.js';
import type { Format } from '../../text/format.js';
import type { Text } from '../../text/text.js';
import { asDecimal } from '../../ui/decimal-text.js';
import type { Template, TemplateLine } from './api/get-template.js';
import {
  assistantMinutesOf,
  type Draft,
  type Flag,
  mayShareDose,
  SHADES,
} from './template-draft.js';

/** What two versions, or a version and a draft, are compared by. */
export interface Content {
  readonly minutes: number;
  readonly assistantMinutes: number;
  readonly layerThicknessMm: string;
  readonly lines: readonly ContentLine[];
}

type ContentLine = Omit<TemplateLine, 'lineNumber' | 'sharesDose' | 'anaesthetic'> & {
  readonly sharesDose: Flag;
  readonly anaesthetic: Flag;
};

export const contentOfVersion = (template: Template): Content => template;

export function contentOfDraft(draft: Draft): Content {
  const decimal = (typed: string) => asDecimal(typed) ?? typed;
  return {
    minutes: Number(draft.minutes),
    assistantMinutes: assistantMinutesOf(draft) ?? Number(draft.minutes),
    layerThicknessMm: decimal(draft.layerThicknessMm),
    lines: draft.lines.map((line) => ({
      consumableId: line.what === SHADES ? null : line.what,
      consumableName: line.what === SHADES ? null : line.name,
      stockUnit: line.unit as Shape<'TemplateLineDto'>['stockUnit'],
      driver: line.driver,
      dispensed: decimal(line.dispensed),
      placed: line.placed.trim() === '' ? '0' : decimal(line.placed),
      everyAttempt: line.everyAttempt,
      reasons: line.reasons.length === 0 ? null : [...line.reasons],
      sharesDose: mayShareDose(line) ? line.sharesDose : null,
      anaesthetic: line.anaesthetic,
    })),
  };
}

const kindOf = (line: ContentLine) => `${line.driver}/${line.consumableId ?? SHADES}`;

interface Pair {
  readonly before?: ContentLine;
  readonly after?: ContentLine;
}

/** Lines of the same consumable and driver belong together, in their order. */
function pairs(before: readonly ContentLine[], after: readonly ContentLine[]): Pair[] {
  const left = [...before];
  const found = after.map((line): Pair => {
    const i = left.findIndex((old) => kindOf(old) === kindOf(line));
    const [old] = i < 0 ? [] : left.splice(i, 1);
    return old ? { before: old, after: line } : { after: line };
  });
  return [...found, ...left.map((line): Pair => ({ before: line }))];
}

export interface Words {
  readonly format: Format;
  readonly t: Text;
}

function nameOf(line: ContentLine, { t }: Words): string {
  const what = line.consumableId === null ? t.setupTemplates.shades : (line.consumableName ?? '');
  const driver = t.setupTemplates.drivers[line.driver].title;
  return `${what} (${driver})`;
}

export function reasonWords(reasons: readonly string[] | null, t: Text): string {
  const w = t.setupTemplates;
  if (reasons === null || reasons.length === 0) return w.anyReason;
  const names: Readonly<Record<string, string>> = w.reasons;
  return w.onlyReasons(reasons.map((reason) => names[reason] ?? reason).join(', '));
}

function amount(value: string, line: ContentLine, { format, t }: Words): string {
  const unit = line.stockUnit ?? t.setupTemplates.shadeUnit;
  return asDecimal(value) === undefined ? value : format.quantity(value, unit);
}

function lineChanges(before: ContentLine, after: ContentLine, words: Words): string[] {
  const w = words.t.setupTemplates;
  const changes: string[] = [];
  const of = (value: string) => amount(value, after, words);
  if (before.dispensed !== after.dispensed) {
    changes.push(w.diff.out(of(before.dispensed), of(after.dispensed)));
  }
  if (before.placed !== after.placed) {
    changes.push(w.diff.stays(of(before.placed), of(after.placed)));
  }
  if (String(before.reasons) !== String(after.reasons)) {
    changes.push(reasonWords(after.reasons, words.t));
  }
  if (before.everyAttempt !== after.everyAttempt) {
    changes.push(after.everyAttempt ? w.again : w.notAgain);
  }
  if (isOther(before.sharesDose, after.sharesDose)) {
    changes.push(after.sharesDose ? w.sharesDose : w.ownDose);
  }
  if (isOther(before.anaesthetic, after.anaesthetic)) {
    changes.push(after.anaesthetic ? w.anaesthetic : w.notAnaesthetic);
  }
  return changes;
}

/** What is as usual says nothing that could be compared. */
function isOther(before: Flag, after: Flag): boolean {
  return before !== null && after !== null && before !== after;
}

/** What became different, a sentence each; empty when both say the same. */
export function differences(before: Content, after: Content, words: Words): string[] {
  const { format, t } = words;
  const w = t.setupTemplates.diff;
  const found: string[] = [];
  if (before.minutes !== after.minutes) {
    found.push(w.minutes(format.number(String(before.minutes)), String(after.minutes)));
  }
  // As long as the chair, before and after: that follows from the chair time.
  const asChair = [before, after].every((each) => each.assistantMinutes === each.minutes);
  if (!asChair && before.assistantMinutes !== after.assistantMinutes) {
    found.push(w.assistants(String(before.assistantMinutes), String(after.assistantMinutes)));
  }
  if (before.layerThicknessMm !== after.layerThicknessMm) {
    found.push(w.thickness(before.layerThicknessMm, after.layerThicknessMm));
  }
  for (const pair of pairs(before.lines, after.lines)) {
    if (!pair.before && pair.after) {
      const { after: line } = pair;
      const figures = `${nameOf(line, words)}, ${amount(line.dispensed, line, words)}`;
      found.push(w.added(figures));
    } else if (pair.before && !pair.after) found.push(w.removed(nameOf(pair.before, words)));
    else if (pair.before && pair.after) {
      const changes = lineChanges(pair.before, pair.after, words);
      if (changes.length > 0) {
        found.push(w.changed(nameOf(pair.after, words), changes.join('; ')));
      }
    }
  }
  const order = (lines: readonly ContentLine[]) => lines.map(kindOf).join(' ');
  if (found.length === 0 && order(before.lines) !== order(after.lines)) found.push(w.order);
  return found;
}
