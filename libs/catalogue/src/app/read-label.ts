import { Injectable } from '@nestjs/common';
import { type Label, type LabelProblem, ownSubject, readLabel, spellingsOfGtin } from '#lib/labels';
import { type Actor, Clock, type Tx, UnitOfWork } from '#lib/platform';
import { type LabelMatch, labelMatches } from '../db/label-matches.js';
import { type OwnLabel, ownLabels } from '../db/label-own.js';

export interface LabelReading {
  /** What the label says; null if it could not be read. */
  readonly label: Label | null;
  readonly problem: LabelProblem | null;
  readonly matches: readonly LabelMatch[];
  /** What a label that was printed here stands on. */
  readonly own: OwnLabel | null;
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
    if (!read.ok) return { label: null, problem: read.problem, matches: [], own: null };
    const { label } = read;
    const known = await this.uow.read(actor.practiceId, (tx) => lookUp(tx, label));
    return { label, problem: null, ...known };
  }
}

async function lookUp(tx: Tx, label: Label): Promise<Pick<LabelReading, 'matches' | 'own'>> {
  const subject = ownSubject(label);
  const [own] = subject ? await ownLabels(tx, subject.kind, [subject.id]) : [];
  const identifiers = spellings(label);
  const matches = identifiers.length === 0 ? [] : await labelMatches(tx, identifiers, label.lot);
  return { matches, own: own ?? null };
}

/** A product may have been entered with the GTIN as it is printed, without the zeros before it. */
function spellings({ gtin14, deviceIdentifier }: Label): readonly string[] {
  if (gtin14 !== null) return spellingsOfGtin(gtin14);
  return deviceIdentifier === null ? [] : [deviceIdentifier];
}
