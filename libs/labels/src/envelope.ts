import { SEPARATOR } from './gs1/element-string.js';
import { failed, type Result } from './problem.js';

const BEGIN = '[)>';
const RECORD = '\u001e';
const END = '\u0004';
/** The format whose data are GS1 identifiers. */
const GS1_FORMAT = '05';

/** Whether a text is a message in the envelope of ISO/IEC 15434. */
export function isEnvelope(text: string): boolean {
  return text.startsWith(BEGIN);
}

/**
 * Takes a message out of its envelope: `[)>`, record separator, two digits for the format, group
 * separator, data, record separator, end of transmission. Scanners often drop the last two.
 */
export function openEnvelope(text: string): Result<{ readonly data: string; readonly at: number }> {
  const at = BEGIN.length + RECORD.length + GS1_FORMAT.length + SEPARATOR.length;
  const [record, format, group] = [text.slice(3, 4), text.slice(4, 6), text.slice(6, at)];
  if (record !== RECORD || (group !== SEPARATOR && group !== '')) {
    const sentence = 'This is an ISO/IEC 15434 message, but its separators were lost on the way.';
    return failed('unsupported_standard', 0, sentence);
  }
  if (format !== GS1_FORMAT) {
    const sentence =
      `This is an ISO/IEC 15434 message of format ${format}; only ${GS1_FORMAT}, ` +
      'which holds GS1 identifiers, is read here.';
    return failed('unsupported_standard', 0, sentence);
  }
  const unended = text.endsWith(END) ? text.slice(0, -1) : text;
  return {
    ok: true,
    data: (unended.endsWith(RECORD) ? unended.slice(0, -1) : unended).slice(at),
    at,
  };
}
