import { answerOf, api, type Shape } from '../../../api/client.js';

/** Labels as a PDF. */
export function printLabels(body: Shape<'LabelSheetDto'>, language: 'en' | 'de'): Promise<Blob> {
  const sent = api.POST('/api/labels/sheet.pdf', {
    params: { query: { language } },
    body,
    parseAs: 'blob',
  });
  return answerOf(sent);
}
