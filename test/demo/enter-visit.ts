import type { Page } from 'playwright-core';

/** One tooth of one chart, as far as the button that books it. */
export async function enterVisit(page: Page, chart: string): Promise<void> {
  await page.getByLabel('Chart reference').fill(chart);
  await page.getByLabel('Dentist').selectOption({ label: 'Dr Ilse Varenholt' });
  await page.getByLabel('Room').selectOption({ label: 'Room 1' });
  await page.getByRole('button', { name: '11, upper right central incisor' }).click();
  await page.getByRole('checkbox', { name: 'Mesial' }).click();
  await page.getByRole('checkbox', { name: 'Facial' }).click();
  await page.getByRole('radio', { name: 'Cosmetic' }).check();
  await page.getByLabel('How it is made').selectOption({ label: 'Front filling, between teeth' });
  await page
    .getByRole('checkbox', { name: /^Body 2/ })
    .first()
    .check();
  await page.getByText('from the open container').first().waitFor();
}
