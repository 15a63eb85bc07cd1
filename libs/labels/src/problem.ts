/** What can be wrong with a label. The words are those of the GS1 reference tests where they have one. */
export const LABEL_PROBLEMS = [
  'ambiguous_separator',
  'check_character',
  'compressed_link',
  'duplicate_ai',
  'empty_value',
  'excluded_ai_pair',
  'illegal_character',
  'illegal_day',
  'illegal_domain',
  'illegal_hour',
  'illegal_minute',
  'illegal_month',
  'illegal_null_character',
  'illegal_second',
  'illegal_uri_character',
  'incorrect_check_digit',
  'incorrect_check_pair',
  'incorrect_length',
  'invalid_company_prefix',
  'invalid_content',
  'invalid_cset39_character',
  'invalid_cset64_character',
  'invalid_cset82_character',
  'lic_must_start_with_letter',
  'link_character',
  'malformed',
  'malformed_uri',
  'missing_required_ai',
  'missing_symbology_identifier',
  'mixed_standards',
  'no_primary_key',
  'non_digit_character',
  'not_a_data_attribute',
  'not_a_label',
  'not_iso3166',
  'not_iso3166_alpha2',
  'not_iso4217',
  'not_zero_or_one',
  'pcn_too_long',
  'qualifier_in_query',
  'repeated_ai_different_value',
  'too_long',
  'too_short',
  'unknown_ai',
  'unknown_format',
  'unsupported_standard',
  'unsupported_symbology_identifier',
  'wrong_path_order',
] as const;

export type LabelProblemCode = (typeof LABEL_PROBLEMS)[number];

/** What is wrong and where: `position` counts characters from 0 in the text as it was given. */
export interface LabelProblem {
  readonly code: LabelProblemCode;
  readonly position: number;
  /** The application identifier or the part of a HIBC label it is about. */
  readonly identifier: string | null;
  readonly message: string;
  /** The check digit, check character or link that would have been right. */
  readonly expected: string | null;
}

export interface Failed {
  readonly ok: false;
  readonly problem: LabelProblem;
}

export type Result<T> = ({ readonly ok: true } & T) | Failed;

interface About {
  readonly identifier?: string | null;
  readonly expected?: string | null;
}

export function failed(
  code: LabelProblemCode,
  position: number,
  message: string,
  about: About = {},
): Failed {
  const { identifier = null, expected = null } = about;
  return { ok: false, problem: { code, position, identifier, message, expected } };
}

/** The same problem, seen from a text that has `by` more characters in front. */
export function shifted(failure: Failed, by: number): Failed {
  const { problem } = failure;
  return { ok: false, problem: { ...problem, position: problem.position + by } };
}
