import { randomUUID } from 'node:crypto';
import type { Role } from '../../libs/platform/src/index.js';
import { type Answer, type Sent, type TestPractice, TestService } from '../http/service.js';

/** One practice's book on a running service, asked as the people of the practice ask it. */
export class TestBook {
  private constructor(
    readonly service: TestService,
    readonly practice: TestPractice,
  ) {}

  static async open(service: TestService, prefix: string): Promise<TestBook> {
    return new TestBook(service, await service.openPractice(prefix));
  }

  ask(
    method: string,
    path: string,
    body?: unknown,
    role: Role = 'owner',
    sent: Sent = {},
  ): Promise<Answer> {
    const { cookie } = this.practice.people[role];
    return this.service.send(method, `/api${path}`, {
      cookie,
      ...sent,
      ...(body === undefined ? {} : { body }),
      headers: { 'idempotency-key': randomUUID(), ...sent.headers },
    });
  }

  /** Asks and insists on success. */
  async done<T = Record<string, string>>(method: string, path: string, body?: unknown): Promise<T> {
    const answer = await this.ask(method, path, body);
    if (answer.status >= 300) throw new Error(`${method} ${path}: ${answer.status} ${answer.text}`);
    return answer.body as T;
  }

  async supplier(name = 'Northgate Supply'): Promise<string> {
    return (await this.done('POST', '/suppliers', { name })).id ?? '';
  }

  async location(name: string, kind: string, parentId?: string): Promise<string> {
    return (
      (await this.done('POST', '/locations', { name, kind, parentId: parentId ?? null })).id ?? ''
    );
  }

  async consumable(
    name: string,
    category: string,
    stockUnit: string,
    more: object = {},
  ): Promise<string> {
    return (
      (await this.done('POST', '/consumables', { name, category, stockUnit, ...more })).id ?? ''
    );
  }

  async presentation(
    consumableId: string,
    dispensing: string,
    containersPerPack: number,
    contentPerContainer: string,
    more: object = {},
  ): Promise<string> {
    const body = {
      consumableId,
      name: 'Pack',
      dispensing,
      containersPerPack,
      contentPerContainer,
      ...more,
    };
    return (await this.done('POST', '/presentations', body)).id ?? '';
  }

  async template(name: string, lines: object[], minutes = 40): Promise<string> {
    return (await this.done('POST', '/procedure-templates', { name, minutes, lines })).id ?? '';
  }

  async deliver(
    supplierId: string,
    receivedOn: string,
    lines: object[],
    more: object = {},
  ): Promise<Delivery> {
    return this.done<Delivery>('POST', '/deliveries', { supplierId, receivedOn, lines, ...more });
  }
}

export interface Delivery {
  readonly id: string;
  readonly lines: readonly {
    readonly layerId: string;
    readonly lot: { readonly id: string };
  }[];
}

export interface Visit {
  readonly id: string;
  readonly materialCost: string;
  readonly retakeCost: string;
  readonly estimated: boolean;
  readonly restorations: {
    readonly id: string;
    readonly tooth: string;
    readonly cost: { own: string; shared: string; retake: string; total: string };
  }[];
  readonly usage: UsageLine[];
}

export interface UsageLine {
  readonly line: string | null;
  readonly restoration: number | null;
  readonly consumable: { readonly id: string; readonly name: string };
  readonly planned: string;
  readonly placed: string;
  readonly dispensed: string;
  readonly charged: string;
  readonly cost: string;
  readonly shortfall: string;
  readonly taken: {
    readonly movementId: string;
    readonly lotId: string;
    readonly lotNumber: string | null;
    readonly quantity: string;
    readonly cost: string;
    readonly sureness: string;
    readonly outOfOrder: boolean;
  }[];
}

/** A book with a store and a room, six consumables, and a template that uses them. */
export interface SmallBook {
  readonly book: TestBook;
  readonly supplier: string;
  readonly store: string;
  readonly room: string;
  readonly otherRoom: string;
  readonly etchant: Item;
  readonly adhesive: Item;
  readonly paste: Item;
  readonly capsule: Item;
  readonly strip: Item;
  readonly bib: Item;
  readonly template: string;
  readonly capsuleTemplate: string;
}

export interface Item {
  readonly id: string;
  readonly presentation: string;
}

async function item(
  book: TestBook,
  consumable: Parameters<TestBook['consumable']>,
  pack: [dispensing: string, containers: number, content: string, more?: object],
): Promise<Item> {
  const id = await book.consumable(...consumable);
  return {
    id,
    presentation: await book.presentation(id, pack[0], pack[1], pack[2], pack[3] ?? {}),
  };
}

export async function openSmallBook(service: TestService, prefix: string): Promise<SmallBook> {
  const book = await TestBook.open(service, prefix);
  const supplier = await book.supplier();
  const store = await book.location('Store', 'store');
  const room = await book.location('Room 1', 'room', store);
  const otherRoom = await book.location('Room 2', 'room', store);
  const places = { book, supplier, store, room, otherRoom };
  return { ...places, ...(await stockCatalogue(book, '')) };
}

type Catalogue = Omit<SmallBook, 'book' | 'supplier' | 'store' | 'room' | 'otherRoom'>;

/** The same practice with another six consumables and templates of their own. */
export async function withFreshCatalogue(s: SmallBook, mark: string): Promise<SmallBook> {
  return { ...s, ...(await stockCatalogue(s.book, ` ${mark}`)) };
}

export function consumablesOf(s: SmallBook): string[] {
  return [s.etchant, s.adhesive, s.paste, s.capsule, s.strip, s.bib].map((each) => each.id);
}

async function stockCatalogue(book: TestBook, mark: string): Promise<Catalogue> {
  const etchant = await item(
    book,
    [`Etchant gel${mark}`, 'etchant', 'mL'],
    ['multi-use', 1, '4.8'],
  );
  const life = { lifeAfterOpening: { value: 6, unit: 'month' } };
  const adhesive = await item(
    book,
    [`Adhesive${mark}`, 'adhesive', 'mL', life],
    ['multi-use', 1, '5'],
  );
  const paste = await item(
    book,
    [`Paste${mark}`, 'composite', 'g', { shade: 'Body 2' }],
    ['multi-use', 1, '4', { listPrice: '72' }],
  );
  const capsule = await item(
    book,
    [`Paste in capsules${mark}`, 'composite', 'g', { shade: 'Enamel light' }],
    ['single-dose', 20, '0.25'],
  );
  const strip = await item(
    book,
    [`Clear matrix strip${mark}`, 'matrix', 'piece'],
    ['by-piece', 100, '1'],
  );
  const bib = await item(book, [`Patient bib${mark}`, 'set-up', 'piece'], ['by-piece', 500, '1']);
  const line = (consumableId: string | null, driver: string, dispensed: string, placed = '0') => ({
    consumableId,
    driver,
    dispensed,
    placed,
  });
  const common = [
    line(bib.id, 'visit', '1'),
    line(etchant.id, 'tooth', '0.08'),
    line(adhesive.id, 'restoration', '0.03', '0.02'),
    line(strip.id, 'proximal surface', '1'),
  ];
  const shade = { ...line(null, 'restoration', '0.06', '0.04'), everyAttempt: true };
  const template = await book.template(`Front tooth composite${mark}`, [...common, shade]);
  const capsuleTemplate = await book.template(`Capsule composite${mark}`, [
    ...common,
    { ...line(capsule.id, 'attempt', '0.1', '0.08') },
  ]);
  return { etchant, adhesive, paste, capsule, strip, bib, template, capsuleTemplate };
}

export function deliveryLine(
  of: Item,
  locationId: string,
  packs: number,
  packPrice: string,
  more: object = {},
) {
  return { presentationId: of.presentation, locationId, packs, packPrice, ...more };
}

/** The body of a visit that restores one front tooth. */
export function visitBody(s: SmallBook, changes: object = {}): Record<string, unknown> {
  return {
    chartReference: 'C-1001',
    visitedOn: '2026-05-04',
    dentistId: s.book.practice.people.dentist.id,
    locationId: s.room,
    restorations: [restoration(s)],
    ...changes,
  };
}

export function restoration(s: SmallBook, changes: object = {}): Record<string, unknown> {
  return {
    tooth: '21',
    surfaces: 'M',
    cavityClass: 'III',
    reason: 'decay',
    templateId: s.template,
    shades: [s.paste.id],
    ...changes,
  };
}

/** The small book with one delivery of everything. */
export async function openStockedBook(service: TestService, prefix: string): Promise<SmallBook> {
  const s = await openSmallBook(service, prefix);
  await s.book.deliver(s.supplier, '2026-01-05', [
    deliveryLine(s.etchant, s.store, 1, '20', { lotNumber: 'E-1', expiresOn: '2027-01-31' }),
    deliveryLine(s.adhesive, s.store, 1, '110', { lotNumber: 'A-1', expiresOn: '2027-01-31' }),
    deliveryLine(s.paste, s.store, 1, '72', { lotNumber: 'P-1', expiresOn: '2027-06-30' }),
    deliveryLine(s.strip, s.store, 1, '7'),
    deliveryLine(s.bib, s.store, 1, '22.50'),
    deliveryLine(s.capsule, s.store, 1, '110', { lotNumber: 'K-1', expiresOn: '2027-03-31' }),
  ]);
  return s;
}

export function postVisit(s: SmallBook, changes: object = {}): Promise<Visit> {
  return s.book.done<Visit>('POST', '/visits', visitBody(s, changes));
}

/** The first usage line of a consumable. */
export function lineOf(visit: Visit, consumableId: string): UsageLine {
  const line = visit.usage.find((l) => l.consumable.id === consumableId);
  if (!line) throw new Error(`No line of ${consumableId}`);
  return line;
}

export { TestService };
