import { afterAll, beforeAll, it } from '@jest/globals';
import type pg from 'pg';
import { asOwner } from '../harness/database.js';
import { deliveryLine, openSmallBook, restoration, type SmallBook, TestService, visitBody, withFreshCatalogue, type Visit } from './book.js';
let service: TestService; let owner: pg.Client; let shared: SmallBook; let n = 0;
beforeAll(async () => { service = await TestService.start(); owner = await asOwner(service.databaseUrl); shared = await openSmallBook(service, 'probe'); });
afterAll(async () => { await owner.end(); await service.stop(); });
const fresh = () => withFreshCatalogue(shared, String(++n));
const hold = async (id: string) => (await owner.query<{id:string,on_hand:string,opened_on:string|null,location_id:string}>('SELECT h.id,h.on_hand,h.opened_on::text,h.location_id FROM holdings h JOIN layers l ON l.id=h.layer_id WHERE l.consumable_id=$1 ORDER BY h.id',[id])).rows;
const show = (what: string, x: unknown) => process.stdout.write(`## ${what}: ${typeof x === 'string' ? x : JSON.stringify(x)}\n`);
const st = (a: {status:number, text:string}) => `${a.status} ${a.text.slice(0, 400)}`;

it('A reversed delivery, then count up', async () => {
  const s = await fresh();
  const d = await s.book.deliver(s.supplier, '2026-01-05', [deliveryLine(s.strip, s.store, 1, '7', { lotNumber: 'X' })]);
  await s.book.done('POST', `/deliveries/${d.id}/reversal`, { note: 'x' });
  const [h] = await hold(s.strip.id);
  show('A count on reversed', st(await s.book.ask('POST', '/counts', { lines: [{ holdingId: h?.id, counted: '5' }] })));
  show('A holdings', await hold(s.strip.id));
});
it('B scanned lot with only an over-age opened container', async () => {
  const s = await fresh();
  const d = await s.book.deliver(s.supplier, '2025-01-05', [deliveryLine(s.adhesive, s.store, 1, '110', { lotNumber: 'OLD', expiresOn: '2028-01-31' })]);
  const [h] = await hold(s.adhesive.id);
  await s.book.done('POST', '/stock/openings', { holdingId: h?.id, openedOn: '2025-01-06' });
  await s.book.deliver(s.supplier, '2025-01-05', [deliveryLine(s.adhesive, s.store, 1, '110', { lotNumber: 'NEW', expiresOn: '2028-01-31' })]);
  const a = await s.book.ask('POST', '/visits', visitBody(s, { scanned: [{ lotId: d.lines[0]?.lot.id }] }));
  show('B', a.status + JSON.stringify((a.body as unknown as Visit).usage?.find((l) => l.consumable.id === s.adhesive.id)) + (a.status > 299 ? a.text : ''));
});
it('C count two holdings of a layer, gain first', async () => {
  const s = await fresh();
  await s.book.deliver(s.supplier, '2026-01-05', [deliveryLine(s.strip, s.store, 1, '7')]);
  const [h] = await hold(s.strip.id);
  const m = await s.book.done<{holdingId:string}>('POST', '/stock/moves', { holdingId: h?.id, toLocationId: s.room, quantity: '40' });
  show('C gain first', st(await s.book.ask('POST', '/counts', { lines: [{ holdingId: m.holdingId, counted: '42' }, { holdingId: h?.id, counted: '58' }] })));
  show('C loss first', st(await s.book.ask('POST', '/counts', { lines: [{ holdingId: h?.id, counted: '58' }, { holdingId: m.holdingId, counted: '42' }] })));
});
it('D reverse move twice', async () => {
  const s = await fresh();
  await s.book.deliver(s.supplier, '2026-01-05', [deliveryLine(s.strip, s.store, 1, '7')]);
  const [h] = await hold(s.strip.id);
  const m = await s.book.done<{movementIds:string[]}>('POST', '/stock/moves', { holdingId: h?.id, toLocationId: s.room, quantity: '40' });
  await s.book.done('POST', `/movements/${m.movementIds[0]}/reversal`, { note: 'x' });
  show('D again', st(await s.book.ask('POST', `/movements/${m.movementIds[0]}/reversal`, { note: 'x' })));
});
it('E delivery reversal with use outstanding, hidden by a count', async () => {
  const s = await fresh();
  const d = await s.book.deliver(s.supplier, '2026-01-05', [deliveryLine(s.bib, s.store, 1, '7', { lotNumber: 'B' })]);
  const v = await s.book.done<Visit>('POST', '/visits', visitBody(s));
  const [h] = await hold(s.bib.id);
  await s.book.done('POST', '/counts', { lines: [{ holdingId: h?.id, counted: '500' }] });
  show('E reversal', st(await s.book.ask('POST', `/deliveries/${d.id}/reversal`, { note: 'x' })));
  show('E visit reversal', (await s.book.ask('POST', `/visits/${v.id}/reversal`, { note: 'x' })).status);
  show('E holdings', await hold(s.bib.id));
});
it('F scanned lot shortfall settled by later delivery of it: sureness', async () => {
  const s = await fresh();
  const d = await s.book.deliver(s.supplier, '2026-01-05', [deliveryLine(s.bib, s.store, 1, '7', { lotNumber: 'B' })]);
  const [h] = await hold(s.bib.id);
  await s.book.done('POST', '/stock/write-offs', { holdingId: h?.id, quantity: '500', reason: 'damaged' });
  const v = await s.book.done<Visit>('POST', '/visits', visitBody(s, { scanned: [{ lotId: d.lines[0]?.lot.id }] }));
  await s.book.deliver(s.supplier, '2026-06-05', [deliveryLine(s.bib, s.store, 1, '7', { lotNumber: 'B' })]);
  const w = await s.book.done<Visit>('GET', `/visits/${v.id}`);
  show('F', w.usage.find((l) => l.consumable.id === s.bib.id));
});
it('G late entry: visit before receipt while stock is there', async () => {
  const s = await fresh();
  await s.book.deliver(s.supplier, '2026-06-05', [deliveryLine(s.bib, s.store, 1, '7', { lotNumber: 'B' })]);
  const v = await s.book.done<Visit>('POST', '/visits', visitBody(s));
  show('G', v.usage.find((l) => l.consumable.id === s.bib.id));
});
it('H late entry: the container was opened later', async () => {
  const s = await fresh();
  await s.book.deliver(s.supplier, '2026-01-05', [deliveryLine(s.paste, s.store, 1, '72', { lotNumber: 'P' })]);
  await s.book.done<Visit>('POST', '/visits', visitBody(s, { visitedOn: '2026-05-05' }));
  const v = await s.book.done<Visit>('POST', '/visits', visitBody(s, { visitedOn: '2026-05-04' }));
  show('H', v.usage.find((l) => l.consumable.id === s.paste.id));
});
it('I wrong delivery that settled a shortfall', async () => {
  const s = await fresh();
  await s.book.done<Visit>('POST', '/visits', visitBody(s));
  const d = await s.book.deliver(s.supplier, '2026-06-05', [deliveryLine(s.bib, s.store, 1, '7', { lotNumber: 'B' })]);
  show('I', st(await s.book.ask('POST', `/deliveries/${d.id}/reversal`, { note: 'x' })));
});
it('J bodies', async () => {
  const s = await fresh();
  for (const body of ['null', '[]', '[{}]', '"x"', '3', 'true', '{', '', '{"a":1}']) {
    for (const path of ['/visits', '/visits/preview', '/counts', '/deliveries', '/stock/moves']) {
      const a = await s.book.ask('POST', path, body, 'owner');
      show(`J ${path} ${body}`, `${a.status} ${a.body.code} ${JSON.stringify(a.body.errors)?.slice(0, 200)}`);
    }
  }
  const big = await s.book.ask('POST', '/visits', `{"x":"${'a'.repeat(10_000_000)}"}`);
  show('J big', st(big));
});
it('K visit reversal after the opened container was carried', async () => {
  const s = await fresh();
  await s.book.deliver(s.supplier, '2026-01-05', [deliveryLine(s.paste, s.store, 1, '72', { lotNumber: 'P' })]);
  const v = await s.book.done<Visit>('POST', '/visits', visitBody(s));
  const open = (await hold(s.paste.id)).find((h) => h.opened_on !== null);
  await s.book.done('POST', '/stock/moves', { holdingId: open?.id, toLocationId: s.otherRoom, quantity: '3.94' });
  await s.book.done('POST', `/visits/${v.id}/reversal`, { note: 'x' });
  show('K', await hold(s.paste.id));
});
it('L dup ids', async () => {
  const s = await fresh();
  const id = '0199c0de-0000-7000-8000-0000000000aa';
  show('L1', st(await s.book.ask('POST', '/visits', visitBody(s, { restorations: [restoration(s, { id }), restoration(s, { id, tooth: '11' })] }))));
  await s.book.done('POST', '/visits', visitBody(s, { id }));
  show('L2', st(await s.book.ask('POST', '/visits', visitBody(s, { id }))));
});
