import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { TestBook, TestService, type Visit } from './book.js';

// One class III filling with invented prices in USD, worked out by hand outside this program, taken
// here through deliveries, template, posting and the cost report. Published total of the same order:
// US$ 7.96 in 2013 (Braz J Oral Sci 2013;12(4), cost of materials in class III, IV and V, abstract).
// Each row: consumable, unit, driver, amount, price of a pack, what the pack holds.
type Row = [
  name: string,
  unit: string,
  driver: string,
  amount: string,
  price: string,
  holds: string,
];

const VISIT_PART: Row[] = [
  ['Topical gel', 'g', 'visit', '0.3', '9.00', '30'],
  ['Anaesthetic cartridge', 'piece', 'visit', '1', '45.00', '50'],
  ['Needle', 'piece', 'visit', '1', '14.00', '100'],
  ['Glove', 'piece', 'staff member', '3', '9.00', '100'],
  ['Mask', 'piece', 'staff member', '1', '8.00', '50'],
  ['Bib', 'piece', 'visit', '1', '22.50', '500'],
  ['Saliva ejector', 'piece', 'visit', '1', '5.00', '100'],
  ['Suction tip', 'piece', 'visit', '1', '9.00', '100'],
  ['Air and water tip', 'piece', 'visit', '1', '24.00', '200'],
  ['Dam', 'piece', 'front segment or quadrant', '1', '18.00', '36'],
  ['Light sleeve', 'piece', 'visit', '1', '12.00', '100'],
  ['Syringe sleeve', 'piece', 'visit', '3', '6.00', '100'],
  ['Articulating paper', 'piece', 'visit', '1', '14.00', '200'],
];

const TOOTH_PART: Row[] = [
  ['Cutting bur', 'use', 'tooth', '1', '37.50', '25'],
  ['Finishing bur', 'use', 'tooth', '1', '10.00', '5'],
  ['Etching gel', 'mL', 'tooth', '0.08', '20.00', '4.8'],
  ['Etch tip', 'piece', 'tooth', '1', '20.00', '100'],
  ['Micro-applicator', 'piece', 'tooth', '2', '9.00', '100'],
  ['Adhesive', 'mL', 'restoration', '0.03', '110.00', '5'],
  ['Composite', 'g', 'restoration', '0.06', '72.00', '4'],
  ['Clear matrix strip', 'piece', 'proximal surface', '1', '7.00', '100'],
  ['Wedge', 'piece', 'proximal surface', '1', '12.00', '100'],
  ['Finishing strip', 'piece', 'proximal surface', '1', '38.00', '100'],
  ['Disc', 'piece', 'restoration', '3', '45.00', '50'],
  ['Polishing paste', 'g', 'restoration', '0.05', '28.00', '4'],
];

const SINGLE_DOSES: Row[] = [
  ['Composite capsule', 'g', 'restoration', '0.06', '110.00', '0.25'],
  ['Adhesive single dose', 'mL', 'restoration', '0.03', '125.00', '0.1'],
];
const DOSES_PER_PACK = new Map([
  ['Composite capsule', 20],
  ['Adhesive single dose', 50],
]);

let service: TestService;
let book: TestBook;
let room: string;
let template: string;
let singleDoseTemplate: string;

beforeAll(async () => {
  service = await TestService.start();
  book = await TestBook.open(service, 'check');
  room = await book.location('Room', 'room');
  const supplier = await book.supplier();
  const ids = new Map<string, string>();
  const lines: object[] = [];
  for (const row of [...VISIT_PART, ...TOOTH_PART, ...SINGLE_DOSES]) {
    const [name, unit, , , packPrice, holds] = row;
    const doses = DOSES_PER_PACK.get(name);
    const piece = unit === 'piece' || unit === 'use';
    const dispensing = doses ? 'single-dose' : piece ? 'by-piece' : 'multi-use';
    const id = await book.consumable(name, VISIT_PART.includes(row) ? 'visit' : 'tooth', unit);
    const pack = piece ? [Number(holds), '1'] : [doses ?? 1, holds];
    const presentationId = await book.presentation(
      id,
      dispensing,
      pack[0] as number,
      pack[1] as string,
    );
    lines.push({ presentationId, locationId: room, packs: 2, packPrice });
    ids.set(name, id);
  }
  await book.deliver(supplier, '2026-01-05', lines);
  const planned = (rows: Row[]) =>
    rows.map(([name, , driver, dispensed]) => ({
      consumableId: ids.get(name),
      driver,
      dispensed,
      placed: '0',
    }));
  template = await book.template('Class III', planned([...VISIT_PART, ...TOOTH_PART]));
  const others = TOOTH_PART.filter(([name]) => name !== 'Composite' && name !== 'Adhesive');
  singleDoseTemplate = await book.template(
    'Class III, single doses',
    planned([...VISIT_PART, ...others, ...SINGLE_DOSES]),
  );
});

afterAll(() => service.stop());

function post(teeth: string[], templateId: string): Promise<Visit> {
  return book.done<Visit>('POST', '/visits', {
    chartReference: 'C-1',
    visitedOn: '2026-05-04',
    dentistId: book.practice.people.dentist.id,
    locationId: room,
    restorations: teeth.map((tooth) => ({
      tooth,
      surfaces: 'M',
      cavityClass: 'III',
      reason: 'decay',
      templateId,
    })),
  });
}

function micro(costs: readonly string[]): number {
  return costs.reduce((sum, cost) => sum + Math.round(Number(cost) * 1e6), 0);
}

describe('the check visit, through the whole service', () => {
  it('costs 12.74, of which 3.165 for the visit', async () => {
    const visit = await post(['11'], template);
    expect(visit.materialCost).toBe('12.74');
    expect(micro(visit.usage.map((line) => line.cost))).toBe(12_738_333);
    const ofVisit = visit.usage.filter((line) =>
      VISIT_PART.some(([n]) => n === line.consumable.name),
    );
    expect(micro(ofVisit.map((line) => line.cost))).toBe(3_165_000);
  });

  it('costs 9.57 more for a second tooth', async () => {
    const visit = await post(['11', '21'], template);
    // 12.738333 + 9.573333
    expect(micro(visit.usage.map((line) => line.cost))).toBe(22_311_667);
    expect(visit.materialCost).toBe('22.31');
    expect(visit.restorations.map((r) => r.cost.total).sort()).toEqual(['11.15', '11.16']);
  });

  it('costs 19.00 with single doses, charged whole', async () => {
    const visit = await post(['11'], singleDoseTemplate);
    expect(visit.materialCost).toBe('19.00');
    const charged = visit.usage
      .filter((line) => DOSES_PER_PACK.has(line.consumable.name))
      .map((line) => [line.dispensed, line.charged, line.cost]);
    expect(charged).toEqual([
      ['0.06', '0.25', '5.50'],
      ['0.03', '0.1', '2.50'],
    ]);
  });

  it('adds up in the report to what the visits cost', async () => {
    const report = await book.done<{ totals: { total: string; restorations: number } }>(
      'GET',
      '/reports/restoration-costs?groupBy=template',
    );
    // 12.74 + 22.31 + 19.00
    expect(report.totals).toMatchObject({ total: '54.05', restorations: 4 });
  });
});
