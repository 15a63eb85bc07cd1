import { answerOf, api, type Shape } from '../../../api/client.js';

/** The estimate as a PDF. */
export async function printEstimate(
  body: Shape<'EstimateQuestionDto'>,
  language: 'en' | 'de',
): Promise<Blob> {
  const sent = api.POST('/api/quotes/estimate.pdf', {
    params: { query: { language } },
    body,
    parseAs: 'blob',
  });
  return answerOf(sent);
}
