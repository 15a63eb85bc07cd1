-- What was really asked for a restoration, and who pays it. Nothing recorded is ever changed: a
-- correction is a new record that names the one it replaces, so that of every restoration exactly
-- one record counts, however many people record at once.

CREATE TABLE charges (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  restoration_id uuid NOT NULL,
  replaces_id uuid,
  charged_on date NOT NULL, -- the day of the visit, at which fee, terms and what was left were read
  fee_id uuid, -- whose terms counted; NULL: an amount that belongs to no fee of the list
  plan_id uuid,
  fee numeric(20,6) NOT NULL CHECK (fee >= 0),
  plan_pays numeric(20,6) NOT NULL CHECK (plan_pays >= 0),
  patient_pays numeric(20,6) NOT NULL CHECK (patient_pays >= 0),
  write_off numeric(20,6) NOT NULL CHECK (write_off >= 0),
  deductible_used numeric(20,6) NOT NULL DEFAULT 0 CHECK (deductible_used BETWEEN 0 AND fee),
  stated boolean NOT NULL, -- a person stated who pays what; else worked out from the plan's terms
  note text CHECK (length(btrim(note)) BETWEEN 1 AND 500),
  recorded_by uuid NOT NULL,
  recorded_at timestamptz NOT NULL DEFAULT now(),
  CHECK (plan_pays + patient_pays + write_off = fee),
  CHECK (plan_id IS NOT NULL OR plan_pays = 0 AND deductible_used = 0),
  CHECK (replaces_id <> id),
  UNIQUE (practice_id, restoration_id, id),
  FOREIGN KEY (practice_id, restoration_id) REFERENCES restorations (practice_id, id),
  FOREIGN KEY (practice_id, restoration_id, replaces_id)
    REFERENCES charges (practice_id, restoration_id, id),
  FOREIGN KEY (practice_id, fee_id) REFERENCES fees (practice_id, id),
  FOREIGN KEY (practice_id, plan_id) REFERENCES fee_plans (practice_id, id),
  FOREIGN KEY (practice_id, recorded_by) REFERENCES people (practice_id, id)
);
-- One first record of a restoration, and one at most that replaces another.
CREATE UNIQUE INDEX charges_first ON charges (restoration_id) WHERE replaces_id IS NULL;
CREATE UNIQUE INDEX charges_replaces ON charges (replaces_id) WHERE replaces_id IS NOT NULL;

CREATE TRIGGER append_only BEFORE UPDATE OR DELETE ON charges
  FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER append_only_table BEFORE TRUNCATE ON charges
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

-- The records that count. Visits may have been reversed since: a report leaves those out by itself.
CREATE VIEW current_charges WITH (security_invoker = true) AS
SELECT c.* FROM charges c WHERE NOT EXISTS (SELECT FROM charges n WHERE n.replaces_id = c.id);
GRANT SELECT ON current_charges TO traybook_app;

-- What the fee list says of a template and reason, from a day until before another: the fee of that
-- reason, else the one of any reason. Of two versions of the same day the one recorded later counts.
CREATE VIEW listed_fees WITH (security_invoker = true) AS
WITH linked AS (
  SELECT DISTINCT ON (f.template_id, k.reason)
         f.practice_id, f.template_id, k.reason, f.id AS fee_id
  FROM fees f
  JOIN unnest(ARRAY['decay', 'fracture', 'wear', 'cosmetic']) AS k (reason)
    ON f.reason IS NULL OR f.reason = k.reason
  WHERE f.active AND f.template_id IS NOT NULL
  ORDER BY f.template_id, k.reason, f.reason NULLS LAST
), dated AS (
  SELECT DISTINCT ON (fee_id, valid_from) fee_id, valid_from, fee
  FROM fee_versions ORDER BY fee_id, valid_from, id DESC
)
SELECT l.practice_id, l.template_id, l.reason, l.fee_id, d.fee, d.valid_from,
       lead(d.valid_from, 1, 'infinity'::date)
         OVER (PARTITION BY l.template_id, l.reason ORDER BY d.valid_from) AS valid_until
FROM linked l JOIN dated d ON d.fee_id = l.fee_id;
GRANT SELECT ON listed_fees TO traybook_app;

-- The report of contributions reads whole months from contribution_months, the days at the edges of
-- its period from the restorations themselves. Whatever changes what a month says adds a row to
-- contribution_changes in the same transaction; a month that has such a row is read from the
-- restorations until it is folded again. So the report is exact at every commit.
CREATE TABLE contribution_changes (
  practice_id uuid NOT NULL REFERENCES practices,
  month date NOT NULL
);
CREATE INDEX contribution_changes_month ON contribution_changes (practice_id, month);

CREATE TABLE contribution_months (
  practice_id uuid NOT NULL REFERENCES practices,
  month date NOT NULL, -- its first day
  template_id uuid NOT NULL,
  reason text NOT NULL,
  dentist_id uuid NOT NULL,
  source text NOT NULL CHECK (source IN ('charged', 'listed', 'none')), -- how the fee is known
  width smallint NOT NULL CHECK (width IN (2, 4, 8)),
  restorations integer NOT NULL,
  fee numeric NOT NULL,
  plan_pays numeric NOT NULL,
  write_off numeric NOT NULL,
  material numeric NOT NULL,
  minutes bigint NOT NULL,
  -- What each restoration contributed, so many bytes each: 2 or 4 of hundredths, 8 of millionths.
  contributions bytea NOT NULL,
  PRIMARY KEY (practice_id, month, template_id, reason, dentist_id, source, width),
  CHECK (length(contributions) = width * restorations)
);
ALTER TABLE contribution_months ALTER COLUMN contributions SET STORAGE EXTERNAL;

-- In plpgsql, so that it is planned by itself for the days it is asked for; a few weeks of a long book
-- are found by index, which the usual price of a random page would not make the planner believe.
-- Without a charge the fee list of the day counts; a plan pays nothing and nothing is written off then.
CREATE FUNCTION contribution_cells(first_day date, last_day date)
RETURNS TABLE (month date, template_id uuid, reason text, dentist_id uuid, source text,
               width smallint, restorations integer, fee numeric, plan_pays numeric,
               write_off numeric, material numeric, minutes bigint, contributions bytea)
LANGUAGE plpgsql STABLE SET random_page_cost = 1 SET max_parallel_workers_per_gather = 0 AS $$
#variable_conflict use_column
BEGIN
  RETURN QUERY
  SELECT date_trunc('month', v.visited_on)::date, r.template_id, r.reason, v.dentist_id, k.source,
         w.width, count(*)::integer, sum(k.fee), sum(k.plan_pays), sum(k.write_off),
         sum(k.material), sum(r.minutes),
         string_agg(CASE w.width WHEN 2 THEN int2send((g.gain * 100)::smallint)
                                 WHEN 4 THEN int4send((g.gain * 100)::integer)
                                 ELSE int8send((g.gain * 1000000)::bigint) END, ''::bytea)
  FROM visits v
  JOIN restorations r ON r.visit_id = v.id
  LEFT JOIN current_charges c ON c.restoration_id = r.id
  LEFT JOIN listed_fees l ON c.id IS NULL AND l.template_id = r.template_id
    AND l.reason = r.reason AND v.visited_on >= l.valid_from AND v.visited_on < l.valid_until
  CROSS JOIN LATERAL (
    SELECT CASE WHEN c.id IS NOT NULL THEN 'charged' WHEN l.fee IS NOT NULL THEN 'listed'
                ELSE 'none' END AS source,
           coalesce(c.fee, l.fee, 0) AS fee, coalesce(c.plan_pays, 0) AS plan_pays,
           coalesce(c.write_off, 0) AS write_off, r.own_cost + r.shared_cost AS material
  ) k
  CROSS JOIN LATERAL (SELECT k.fee - k.write_off - k.material AS gain) g
  CROSS JOIN LATERAL (
    SELECT CASE WHEN g.gain <> round(g.gain, 2) OR abs(g.gain) > 21474836.47 THEN 8
                WHEN abs(g.gain) > 327.67 THEN 4 ELSE 2 END::smallint AS width
  ) w
  WHERE v.practice_id = current_practice() AND v.visited_on BETWEEN first_day AND last_day
    AND v.reversed_at IS NULL
  GROUP BY 1, 2, 3, 4, 5, 6;
END $$;

-- Works the changed months of the running practice out again. A change that commits meanwhile keeps its
-- row, because only rows that were seen are deleted and each statement that follows sees at least as
-- much. Does nothing while somebody else is at it, or while the fee list is being changed.
CREATE FUNCTION fold_contributions() RETURNS integer LANGUAGE plpgsql VOLATILE AS $$
DECLARE
  changed date[];
  of_practice uuid := current_practice();
BEGIN
  IF NOT pg_try_advisory_xact_lock(hashtextextended('fold contributions of ' || of_practice, 0)) THEN
    RETURN 0;
  END IF;
  WITH gone AS (DELETE FROM contribution_changes WHERE practice_id = of_practice RETURNING month)
  SELECT coalesce(array_agg(DISTINCT month), '{}') INTO changed FROM gone;
  DELETE FROM contribution_months WHERE practice_id = of_practice AND month = ANY(changed);
  INSERT INTO contribution_months
  SELECT of_practice, c.* FROM unnest(changed) AS m(day)
  CROSS JOIN LATERAL contribution_cells(m.day, (m.day + interval '1 month - 1 day')::date) c;
  RETURN cardinality(changed);
END $$;

CREATE FUNCTION note_contribution_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_TABLE_NAME = 'visits' THEN
    INSERT INTO contribution_changes (practice_id, month)
    SELECT DISTINCT practice_id, date_trunc('month', visited_on)::date FROM changed;
  ELSIF TG_TABLE_NAME = 'restorations' THEN
    INSERT INTO contribution_changes (practice_id, month)
    SELECT DISTINCT v.practice_id, date_trunc('month', v.visited_on)::date
    FROM changed c JOIN visits v ON v.id = c.visit_id;
  ELSE
    INSERT INTO contribution_changes (practice_id, month)
    SELECT DISTINCT v.practice_id, date_trunc('month', v.visited_on)::date
    FROM changed c JOIN restorations r ON r.id = c.restoration_id JOIN visits v ON v.id = r.visit_id;
  END IF;
  RETURN NULL;
END $$;
CREATE TRIGGER note_contribution_insert AFTER INSERT ON restorations
  REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION note_contribution_change();
CREATE TRIGGER note_contribution_update AFTER UPDATE ON restorations
  REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION note_contribution_change();
CREATE TRIGGER note_contribution_update AFTER UPDATE ON visits
  REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION note_contribution_change();
CREATE TRIGGER note_contribution_insert AFTER INSERT ON charges
  REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION note_contribution_change();

-- A change of the fee list changes the months of its templates in which something was not charged. It
-- waits for a fold and lets none begin before it commits: a fold would not see it.
CREATE FUNCTION note_listed_fee_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  PERFORM pg_advisory_xact_lock_shared(
    hashtextextended('fold contributions of ' || p.practice_id, 0))
  FROM (SELECT DISTINCT practice_id FROM changed ORDER BY 1) p;
  IF TG_TABLE_NAME = 'fee_versions' THEN
    INSERT INTO contribution_changes (practice_id, month)
    SELECT m.practice_id, m.month FROM contribution_months m
    JOIN fees f ON f.practice_id = m.practice_id AND f.template_id = m.template_id
    JOIN changed c ON c.fee_id = f.id AND m.month >= date_trunc('month', c.valid_from)
    WHERE m.source <> 'charged'
    UNION
    SELECT m.practice_id, m.month FROM contribution_changes m
    JOIN changed c ON c.practice_id = m.practice_id;
  ELSE
    INSERT INTO contribution_changes (practice_id, month)
    SELECT m.practice_id, m.month FROM contribution_months m
    JOIN (SELECT practice_id, template_id FROM changed
          UNION SELECT practice_id, template_id FROM before) c
      ON c.practice_id = m.practice_id AND c.template_id = m.template_id
    WHERE m.source <> 'charged'
    UNION
    SELECT m.practice_id, m.month FROM contribution_changes m
    JOIN changed c ON c.practice_id = m.practice_id;
  END IF;
  RETURN NULL;
END $$;
CREATE TRIGGER note_listed_fee_insert AFTER INSERT ON fee_versions
  REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION note_listed_fee_change();
CREATE TRIGGER note_listed_fee_update AFTER UPDATE ON fees
  REFERENCING NEW TABLE AS changed OLD TABLE AS before
  FOR EACH STATEMENT EXECUTE FUNCTION note_listed_fee_change();

DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['charges', 'contribution_changes', 'contribution_months'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
    EXECUTE format('CREATE POLICY practice_only ON %I USING (practice_id = current_practice())', t);
    EXECUTE format('GRANT SELECT, INSERT ON %I TO traybook_app', t);
  END LOOP;
END $$;
GRANT DELETE ON contribution_changes, contribution_months TO traybook_app;

-- What is in the book already.
DO $$
DECLARE p uuid;
BEGIN
  INSERT INTO contribution_changes (practice_id, month)
  SELECT DISTINCT practice_id, date_trunc('month', visited_on)::date FROM visits;
  FOR p IN SELECT id FROM practices LOOP
    PERFORM set_config('traybook.practice_id', p::text, true);
    PERFORM fold_contributions();
  END LOOP;
  PERFORM set_config('traybook.practice_id', '', true);
END $$;
