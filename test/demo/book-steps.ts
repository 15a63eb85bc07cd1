import type { INestApplicationContext } from '@nestjs/common';
import { CreatePerson } from '#lib/access';
import {
  CreateConsumable,
  CreateLocation,
  CreatePresentation,
  CreateSupplier,
} from '#lib/catalogue';
import { formatQuantity, quantity, quantityFromMicro } from '#lib/measure';
import { type Actor, UnitOfWork } from '#lib/platform';
import { CreateTemplate, CreateTemplateVersion } from '#lib/procedures';
import {
  CountStock,
  MoveStock,
  OpenContainer,
  ReceiveDelivery,
  ReturnStock,
  ReverseDelivery,
  SetLotStatus,
  WriteOffStock,
} from '#lib/stock';
import { PostVisit, ReverseVisit } from '#lib/visits';
import { atMost, BookReader, bookingKey, locationId, PRACTICE_ID } from './book-reader.js';
import { bookedRuns } from './booked-steps.js';
import { buyingRuns } from './buying-steps.js';
import { consumableId } from './catalogue.js';
import { demoId } from './dice.js';
import { newConsumable, newPresentation, newVersion, packId } from './master-rows.js';
import { moneyRuns } from './money-steps.js';
import { OrderSteps } from './order-steps.js';
import { PEOPLE, PLACES, PRACTICE, SUPPLIERS } from './practice.js';
import type { Step, StepKind, StepOf } from './steps.js';
import { templateId, templateOf } from './templates.js';

export function personId(signInName: string): string {
  return demoId('person', signInName);
}

function actorOf(signInName: string): Actor {
  const person = PEOPLE.find((each) => each.signInName === signInName);
  if (!person) throw new Error(`Nobody of the demo signs in as ${signInName}`);
  const { displayName, role } = person;
  const { name, ...settings } = PRACTICE;
  const practice = { practiceId: PRACTICE_ID, practiceName: name, ...settings };
  return { personId: personId(signInName), displayName, signInName, role, ...practice };
}

type Run<K extends StepKind> = (step: StepOf<K>, key: string) => Promise<unknown>;
type Runs = { readonly [K in StepKind]: Run<K> };

/** Does the steps of the scenario through the same use cases that answer HTTP. */
export class BookSteps {
  readonly owner = actorOf('owner');
  readonly manager = actorOf('manager');
  private readonly assistant = actorOf('assistant');
  private readonly reader: BookReader;
  private readonly runs: Runs;

  constructor(
    private readonly app: INestApplicationContext,
    private readonly day: string,
  ) {
    this.reader = new BookReader(app.get(UnitOfWork, { strict: false }));
    const money = moneyRuns(app, this.reader, this);
    const more = { ...bookedRuns(app, this), ...buyingRuns(app, this.reader, this.manager) };
    this.runs = { ...this.masterData(), ...this.goods(), ...this.visits(), ...money, ...more };
  }

  async run(step: Step): Promise<void> {
    const run = this.runs[step.kind] as Run<StepKind>;
    await run(step, bookingKey(this.day, step.key));
  }

  /** The name by which BookReader.present() knows that a step is done; undefined: look at it again. */
  nameOf(step: Step): string | undefined {
    switch (step.kind) {
      case 'person':
        return personId(step.payload.signInName);
      case 'supplier':
        return demoId('supplier', step.payload.supplier);
      case 'location':
        return locationId(step.payload.place);
      case 'consumable':
        return consumableId(step.payload.consumable);
      case 'presentation':
        return packId(step.payload);
      case 'template':
        return `${templateId(step.payload.template)}/1`;
      case 'templateVersion':
        return `${templateId(step.payload.template)}/${step.payload.version}`;
      case 'kit':
      case 'priceList':
      case 'lotStatus':
      case 'costRate':
      case 'bookings':
        return undefined;
      default:
        return bookingKey(this.day, step.key);
    }
  }

  private get<T>(useCase: new (...args: never[]) => T): T {
    return this.app.get<T>(useCase, { strict: false });
  }

  private masterData() {
    const createPerson = this.get(CreatePerson);
    const createSupplier = this.get(CreateSupplier);
    const createLocation = this.get(CreateLocation);
    const createConsumable = this.get(CreateConsumable);
    const createPresentation = this.get(CreatePresentation);
    const createTemplate = this.get(CreateTemplate);
    const createVersion = this.get(CreateTemplateVersion);
    const { owner, manager } = this;
    return {
      person: ({ payload: { signInName } }) => {
        const person = PEOPLE.find((each) => each.signInName === signInName);
        if (!person) throw new Error(`Nobody of the demo signs in as ${signInName}`);
        return createPerson.run(owner, person, personId(signInName));
      },
      supplier: ({ payload: { supplier } }) => {
        const { name, email } = SUPPLIERS[supplier];
        return createSupplier.run(manager, { id: demoId('supplier', supplier), name, email });
      },
      location: ({ payload: { place } }) => {
        const { name, kind, parent } = PLACES[place];
        const parentId = parent === null ? null : locationId(parent);
        return createLocation.run(manager, { id: locationId(place), name, kind, parentId });
      },
      consumable: ({ payload }) => createConsumable.run(manager, newConsumable(payload)),
      presentation: ({ payload }) => createPresentation.run(manager, newPresentation(payload)),
      template: ({ payload: { template } }) => {
        const { name, versions } = templateOf(template);
        const id = templateId(template);
        return createTemplate.run(owner, { id, name, ...newVersion(versions[0]) });
      },
      templateVersion: ({ payload: { template, version } }) => {
        const content = templateOf(template).versions[version - 1];
        if (!content) throw new Error(`The template ${template} has no version ${version}`);
        return createVersion.run(owner, templateId(template), newVersion(content));
      },
    } satisfies Partial<Runs>;
  }

  private goods() {
    const receive = this.get(ReceiveDelivery);
    const orders = new OrderSteps(this.app, this.manager);
    const reverse = this.get(ReverseDelivery);
    const { manager, reader } = this;
    return {
      order: (step, key) => orders.run(step, key),
      delivery: async ({ payload }, key) => {
        const { supplier, lines, order, ...more } = payload;
        const ordered = order ? await orders.place(key, supplier, order) : undefined;
        return receive.run(manager, key, {
          ...more,
          supplierId: demoId('supplier', supplier),
          lines: lines.map(({ consumable: _, place, parts, ...line }) => ({
            ...line,
            ...(parts ? { parts: [...parts] } : {}),
            locationId: locationId(place),
            orderLineId: ordered?.get(line.presentationId) ?? null,
          })),
        });
      },
      reverseDelivery: async ({ payload: { reference, note } }, key) =>
        reverse.run(manager, key, await reader.deliveryId(reference), { note }),
      ...this.handling(),
    } satisfies Partial<Runs>;
  }

  /** Where nothing is left of the goods that the scenario names, there is nothing to be done. */
  private handling() {
    const moveStock = this.get(MoveStock);
    const openContainer = this.get(OpenContainer);
    const writeOffStock = this.get(WriteOffStock);
    const returnStock = this.get(ReturnStock);
    const countStock = this.get(CountStock);
    const setLotStatus = this.get(SetLotStatus);
    const { manager, assistant, reader } = this;
    return {
      move: async ({ date, payload: { from, to, quantity: wanted } }, key) => {
        const found = await reader.holding(from);
        if (!found) return;
        const { holdingId } = found;
        const amount = { quantity: atMost(wanted, found), occurredOn: date };
        await moveStock.run(assistant, key, {
          holdingId,
          toLocationId: locationId(to),
          ...amount,
        });
      },
      opening: async ({ date, payload: { from } }, key) => {
        const found = await reader.holding(from);
        if (!found) return;
        await openContainer.run(assistant, key, { holdingId: found.holdingId, openedOn: date });
      },
      writeOff: async ({ date, payload: { from, quantity: wanted, reason, note } }, key) => {
        const found = await reader.holding(from);
        if (!found) return;
        const amount = wanted === null ? formatQuantity(found.onHand) : atMost(wanted, found);
        const what = { holdingId: found.holdingId, quantity: amount, occurredOn: date };
        await writeOffStock.run(assistant, key, { ...what, reason, note });
      },
      return: async ({ date, payload: { from, quantity: wanted, note } }, key) => {
        const found = await reader.holding(from);
        if (!found) return;
        const what = { holdingId: found.holdingId, quantity: atMost(wanted, found) };
        await returnStock.run(manager, key, { ...what, note, occurredOn: date });
      },
      count: async ({ date, payload: { of, difference } }, key) => {
        const found = await reader.holding(of);
        if (!found) return;
        const sum = difference === null ? 0n : found.onHand + quantity(difference);
        const counted = formatQuantity(quantityFromMicro(sum < 0n ? 0n : sum));
        const lines = [{ holdingId: found.holdingId, counted }];
        await countStock.run(manager, key, { countedOn: date, lines });
      },
      lotStatus: async ({ payload: { lot, status, note } }) => {
        const lotId = await reader.lotId(lot);
        if ((await reader.lotStatus(lotId)) === status) return;
        await setLotStatus.run(manager, lotId, { status, note });
      },
    } satisfies Partial<Runs>;
  }

  private visits() {
    const post = this.get(PostVisit);
    const reverse = this.get(ReverseVisit);
    const { manager, assistant, reader } = this;
    return {
      visit: async ({ payload }, key) => {
        const { dentist, room, scanned = [], ...body } = payload;
        const lots = await Promise.all(scanned.map((lot) => reader.lotId(lot)));
        return post.run(assistant, key, {
          ...body,
          dentistId: personId(dentist),
          locationId: locationId(room),
          ...(lots.length > 0 ? { scanned: lots.map((lotId) => ({ lotId })) } : {}),
        });
      },
      reverseVisit: ({ payload: { visitId, note } }, key) =>
        reverse.run(manager, key, visitId, { note }),
    } satisfies Partial<Runs>;
  }
}
