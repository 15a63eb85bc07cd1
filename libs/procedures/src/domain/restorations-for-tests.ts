import { type IsoTooth, parseIsoTooth, parseSurfaces, type Surface } from '#lib/dentition';
import { quantity } from '#lib/measure';
import { expandUsage } from './expand-usage.js';
import type { PlannedLine, PlannedRestoration, TemplateLine } from './template.js';

function tooth(digits: number): IsoTooth {
  const found = parseIsoTooth(digits);
  if (found === undefined) throw new Error(`${digits} is no tooth`);
  return found;
}

function surfaces(digits: number, text: string): readonly Surface[] {
  const read = parseSurfaces(tooth(digits), text);
  if (!read.ok) throw new Error(`${text} cannot be on ${digits}`);
  return read.surfaces;
}

const NO_FLAGS = { sharesDose: false, anaesthetic: false };

let written = 0;

export function line(
  consumableId: string | null,
  driver: TemplateLine['driver'],
  dispensed: string,
  more: Partial<TemplateLine> = {},
): TemplateLine {
  written += 1;
  const amount = quantity(dispensed);
  const usual = { placed: amount, everyAttempt: false, reasons: null, ...NO_FLAGS };
  return { lineNumber: written, consumableId, driver, dispensed: amount, ...usual, ...more };
}

export function restoration(
  lines: readonly TemplateLine[],
  more: Partial<PlannedRestoration> & { on?: [number, string] } = {},
): PlannedRestoration {
  const { on = [11, 'M'], ...facts } = more;
  return {
    tooth: tooth(on[0]),
    surfaces: surfaces(on[0], on[1]),
    reason: 'decay',
    template: {
      templateId: 't',
      version: 1,
      name: 'Filling',
      minutes: 30,
      assistantMinutes: 30,
      layerThicknessMm: quantity('2'),
      active: true,
      lines,
    },
    shades: [],
    attempts: 1,
    cycles: 1,
    volumeMm3: quantity('12'),
    volumeSource: 'planning value',
    lengthMm: null,
    widthMm: null,
    depthMm: quantity('2'),
    minutes: 30,
    assistantMinutes: 30,
    ...facts,
  };
}

export const PIECES = new Set(['bib', 'wedge', 'capsule-a', 'capsule-b', 'capsule-c', 'bur']);

export function expand(
  restorations: readonly PlannedRestoration[],
  staffCount = 2,
): readonly PlannedLine[] {
  return expandUsage({ restorations, staffCount, isWhole: (id) => PIECES.has(id) });
}
