-- Moving what changed into the packed spans, a bounded step at a time, and building them anew.

CREATE FUNCTION span_start(span text, day date) RETURNS date LANGUAGE sql IMMUTABLE AS $$
  SELECT CASE span
    WHEN 'day' THEN day
    WHEN 'third' THEN day - CASE WHEN extract(day FROM day) > 20 THEN extract(day FROM day)::int - 21
                                 ELSE (extract(day FROM day)::int - 1) % 10 END
    ELSE date_trunc(span, day::timestamp)::date END
$$;

-- One pack less each of some others; the order within a pack means nothing.
CREATE FUNCTION costs_without(costs bytea, removed bytea, width integer) RETURNS bytea
LANGUAGE plpgsql IMMUTABLE AS $$
BEGIN
  IF removed = '' OR width = 0 THEN RETURN costs; END IF;
  RETURN (
    SELECT coalesce(string_agg(c.cost, ''::bytea), '') FROM (
      SELECT substring(costs, n * width + 1, width) AS cost
      FROM generate_series(0, length(costs) / width - 1) n
      EXCEPT ALL
      SELECT substring(removed, n * width + 1, width)
      FROM generate_series(0, length(removed) / width - 1) n
    ) c
  );
END $$;

-- A span taken apart again: a row per kind and width, and one per kind and category (width 0).
CREATE FUNCTION cells_of(s cost_spans)
RETURNS TABLE (kind integer, category_number integer, width smallint, restorations integer,
               visits integer, visits_of_template integer, visits_of_reason integer,
               visits_of_both integer, own_cost bigint, shared_cost bigint, retake_cost bigint,
               category_cost bigint, costs bytea)
LANGUAGE plpgsql IMMUTABLE AS $$ -- not inlined: the planner would take all spans apart at once
#variable_conflict use_column
BEGIN
  RETURN QUERY
  SELECT c.kind, NULL::integer, c.width, c.restorations, c.visits, c.visits_of_template,
         c.visits_of_reason, c.visits_of_both, c.own_cost, c.shared_cost, c.retake_cost, 0::bigint,
         substring(s.costs, (c.upto - c.width * c.restorations)::integer + 1,
                   c.width * c.restorations)
  FROM (
    SELECT u.*, sum(u.width * u.restorations) OVER (ORDER BY u.n) AS upto
    FROM unnest(s.kinds, s.widths, s.restorations, s.visits, s.visits_of_template,
                s.visits_of_reason, s.visits_of_both, s.own_costs, s.shared_costs, s.retake_costs)
      WITH ORDINALITY AS u(kind, width, restorations, visits, visits_of_template, visits_of_reason,
                           visits_of_both, own_cost, shared_cost, retake_cost, n)
  ) c
  UNION ALL
  SELECT u.kind, u.category_number, 0::smallint, 0, 0, 0, 0, 0, 0::bigint, 0::bigint, 0::bigint,
         u.cost, ''::bytea
  FROM unnest(s.category_kinds, s.categories, s.category_costs) AS u(kind, category_number, cost);
END $$;
CREATE VIEW cost_cells WITH (security_invoker = true) AS
SELECT s.practice_id, s.span, s.first_day, c.* FROM cost_spans s CROSS JOIN LATERAL cells_of(s) c;

-- Packs cells into spans. `cells` is SQL of WITH queries, the last of which has that name and, after
-- span and first_day, the columns of cost_cells and what is to be removed. $1 is `ids`.
CREATE FUNCTION store_cost_cells(of_practice uuid, cells text, ids bigint[]) RETURNS void
LANGUAGE plpgsql AS $$
BEGIN
  EXECUTE 'WITH ' || cells || $sql$, summed AS (
    SELECT span, first_day, kind, category_number, width, sum(restorations)::integer AS restorations,
           sum(visits)::integer AS visits, sum(visits_of_template)::integer AS visits_of_template,
           sum(visits_of_reason)::integer AS visits_of_reason,
           sum(visits_of_both)::integer AS visits_of_both, sum(own_cost)::bigint AS own_cost,
           sum(shared_cost)::bigint AS shared_cost, sum(retake_cost)::bigint AS retake_cost,
           sum(category_cost)::bigint AS category_cost,
           costs_without(string_agg(costs, ''::bytea), string_agg(removed, ''::bytea), width) AS costs
    FROM cells GROUP BY span, first_day, kind, category_number, width
  ), figures AS (
    SELECT span, first_day, array_agg(kind ORDER BY kind, width) AS kinds,
           array_agg(width ORDER BY kind, width) AS widths,
           array_agg(restorations ORDER BY kind, width) AS restorations,
           array_agg(visits ORDER BY kind, width) AS visits,
           array_agg(visits_of_template ORDER BY kind, width) AS visits_of_template,
           array_agg(visits_of_reason ORDER BY kind, width) AS visits_of_reason,
           array_agg(visits_of_both ORDER BY kind, width) AS visits_of_both,
           array_agg(own_cost ORDER BY kind, width) AS own_costs,
           array_agg(shared_cost ORDER BY kind, width) AS shared_costs,
           array_agg(retake_cost ORDER BY kind, width) AS retake_costs,
           string_agg(costs, ''::bytea ORDER BY kind, width) AS costs
    FROM summed WHERE restorations <> 0 GROUP BY span, first_day
  ), categories AS (
    SELECT span, first_day, array_agg(kind ORDER BY kind, category_number) AS category_kinds,
           array_agg(category_number ORDER BY kind, category_number) AS categories,
           array_agg(category_cost ORDER BY kind, category_number) AS category_costs
    FROM summed WHERE width = 0 AND category_cost <> 0 GROUP BY span, first_day
  )
  INSERT INTO cost_spans
  SELECT $2, s.span, s.first_day, coalesce(kinds, '{}'), coalesce(widths, '{}'),
         coalesce(restorations, '{}'), coalesce(visits, '{}'), coalesce(visits_of_template, '{}'),
         coalesce(visits_of_reason, '{}'), coalesce(visits_of_both, '{}'), coalesce(own_costs, '{}'),
         coalesce(shared_costs, '{}'), coalesce(retake_costs, '{}'), coalesce(costs, ''),
         coalesce(category_kinds, '{}'), coalesce(categories, '{}'), coalesce(category_costs, '{}')
  FROM (SELECT DISTINCT span, first_day FROM summed) s
  LEFT JOIN figures f ON f.span = s.span AND f.first_day = s.first_day
  LEFT JOIN categories c ON c.span = s.span AND c.first_day = s.first_day
  ON CONFLICT (practice_id, span, first_day) DO UPDATE
  SET (kinds, widths, restorations, visits, visits_of_template, visits_of_reason, visits_of_both,
       own_costs, shared_costs, retake_costs, costs, category_kinds, categories, category_costs)
    = (excluded.kinds, excluded.widths, excluded.restorations, excluded.visits,
       excluded.visits_of_template, excluded.visits_of_reason, excluded.visits_of_both,
       excluded.own_costs, excluded.shared_costs, excluded.retake_costs, excluded.costs,
       excluded.category_kinds, excluded.categories, excluded.category_costs)
  $sql$ USING ids, of_practice;
END $$;

-- Moves changes of a practice into its spans, so many at most, the earliest days first; answers how
-- many there were. Does nothing while somebody else is at it.
CREATE FUNCTION fold_cost_changes_of(of_practice uuid, most integer) RETURNS integer
LANGUAGE plpgsql AS $$
DECLARE
  ids bigint[];
BEGIN
  IF NOT pg_try_advisory_xact_lock(hashtextextended('fold costs of ' || of_practice, 0)) THEN
    RETURN 0;
  END IF;
  ids := ARRAY(SELECT id FROM cost_changes WHERE practice_id = of_practice ORDER BY day, id LIMIT most);
  IF cardinality(ids) = 0 THEN RETURN 0; END IF;
  INSERT INTO cost_kinds (practice_id, template_id, reason, dentist_id)
  SELECT DISTINCT c.practice_id, c.template_id, c.reason, c.dentist_id FROM cost_changes c
  WHERE c.practice_id = of_practice AND c.id = ANY(ids) AND NOT EXISTS (
    SELECT FROM cost_kinds k WHERE (k.practice_id, k.template_id, k.reason, k.dentist_id)
      = (c.practice_id, c.template_id, c.reason, c.dentist_id));
  INSERT INTO cost_categories (practice_id, category)
  SELECT DISTINCT c.practice_id, c.category FROM cost_changes c
  WHERE c.practice_id = of_practice AND c.id = ANY(ids) AND c.category IS NOT NULL AND NOT EXISTS (
    SELECT FROM cost_categories k WHERE (k.practice_id, k.category) = (c.practice_id, c.category));
  PERFORM store_cost_cells(of_practice, $sql$
    gone AS (
      DELETE FROM cost_changes WHERE practice_id = $2 AND id = ANY($1) RETURNING *
    ), changes AS (
      SELECT l.span, span_start(l.span, g.day) AS first_day, k.kind, c.category_number, g.width,
             g.restorations, g.visits, g.visits_of_template, g.visits_of_reason, g.visits_of_both,
             g.own_cost, g.shared_cost, g.retake_cost, g.category_cost, g.costs, g.removed
      FROM gone g
      JOIN cost_kinds k ON (k.practice_id, k.template_id, k.reason, k.dentist_id)
        = (g.practice_id, g.template_id, g.reason, g.dentist_id)
      LEFT JOIN cost_categories c ON (c.practice_id, c.category) = (g.practice_id, g.category)
      CROSS JOIN (VALUES ('year'), ('month'), ('third'), ('day')) l(span)
    ), cells AS (
      SELECT * FROM changes
      UNION ALL
      SELECT s.span, s.first_day, c.*, ''::bytea
      FROM (SELECT DISTINCT span, first_day FROM changes) d
      JOIN cost_spans s ON s.practice_id = $2 AND s.span = d.span AND s.first_day = d.first_day
      CROSS JOIN LATERAL cells_of(s) c
    )$sql$, ids);
  RETURN cardinality(ids);
END $$;

-- One step for every practice that has changes; the service asks for it from time to time, on behalf
-- of nobody. Answers how many changes were folded.
CREATE FUNCTION fold_cost_changes(most integer) RETURNS integer
LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
DECLARE
  of_practice uuid;
  folded integer := 0;
BEGIN
  FOR of_practice IN SELECT id FROM practices p
    WHERE EXISTS (SELECT FROM cost_changes c WHERE c.practice_id = p.id) ORDER BY id
  LOOP
    folded := folded + fold_cost_changes_of(of_practice, most);
  END LOOP;
  RETURN folded;
END $$;

-- Makes the spans of a practice from its restorations: each level from the one below.
CREATE FUNCTION build_cost_spans(of_practice uuid) RETURNS void LANGUAGE plpgsql AS $$
DECLARE
  levels text[] := ARRAY['day', 'third', 'month', 'year'];
BEGIN
  DELETE FROM cost_changes WHERE practice_id = of_practice;
  DELETE FROM cost_spans WHERE practice_id = of_practice;
  INSERT INTO cost_kinds (practice_id, template_id, reason, dentist_id)
  SELECT DISTINCT of_practice, r.template_id, r.reason, v.dentist_id
  FROM restorations r JOIN visits v ON v.id = r.visit_id WHERE v.practice_id = of_practice
  ON CONFLICT DO NOTHING;
  INSERT INTO cost_categories (practice_id, category)
  SELECT of_practice, category FROM restoration_costs WHERE practice_id = of_practice
  UNION SELECT of_practice, '' ON CONFLICT DO NOTHING;
  PERFORM store_cost_cells(of_practice, $sql$
    live AS (
      SELECT v.visited_on, v.material_cost, k.kind, r.*
      FROM visits v JOIN restorations r ON r.visit_id = v.id
      JOIN cost_kinds k ON (k.practice_id, k.template_id, k.reason, k.dentist_id)
        = (v.practice_id, r.template_id, r.reason, v.dentist_id)
      WHERE v.practice_id = $2 AND v.reversed_at IS NULL
    ), cells AS (
      SELECT 'day' AS span, l.visited_on AS first_day, l.kind, NULL::integer AS category_number,
             f.width, 1 AS restorations, f.visits, f.visits_of_template, f.visits_of_reason,
             f.visits_of_both, f.own_cost, f.shared_cost, f.retake_cost, 0::bigint AS category_cost,
             f.costs, ''::bytea AS removed
      FROM live l CROSS JOIN LATERAL restoration_figures(l.visit_id, l.position, l.template_id,
        l.reason, l.own_cost, l.shared_cost, l.retake_cost) f
      UNION ALL
      SELECT 'day', l.visited_on, l.kind, k.category_number, 0, 0, 0, 0, 0, 0, 0, 0, 0,
             micros(c.cost), '', ''
      FROM live l JOIN restoration_costs c ON c.restoration_id = l.id
      JOIN cost_categories k ON (k.practice_id, k.category) = (c.practice_id, c.category)
      UNION ALL
      SELECT 'day', l.visited_on, l.kind, k.category_number, 0, 0, 0, 0, 0, 0, 0, 0, 0,
             micros(l.material_cost), '', ''
      FROM live l JOIN cost_categories k ON (k.practice_id, k.category) = (l.practice_id, '')
      WHERE NOT EXISTS (
        SELECT FROM restorations o WHERE o.visit_id = l.visit_id AND o.position < l.position)
    )$sql$, '{}');
  FOR n IN 2..4 LOOP
    PERFORM store_cost_cells(of_practice, format($sql$
      cells AS (
        SELECT %1$L AS span, span_start(%1$L, c.first_day) AS first_day, c.kind, c.category_number,
               c.width, c.restorations, c.visits, c.visits_of_template, c.visits_of_reason,
               c.visits_of_both, c.own_cost, c.shared_cost, c.retake_cost, c.category_cost, c.costs,
               ''::bytea AS removed
        FROM cost_cells c WHERE c.practice_id = $2 AND c.span = %2$L
      )$sql$, levels[n], levels[n - 1]), '{}');
  END LOOP;
END $$;

GRANT SELECT ON cost_cells TO traybook_app;

-- What is in the book already.
SELECT build_cost_spans(id) FROM practices;
