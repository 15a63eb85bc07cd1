-- What a minute of chair costs, and what makes the cost report fast over a million restorations.

CREATE TABLE cost_rates (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  valid_from date NOT NULL,
  yearly_cost numeric(20,6) NOT NULL CHECK (yearly_cost >= 0), -- of the chairs supplied
  practical_minutes integer NOT NULL CHECK (practical_minutes > 0), -- per year, all chairs together
  assistant_rate numeric(20,6) CHECK (assistant_rate >= 0), -- per minute
  note text CHECK (length(btrim(note)) BETWEEN 1 AND 500),
  recorded_by uuid NOT NULL,
  recorded_at timestamptz NOT NULL DEFAULT now(),
  UNIQUE (practice_id, id),
  FOREIGN KEY (practice_id, recorded_by) REFERENCES people (practice_id, id)
);
CREATE UNIQUE INDEX cost_rates_valid_from ON cost_rates (practice_id, valid_from);

-- The cost report reads whole months and years (span 1 and 12) from the three tables below and the days
-- at the edges of its period from the restorations themselves. Whatever changes a cost adds a row to cost_changes in the
-- same transaction; a month that has such a row is read from the restorations until it is folded
-- again. So the report is exact at every commit, and nobody who posts waits for anybody else.
CREATE TABLE cost_changes (
  practice_id uuid NOT NULL REFERENCES practices,
  month date NOT NULL
);
CREATE INDEX cost_changes_month ON cost_changes (practice_id, month);

CREATE TABLE cost_spans (
  practice_id uuid NOT NULL REFERENCES practices,
  span smallint NOT NULL CHECK (span IN (1, 12)),
  month date NOT NULL, -- the first one
  template_id uuid NOT NULL,
  reason text NOT NULL,
  dentist_id uuid NOT NULL,
  restorations integer NOT NULL,
  own_cost numeric NOT NULL,
  shared_cost numeric NOT NULL,
  retake_cost numeric NOT NULL,
  -- What each restoration cost, so many bytes each: 2 or 4 of hundredths, 8 of millionths, whichever is
  -- the least that holds it.
  width smallint NOT NULL CHECK (width IN (2, 4, 8)),
  costs bytea NOT NULL,
  PRIMARY KEY (practice_id, span, month, template_id, reason, dentist_id, width),
  CHECK (length(costs) = width * restorations)
);
ALTER TABLE cost_spans ALTER COLUMN costs SET STORAGE EXTERNAL; -- packing them again costs more

CREATE TABLE cost_span_categories (
  practice_id uuid NOT NULL REFERENCES practices,
  span smallint NOT NULL,
  month date NOT NULL,
  template_id uuid NOT NULL,
  reason text NOT NULL,
  dentist_id uuid NOT NULL,
  category text NOT NULL,
  cost numeric NOT NULL,
  PRIMARY KEY (practice_id, span, month, template_id, reason, dentist_id, category)
);

-- A visit with two kinds of restorations counts once for each kind and once for both together:
-- template_id or reason NULL stands for all of them.
CREATE TABLE cost_span_visits (
  practice_id uuid NOT NULL REFERENCES practices,
  span smallint NOT NULL,
  month date NOT NULL,
  template_id uuid,
  reason text,
  dentist_id uuid NOT NULL,
  visits integer NOT NULL,
  material_cost numeric, -- of the visits; only where both are NULL
  UNIQUE NULLS NOT DISTINCT (practice_id, span, month, template_id, reason, dentist_id)
);

-- In plpgsql, so that each is planned by itself for the days it is asked for; a few weeks of a long book
-- are found by index, which the usual price of a random page would not make the planner believe.
CREATE FUNCTION costed_cells(first_day date, last_day date)
RETURNS TABLE (month date, template_id uuid, reason text, dentist_id uuid, restorations integer,
               own_cost numeric, shared_cost numeric, retake_cost numeric, width smallint,
               costs bytea)
LANGUAGE plpgsql STABLE SET random_page_cost = 1 SET max_parallel_workers_per_gather = 0 AS $$
#variable_conflict use_column
BEGIN
  RETURN QUERY
  SELECT date_trunc('month', v.visited_on)::date, r.template_id, r.reason, v.dentist_id,
         count(*)::integer, sum(r.own_cost), sum(r.shared_cost), sum(r.retake_cost), w.width,
         string_agg(CASE w.width WHEN 2 THEN int2send((c.cost * 100)::smallint)
                                 WHEN 4 THEN int4send((c.cost * 100)::integer)
                                 ELSE int8send((c.cost * 1000000)::bigint) END, ''::bytea)
  FROM visits v
  JOIN restorations r ON r.visit_id = v.id
  CROSS JOIN LATERAL (SELECT r.own_cost + r.shared_cost AS cost) c
  CROSS JOIN LATERAL (
    SELECT CASE WHEN c.cost <> round(c.cost, 2) OR c.cost > 21474836.47 THEN 8
                WHEN c.cost > 327.67 THEN 4 ELSE 2 END::smallint AS width
  ) w
  WHERE v.practice_id = current_practice() AND v.visited_on BETWEEN first_day AND last_day
    AND v.reversed_at IS NULL
  GROUP BY 1, 2, 3, 4, w.width;
END $$;

CREATE FUNCTION costed_categories(first_day date, last_day date)
RETURNS TABLE (month date, template_id uuid, reason text, dentist_id uuid, category text,
               cost numeric)
LANGUAGE plpgsql STABLE SET random_page_cost = 1 SET max_parallel_workers_per_gather = 0 AS $$
#variable_conflict use_column
BEGIN
  RETURN QUERY
  SELECT date_trunc('month', v.visited_on)::date, r.template_id, r.reason, v.dentist_id,
         k.category, sum(k.cost)
  FROM visits v
  JOIN restorations r ON r.visit_id = v.id
  JOIN restoration_costs k ON k.restoration_id = r.id
  WHERE v.practice_id = current_practice() AND v.visited_on BETWEEN first_day AND last_day
    AND v.reversed_at IS NULL
  GROUP BY 1, 2, 3, 4, 5;
END $$;

CREATE FUNCTION costed_visits(first_day date, last_day date)
RETURNS TABLE (month date, template_id uuid, reason text, dentist_id uuid, visits integer,
               material_cost numeric)
LANGUAGE plpgsql STABLE SET random_page_cost = 1 SET max_parallel_workers_per_gather = 0 AS $$
#variable_conflict use_column
BEGIN
  RETURN QUERY
  WITH kinds AS (
    SELECT DISTINCT date_trunc('month', v.visited_on)::date AS month, r.template_id, r.reason,
           v.dentist_id, v.id
    FROM visits v JOIN restorations r ON r.visit_id = v.id
    WHERE v.practice_id = current_practice() AND v.visited_on BETWEEN first_day AND last_day
      AND v.reversed_at IS NULL
  ), templates AS (SELECT DISTINCT month, template_id, dentist_id, id FROM kinds),
  reasons AS (SELECT DISTINCT month, reason, dentist_id, id FROM kinds)
  SELECT month, template_id, reason, dentist_id, count(*)::integer, NULL::numeric
  FROM kinds GROUP BY 1, 2, 3, 4
  UNION ALL
  SELECT month, template_id, NULL, dentist_id, count(*)::integer, NULL
  FROM templates GROUP BY 1, 2, 4
  UNION ALL
  SELECT month, NULL, reason, dentist_id, count(*)::integer, NULL
  FROM reasons GROUP BY 1, 3, 4
  UNION ALL
  SELECT date_trunc('month', v.visited_on)::date, NULL, NULL, v.dentist_id, count(*)::integer,
         sum(v.material_cost)
  FROM visits v
  WHERE v.practice_id = current_practice() AND v.visited_on BETWEEN first_day AND last_day
    AND v.reversed_at IS NULL
  GROUP BY 1, 4;
END $$;

-- Works the changed months of the running practice out again, and the years they are in. A change that
-- commits meanwhile keeps its row in cost_changes, because only rows that were seen are deleted and each
-- statement that follows sees at least as much. Does nothing while somebody else is at it.
CREATE FUNCTION fold_cost_changes() RETURNS integer LANGUAGE plpgsql VOLATILE AS $$
DECLARE
  changed date[];
  years date[];
  of_practice uuid := current_practice();
BEGIN
  IF NOT pg_try_advisory_xact_lock(hashtextextended('fold costs of ' || of_practice, 0)) THEN
    RETURN 0;
  END IF;
  WITH gone AS (DELETE FROM cost_changes WHERE practice_id = of_practice RETURNING month)
  SELECT coalesce(array_agg(DISTINCT month), '{}'),
         coalesce(array_agg(DISTINCT date_trunc('year', month)::date), '{}')
  INTO changed, years FROM gone;
  DELETE FROM cost_spans WHERE practice_id = of_practice
    AND (span = 1 AND month = ANY(changed) OR span = 12 AND month = ANY(years));
  DELETE FROM cost_span_categories WHERE practice_id = of_practice
    AND (span = 1 AND month = ANY(changed) OR span = 12 AND month = ANY(years));
  DELETE FROM cost_span_visits WHERE practice_id = of_practice
    AND (span = 1 AND month = ANY(changed) OR span = 12 AND month = ANY(years));

  INSERT INTO cost_spans
  SELECT of_practice, 1, c.* FROM unnest(changed) AS m(day)
  CROSS JOIN LATERAL costed_cells(m.day, (m.day + interval '1 month - 1 day')::date) c;
  INSERT INTO cost_span_categories
  SELECT of_practice, 1, c.* FROM unnest(changed) AS m(day)
  CROSS JOIN LATERAL costed_categories(m.day, (m.day + interval '1 month - 1 day')::date) c;
  INSERT INTO cost_span_visits
  SELECT of_practice, 1, c.* FROM unnest(changed) AS m(day)
  CROSS JOIN LATERAL costed_visits(m.day, (m.day + interval '1 month - 1 day')::date) c;

  INSERT INTO cost_spans
  SELECT of_practice, 12, y.day, template_id, reason, dentist_id, sum(restorations), sum(own_cost),
         sum(shared_cost), sum(retake_cost), width, string_agg(costs, ''::bytea)
  FROM unnest(years) AS y(day) JOIN cost_spans c ON c.practice_id = of_practice AND c.span = 1
   AND c.month BETWEEN y.day AND (y.day + interval '11 months')::date
  GROUP BY y.day, template_id, reason, dentist_id, width;
  INSERT INTO cost_span_categories
  SELECT of_practice, 12, y.day, template_id, reason, dentist_id, category, sum(cost)
  FROM unnest(years) AS y(day) JOIN cost_span_categories c ON c.practice_id = of_practice
   AND c.span = 1 AND c.month BETWEEN y.day AND (y.day + interval '11 months')::date
  GROUP BY y.day, template_id, reason, dentist_id, category;
  INSERT INTO cost_span_visits
  SELECT of_practice, 12, y.day, template_id, reason, dentist_id, sum(visits), sum(material_cost)
  FROM unnest(years) AS y(day) JOIN cost_span_visits c ON c.practice_id = of_practice AND c.span = 1
   AND c.month BETWEEN y.day AND (y.day + interval '11 months')::date
  GROUP BY y.day, template_id, reason, dentist_id;
  RETURN cardinality(changed);
END $$;

CREATE FUNCTION note_cost_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_TABLE_NAME = 'visits' THEN
    INSERT INTO cost_changes (practice_id, month)
    SELECT DISTINCT practice_id, date_trunc('month', visited_on)::date FROM changed;
  ELSIF TG_TABLE_NAME = 'restorations' THEN
    INSERT INTO cost_changes (practice_id, month)
    SELECT DISTINCT v.practice_id, date_trunc('month', v.visited_on)::date
    FROM changed c JOIN visits v ON v.id = c.visit_id;
  ELSE
    INSERT INTO cost_changes (practice_id, month)
    SELECT DISTINCT v.practice_id, date_trunc('month', v.visited_on)::date
    FROM changed c JOIN restorations r ON r.id = c.restoration_id JOIN visits v ON v.id = r.visit_id;
  END IF;
  RETURN NULL;
END $$;

-- A visit is always written together with its restorations, and those with their categories.
CREATE TRIGGER note_cost_change AFTER INSERT ON restorations
  REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION note_cost_change();
CREATE TRIGGER note_cost_update AFTER UPDATE ON restorations
  REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION note_cost_change();
CREATE TRIGGER note_cost_update AFTER UPDATE ON visits
  REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION note_cost_change();
CREATE TRIGGER note_cost_update AFTER UPDATE ON restoration_costs
  REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION note_cost_change();
CREATE TRIGGER note_cost_delete AFTER DELETE ON restoration_costs
  REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION note_cost_change();

DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['cost_rates', 'cost_changes', 'cost_spans', 'cost_span_categories',
                           'cost_span_visits'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
    EXECUTE format('CREATE POLICY practice_only ON %I USING (practice_id = current_practice())', t);
    EXECUTE format('GRANT SELECT, INSERT ON %I TO traybook_app', t);
  END LOOP;
END $$;
GRANT DELETE ON cost_changes, cost_spans, cost_span_categories, cost_span_visits TO traybook_app;

-- What is in the book already.
DO $$
DECLARE p uuid;
BEGIN
  INSERT INTO cost_changes (practice_id, month)
  SELECT DISTINCT practice_id, date_trunc('month', visited_on)::date FROM visits;
  FOR p IN SELECT id FROM practices LOOP
    PERFORM set_config('traybook.practice_id', p::text, true);
    PERFORM fold_cost_changes();
  END LOOP;
  PERFORM set_config('traybook.practice_id', '', true);
END $$;
