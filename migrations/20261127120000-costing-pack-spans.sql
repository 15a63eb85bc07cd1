-- The report of costs over a million restorations: what it needs of a year, a month, a third of a
-- month and a day is packed into one row each, and every change of a cost adds its difference.

DROP TRIGGER note_cost_change ON restorations;
DROP TRIGGER note_cost_update ON restorations;
DROP TRIGGER note_cost_update ON visits;
DROP TRIGGER note_cost_update ON restoration_costs;
DROP TRIGGER note_cost_delete ON restoration_costs;
DROP FUNCTION note_cost_change, fold_cost_changes, costed_cells, costed_categories, costed_visits;
DROP TABLE cost_changes, cost_spans, cost_span_categories, cost_span_visits;

-- Kinds of restorations and categories of consumables, by a number that takes less room.
CREATE TABLE cost_kinds (
  practice_id uuid NOT NULL REFERENCES practices,
  kind integer GENERATED ALWAYS AS IDENTITY,
  template_id uuid NOT NULL,
  reason text NOT NULL,
  dentist_id uuid NOT NULL,
  PRIMARY KEY (practice_id, kind),
  UNIQUE (practice_id, template_id, reason, dentist_id)
);
CREATE TABLE cost_categories (
  practice_id uuid NOT NULL REFERENCES practices,
  category_number integer GENERATED ALWAYS AS IDENTITY,
  category text NOT NULL, -- empty: the visit itself, under the kind of its first restoration
  PRIMARY KEY (practice_id, category_number),
  UNIQUE (practice_id, category)
);

CREATE FUNCTION packed_bytes(widths smallint[], restorations integer[]) RETURNS bigint
LANGUAGE sql IMMUTABLE AS $$
  SELECT coalesce(sum(u.width * u.restorations), 0) FROM unnest(widths, restorations) u(width, restorations)
$$;

-- Parallel arrays, an element for each kind of restoration and width of its costs; money in millionths.
CREATE TABLE cost_spans (
  practice_id uuid NOT NULL REFERENCES practices,
  span text NOT NULL CHECK (span IN ('year', 'month', 'third', 'day')),
  first_day date NOT NULL,
  kinds integer[] NOT NULL,
  -- What each restoration cost, so many bytes each: 2 or 4 of hundredths, 8 of millionths, whichever
  -- is the least that holds it.
  widths smallint[] NOT NULL,
  restorations integer[] NOT NULL,
  -- A visit counts at its first restoration; at its first one of a template, of a reason, of both.
  -- So each of these can be added up: over all kinds, over the reasons of a template, and so on.
  visits integer[] NOT NULL,
  visits_of_template integer[] NOT NULL,
  visits_of_reason integer[] NOT NULL,
  visits_of_both integer[] NOT NULL,
  own_costs bigint[] NOT NULL,
  shared_costs bigint[] NOT NULL,
  retake_costs bigint[] NOT NULL,
  costs bytea NOT NULL, -- in the order of the arrays
  -- An element for each kind and category of consumable.
  category_kinds integer[] NOT NULL,
  categories integer[] NOT NULL,
  category_costs bigint[] NOT NULL,
  PRIMARY KEY (practice_id, span, first_day),
  CHECK (ARRAY[cardinality(widths), cardinality(restorations), cardinality(visits),
    cardinality(visits_of_template), cardinality(visits_of_reason), cardinality(visits_of_both),
    cardinality(own_costs), cardinality(shared_costs), cardinality(retake_costs)]
    = array_fill(cardinality(kinds), ARRAY[9])),
  CHECK (cardinality(categories) = cardinality(category_kinds)
    AND cardinality(category_costs) = cardinality(category_kinds)),
  CHECK (length(costs) = packed_bytes(widths, restorations))
);
ALTER TABLE cost_spans ALTER COLUMN costs SET STORAGE EXTERNAL; -- packing them again costs more

-- What was added since to what the spans say, minus what was taken away. The report reads both, so
-- that it is exact at every commit; folding moves rows from here to there. Nobody who posts waits
-- for anybody else. These rows live for seconds, so that no foreign key is worth its look-ups.
CREATE TABLE cost_changes (
  practice_id uuid NOT NULL,
  day date NOT NULL,
  id bigint GENERATED ALWAYS AS IDENTITY,
  template_id uuid NOT NULL,
  reason text NOT NULL,
  dentist_id uuid NOT NULL,
  width smallint NOT NULL DEFAULT 0,
  restorations integer NOT NULL DEFAULT 0,
  visits integer NOT NULL DEFAULT 0,
  visits_of_template integer NOT NULL DEFAULT 0,
  visits_of_reason integer NOT NULL DEFAULT 0,
  visits_of_both integer NOT NULL DEFAULT 0,
  own_cost bigint NOT NULL DEFAULT 0,
  shared_cost bigint NOT NULL DEFAULT 0,
  retake_cost bigint NOT NULL DEFAULT 0,
  costs bytea NOT NULL DEFAULT '',
  removed bytea NOT NULL DEFAULT '',
  category text, -- set: nothing but a cost of this category, or of the visit where it is empty
  category_cost bigint NOT NULL DEFAULT 0,
  PRIMARY KEY (practice_id, day, id),
  CHECK ((category IS NULL) = (width > 0)),
  CHECK (length(costs) - length(removed) = width * restorations)
);

CREATE FUNCTION micros(amount numeric) RETURNS bigint
LANGUAGE sql IMMUTABLE AS $$ SELECT (amount * 1000000)::bigint $$;

-- What a restoration adds to the report (inlined into the query that calls it).
CREATE FUNCTION restoration_figures(of_visit uuid, at_position integer, of_template uuid, for_reason text,
                                    own numeric, shared numeric, retake numeric)
RETURNS TABLE (width smallint, visits integer, visits_of_template integer, visits_of_reason integer,
               visits_of_both integer, own_cost bigint, shared_cost bigint, retake_cost bigint,
               costs bytea)
LANGUAGE sql STABLE AS $$
  SELECT w.width, f.of_all::integer, f.of_template::integer, f.of_reason::integer,
         f.of_both::integer, micros(own), micros(shared), micros(retake),
         CASE w.width WHEN 2 THEN int2send((c.cost * 100)::smallint)
                      WHEN 4 THEN int4send((c.cost * 100)::integer)
                      ELSE int8send(micros(c.cost)) END
  FROM (SELECT own + shared AS cost) c
  CROSS JOIN LATERAL (
    SELECT CASE WHEN c.cost <> round(c.cost, 2) OR c.cost > 21474836.47 THEN 8
                WHEN c.cost > 327.67 THEN 4 ELSE 2 END::smallint AS width
  ) w
  CROSS JOIN LATERAL (
    SELECT count(*) = 0 AS of_all,
           coalesce(bool_and(o.template_id <> of_template), true) AS of_template,
           coalesce(bool_and(o.reason <> for_reason), true) AS of_reason,
           coalesce(bool_and(o.template_id <> of_template OR o.reason <> for_reason), true) AS of_both
    FROM restorations o WHERE o.visit_id = of_visit AND o.position < at_position
  ) f
$$;

-- What restorations add to the report, times 1 or -1: their figures and the cost of their visits.
CREATE FUNCTION note_figures(ids uuid[], times integer) RETURNS void LANGUAGE sql VOLATILE AS $$
  INSERT INTO cost_changes (practice_id, day, template_id, reason, dentist_id, width, restorations,
    visits, visits_of_template, visits_of_reason, visits_of_both, own_cost, shared_cost,
    retake_cost, costs, removed)
  SELECT v.practice_id, v.visited_on, r.template_id, r.reason, v.dentist_id, f.width, times,
         times * f.visits, times * f.visits_of_template, times * f.visits_of_reason,
         times * f.visits_of_both, times * f.own_cost, times * f.shared_cost, times * f.retake_cost,
         CASE times WHEN 1 THEN f.costs ELSE '' END, CASE times WHEN -1 THEN f.costs ELSE '' END
  FROM restorations r JOIN visits v ON v.id = r.visit_id
  CROSS JOIN LATERAL restoration_figures(r.visit_id, r.position, r.template_id, r.reason,
                                         r.own_cost, r.shared_cost, r.retake_cost) f
  WHERE r.id = ANY(ids);
  INSERT INTO cost_changes (practice_id, day, template_id, reason, dentist_id, category, category_cost)
  SELECT v.practice_id, v.visited_on, r.template_id, r.reason, v.dentist_id, '',
         times * micros(v.material_cost)
  FROM restorations r JOIN visits v ON v.id = r.visit_id
  WHERE r.id = ANY(ids) AND NOT EXISTS (
    SELECT FROM restorations o WHERE o.visit_id = r.visit_id AND o.position < r.position)
$$;

-- A visit is posted whole, in one statement, and nothing of it but its costs and its reversal ever
-- changes; costing it anew and reversing it are statements of their own.
CREATE FUNCTION note_posted() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  PERFORM note_figures(ARRAY(SELECT c.id FROM changed c
                             JOIN visits v ON v.id = c.visit_id AND v.reversed_at IS NULL), 1);
  RETURN NULL;
END $$;

CREATE FUNCTION note_visit_update() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  times integer;
  ids uuid[];
BEGIN
  FOR times, ids IN
    SELECT CASE WHEN n.reversed_at IS NULL THEN 1 ELSE -1 END, array_agg(r.id)
    FROM changed n JOIN earlier e ON e.id = n.id JOIN restorations r ON r.visit_id = n.id
    WHERE (e.reversed_at IS NULL) <> (n.reversed_at IS NULL) GROUP BY 1
  LOOP
    PERFORM note_figures(ids, times);
    INSERT INTO cost_changes (practice_id, day, template_id, reason, dentist_id, category,
      category_cost)
    SELECT v.practice_id, v.visited_on, r.template_id, r.reason, v.dentist_id, c.category,
           times * micros(sum(c.cost))
    FROM restorations r JOIN visits v ON v.id = r.visit_id
    JOIN restoration_costs c ON c.restoration_id = r.id
    WHERE r.id = ANY(ids) GROUP BY 1, 2, 3, 4, 5, 6;
  END LOOP;
  INSERT INTO cost_changes (practice_id, day, template_id, reason, dentist_id, category, category_cost)
  SELECT n.practice_id, n.visited_on, r.template_id, r.reason, n.dentist_id, '',
         micros(n.material_cost - e.material_cost)
  FROM changed n JOIN earlier e ON e.id = n.id
  CROSS JOIN LATERAL (
    SELECT o.template_id, o.reason FROM restorations o WHERE o.visit_id = n.id
    ORDER BY o.position LIMIT 1
  ) r
  WHERE n.reversed_at IS NULL AND e.reversed_at IS NULL AND n.material_cost <> e.material_cost;
  RETURN NULL;
END $$;

CREATE FUNCTION note_costed_anew() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  INSERT INTO cost_changes (practice_id, day, template_id, reason, dentist_id, width, restorations,
    visits, visits_of_template, visits_of_reason, visits_of_both, own_cost, shared_cost,
    retake_cost, costs, removed)
  SELECT v.practice_id, v.visited_on, n.template_id, n.reason, v.dentist_id, f.width, c.times,
         c.times * f.visits, c.times * f.visits_of_template, c.times * f.visits_of_reason,
         c.times * f.visits_of_both, c.times * f.own_cost, c.times * f.shared_cost,
         c.times * f.retake_cost,
         CASE c.times WHEN 1 THEN f.costs ELSE '' END, CASE c.times WHEN -1 THEN f.costs ELSE '' END
  FROM changed n JOIN earlier e ON e.id = n.id
  JOIN visits v ON v.id = n.visit_id AND v.reversed_at IS NULL
  CROSS JOIN LATERAL (
    VALUES (1, n.own_cost, n.shared_cost, n.retake_cost),
           (-1, e.own_cost, e.shared_cost, e.retake_cost)
  ) c(times, own_cost, shared_cost, retake_cost)
  CROSS JOIN LATERAL restoration_figures(n.visit_id, n.position, n.template_id, n.reason,
                                         c.own_cost, c.shared_cost, c.retake_cost) f
  WHERE (n.own_cost, n.shared_cost, n.retake_cost)
     <> (e.own_cost, e.shared_cost, e.retake_cost);
  RETURN NULL;
END $$;

CREATE FUNCTION note_category_costs() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'UPDATE' THEN
    INSERT INTO cost_changes (practice_id, day, template_id, reason, dentist_id, category, category_cost)
    SELECT v.practice_id, v.visited_on, r.template_id, r.reason, v.dentist_id, n.category,
           micros(n.cost - e.cost)
    FROM changed n JOIN earlier e ON e.restoration_id = n.restoration_id AND e.category = n.category
    JOIN restorations r ON r.id = n.restoration_id
    JOIN visits v ON v.id = r.visit_id AND v.reversed_at IS NULL
    WHERE n.cost <> e.cost;
  ELSE
    INSERT INTO cost_changes (practice_id, day, template_id, reason, dentist_id, category, category_cost)
    SELECT v.practice_id, v.visited_on, r.template_id, r.reason, v.dentist_id, n.category,
           micros(CASE TG_OP WHEN 'INSERT' THEN n.cost ELSE -n.cost END)
    FROM changed n JOIN restorations r ON r.id = n.restoration_id
    JOIN visits v ON v.id = r.visit_id AND v.reversed_at IS NULL;
  END IF;
  RETURN NULL;
END $$;

CREATE TRIGGER note_posted AFTER INSERT ON restorations
  REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION note_posted();
CREATE TRIGGER note_costed_anew AFTER UPDATE ON restorations
  REFERENCING OLD TABLE AS earlier NEW TABLE AS changed
  FOR EACH STATEMENT EXECUTE FUNCTION note_costed_anew();
CREATE TRIGGER note_visit_update AFTER UPDATE ON visits
  REFERENCING OLD TABLE AS earlier NEW TABLE AS changed
  FOR EACH STATEMENT EXECUTE FUNCTION note_visit_update();
CREATE TRIGGER note_category_insert AFTER INSERT ON restoration_costs
  REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION note_category_costs();
CREATE TRIGGER note_category_update AFTER UPDATE ON restoration_costs
  REFERENCING OLD TABLE AS earlier NEW TABLE AS changed
  FOR EACH STATEMENT EXECUTE FUNCTION note_category_costs();
CREATE TRIGGER note_category_delete AFTER DELETE ON restoration_costs
  REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION note_category_costs();

DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['cost_kinds', 'cost_categories', 'cost_spans', 'cost_changes'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
    EXECUTE format('CREATE POLICY practice_only ON %I USING (practice_id = current_practice())', t);
    EXECUTE format('GRANT SELECT ON %I TO traybook_app', t);
  END LOOP;
END $$;
GRANT INSERT ON cost_changes TO traybook_app;
