import type { Format } from '../../text/format.js';
import type { Text } from '../../text/text.js';
import { known } from './line-words.js';

/** 'TSB 0.1/0.01': the name, the weight of a size, the weight of an interval or probability. */
const METHOD = /^(.*?)(?: (\d[\d.]*)(?:\/(\d[\d.]*))?)?$/;

/** A method of forecasting by its name and weights, as the person's language has it. */
export function methodWords(method: string, format: Format, t: Text): string {
  const w = t.orderingItem.methods;
  const [, name = method, first, second] = METHOD.exec(method) ?? [];
  const weights = [first, second].filter((each) => each !== undefined).map(format.number);
  const said = known(w.names, name);
  return weights.length === 0 ? said : w.weighted(said, weights.join(' / '));
}
