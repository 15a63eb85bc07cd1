import { describe, expect, it } from '@jest/globals';
import { parseGroupBy } from './group-by.js';

describe('what a report is grouped by', () => {
  it.each([
    [undefined, ['template']],
    ['reason', ['reason']],
    ['month, template', ['template', 'month']],
    ['dentist,month,reason,template', ['template', 'reason', 'dentist', 'month']],
  ])('%p means %j', (text, groups) => {
    expect(parseGroupBy(text)).toEqual(groups);
  });

  it.each(['', 'week', 'template,', 'reason,reason', 'template;reason', 'Template'])(
    'refuses %p',
    (text) => {
      expect(parseGroupBy(text)).toBeUndefined();
    },
  );
});
