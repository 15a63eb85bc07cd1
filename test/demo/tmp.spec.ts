import { it } from '@jest/globals';
import { workdaysUpTo } from './calendar.js';
import { planUsage } from './plan-usage.js';
import { buildScenario } from './scenario.js';
import { visitsOf } from './visits.js';

it('prints', () => {
  const t0 = Date.now();
  const days = workdaysUpTo('2026-11-25');
  const v = days.flatMap((day, i) => visitsOf({ day, secondVersions: i > 180 }));
  const t1 = Date.now();
  v.map(planUsage);
  const t2 = Date.now();
  const out = [`visits ${t1 - t0} plan ${t2 - t1}`];
  for (const today of ['2026-11-25', '2028-02-29', '2027-01-02', '2026-08-14', '2027-07-05']) {
    const t = Date.now();
    try {
      const s = buildScenario(today);
      const kinds: Record<string, number> = {};
      for (const step of s.steps) kinds[step.kind] = (kinds[step.kind] ?? 0) + 1;
      out.push(
        today,
        JSON.stringify({
          ms: Date.now() - t,
          days: s.world.days.length,
          kinds,
          short: s.world.shortfalls.length,
        }),
      );
      out.push(
        JSON.stringify(
          s.world.shortfalls.reduce(
            (m: Record<string, number>, f) => ({
              ...m,
              [f.consumable]: (m[f.consumable] ?? 0) + 1,
            }),
            {},
          ),
        ),
      );
      for (const st of s.steps)
        if (st.kind === 'lotStatus' || st.kind === 'return') {
          const layer = s.world.shelf
            .all()
            .find((l) => st.kind === 'lotStatus' && l.lot === st.payload.lot.lotNumber && l.held);
          out.push(
            `${st.date} ${st.kind} ${JSON.stringify(st.payload)} charts ${layer?.charts.size} ${layer?.consumable.key} ${JSON.stringify([...(layer?.sealed ?? [])])} ${JSON.stringify(layer?.opened)}`,
          );
        }
    } catch (e) {
      out.push(today, String(e));
    }
  }
  process.stdout.write(`${out.join('\n')}\n`);
});
