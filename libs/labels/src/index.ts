export { isPrintedDate, yearOf } from './dates.js';
export { type Detected, detectLabel, type Issuer } from './detect.js';
export { readBracketed } from './gs1/bracketed.js';
export { firstForeign } from './gs1/character-sets.js';
export { checkDigit, checkPair, wrongCheckDigit } from './gs1/check-digits.js';
export { dateFinding, timeFinding } from './gs1/date-checks.js';
export { type LinkOptions, readDigitalLink } from './gs1/digital-link.js';
export { readElementString } from './gs1/element-string.js';
export { readGtin, spellingsOfGtin } from './gs1/gtin.js';
export {
  allIdentifiers,
  findIdentifier,
  type Identifier,
  identifierLength,
} from './gs1/identifiers.js';
export { escapeLink, unescapeLink } from './gs1/percent.js';
export { type RelationRule, relationProblem } from './gs1/relations.js';
export { type Carrier, readScan, type Scan, writeScan } from './gs1/scan.js';
export type { Element } from './gs1/values.js';
export { printedLines, writeBracketed, writeElementString } from './gs1/write.js';
export { writeDigitalLink } from './gs1/write-link.js';
export { checkCharacter } from './hibc/check-character.js';
export { type HibcSymbol, readHibc, readHibcPair } from './hibc/read.js';
export { writeHibc, writeHibcSecondary } from './hibc/write.js';
export {
  LABEL_FORMS,
  LABEL_NOTES,
  type Label,
  type LabelForm,
  type LabelNote,
  type OtherElement,
  type Standard,
} from './label.js';
export {
  OWN_SUBJECTS,
  type OwnSubject,
  type OwnSubjectKind,
  ownSubject,
  type WrittenSymbol,
  writeOwnSymbol,
} from './own-symbol.js';
export { LABEL_PROBLEMS, type LabelProblem, type LabelProblemCode } from './problem.js';
export { LONGEST_LABEL, type ReadLabel, type ReadOptions, readLabel } from './read-label.js';
