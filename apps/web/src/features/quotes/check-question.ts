import { parseSurfaces, parseTooth, type ToothNotation } from '#lib/dentition';
import type { Shape } from '../../api/client.js';
import type { Text } from '../../text/text.js';
import { asDecimal } from '../../ui/decimal-text.js';
import type { FieldErrors } from '../../ui/use-form.js';
import type { Draft } from './question.js';
import type { Row } from './row.js';

type Template = Pick<Shape<'TemplateDto'>, 'lines'>;

/** Whether a template leaves its paste open for this reason. */
export function asksForShades(template: Template | undefined, reason: string): boolean {
  return (template?.lines ?? []).some(
    (line) => line.consumableId === null && (line.reasons?.includes(reason) ?? true),
  );
}

interface Known {
  readonly notation: ToothNotation;
  readonly templateOf: (id: string) => Template | undefined;
  readonly t: Text;
}

const isAmount = (typed: string) => {
  const decimal = typed.trim() === '' ? '0' : asDecimal(typed);
  return decimal !== undefined && !decimal.startsWith('-');
};

const isWhole = (typed: string, most: number) => {
  const text = typed.trim();
  return text === '' || (/^\d{1,6}$/.test(text) && Number(text) <= most);
};

/** What can be seen to be wrong without asking the service, by the service's field paths. */
export function checkQuestion(draft: Draft, known: Known): FieldErrors {
  const { errors } = known.t.quotes;
  const wrong: Record<string, string | undefined> = {};
  for (const name of [
    'balance.deductibleLeft',
    'balance.maximumLeft',
    'targetContributionPerHour',
    'chairMinuteCost',
  ] as const) {
    if (!isAmount(draft[name])) wrong[name] = errors.amount;
  }
  if (!isWhole(draft.setUpMinutes, 240)) wrong.setUpMinutes = errors.minutes(240);
  draft.restorations.forEach((row, i) => {
    for (const [field, words] of Object.entries(checkRow(row, known))) {
      wrong[`restorations[${i}].${field}`] = words;
    }
  });
  return wrong;
}

function checkRow(row: Row, { notation, templateOf, t }: Known): FieldErrors {
  const { errors } = t.quotes;
  const tooth = parseTooth(row.tooth, notation);
  const template = templateOf(row.templateId);
  const lacksShade = row.shades.length === 0 && asksForShades(template, row.reason);
  return {
    tooth: tooth === undefined ? errors.tooth(notation) : undefined,
    surfaces: tooth === undefined ? undefined : surfaceWords(parseSurfaces(tooth, row.surfaces), t),
    templateId: row.templateId === '' ? t.ui.required : undefined,
    shades: lacksShade ? errors.shade : undefined,
    fee: isAmount(row.fee) ? undefined : errors.amount,
    minutes: isWhole(row.minutes, 1440) ? undefined : errors.minutes(1440),
    retakes: isWhole(row.retakes, 9) ? undefined : errors.retakes,
    ...checkSides(row, t),
  };
}

/** Length and width make a volume only together with a depth; a depth alone makes layers. */
function checkSides(row: Row, t: Text): FieldErrors {
  const { errors } = t.quotes;
  const { lengthMm, widthMm, depthMm } = row;
  const isMeasured = lengthMm.trim() !== '' || widthMm.trim() !== '';
  const wordsFor = (typed: string): string | undefined => {
    if (typed.trim() === '') return isMeasured ? errors.sides : undefined;
    const side = asDecimal(typed);
    const isSide = side !== undefined && Number(side) > 0 && Number(side) <= 100;
    return isSide ? undefined : errors.side;
  };
  return {
    lengthMm: wordsFor(lengthMm),
    widthMm: wordsFor(widthMm),
    depthMm: wordsFor(depthMm),
  };
}

function surfaceWords(read: ReturnType<typeof parseSurfaces>, t: Text): string | undefined {
  if (read.ok) return undefined;
  const { errors } = t.quotes;
  const letter = read.letter ?? '';
  return {
    unknown_surface: errors.unknownSurface(letter),
    surface_not_on_tooth: errors.surfaceNotOnTooth(letter),
    surface_repeated: errors.surfaceTwice(letter),
    no_surface: errors.noSurface,
  }[read.code];
}
