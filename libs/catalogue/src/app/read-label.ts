import { Injectable } from '@nestjs/common';
import { type Label, type LabelProblem, readLabel, spellingsOfGtin } from '#lib/labels';
import { type Actor, Clock, UnitOfWork } from '#lib/platform';
import { type LabelMatch, labelMatches } from '../db/label-matches.js';

export interface LabelReading {
  /** What the label says; null if it could not be read. */
  readonly label: Label | null;
  readonly problem: LabelProblem | null;
  readonly matches: readonly LabelMatch[];
}

/** Reads a label and looks up what the practice knows of it. An unreadable label is an answer. */
@Injectable()
export class ReadLabel {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async run(actor: Actor, text: string): Promise<LabelReading> {
    const currentYear = Number(this.clock.today(actor.timeZone).slice(0, 4));
    const read = readLabel(text, { currentYear });
    if (!read.ok) return { label: null, problem: read.problem, matches: [] };
    const { label } = read;
    const identifiers = spellings(label);
    if (identifiers.length === 0) return { label, problem: null, matches: [] };
    const matches = await this.uow.read(actor.practiceId, (tx) =>
      labelMatches(tx, identifiers, label.lot),
    );
    return { label, problem: null, matches };
  }
}

/** A product may have been entered with the GTIN as it is printed, without the zeros before it. */
function spellings({ gtin14, deviceIdentifier }: Label): readonly string[] {
  if (gtin14 !== null) return spellingsOfGtin(gtin14);
  return deviceIdentifier === null ? [] : [deviceIdentifier];
}
