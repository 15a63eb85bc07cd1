-- Visits that are booked for the days to come: what they will use is known before it is used. A chart
-- reference at most says whose they are; a count of alike visits needs none.

CREATE TABLE booked_visits (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  day date NOT NULL,
  chart_reference text CHECK (length(btrim(chart_reference)) BETWEEN 1 AND 60),
  dentist_id uuid,
  location_id uuid,
  external_reference text CHECK (length(btrim(external_reference)) BETWEEN 1 AND 120),
  alike smallint NOT NULL CHECK (alike BETWEEN 1 AND 200), -- so many visits of this kind on the day
  kept smallint NOT NULL DEFAULT 0, -- so many of them are recorded as visits
  state text NOT NULL CHECK (state IN ('booked', 'kept', 'dropped')),
  dropped_at timestamptz,
  dropped_by uuid,
  dropped_note text CHECK (length(btrim(dropped_note)) BETWEEN 1 AND 500),
  booked_by uuid NOT NULL,
  booked_at timestamptz NOT NULL,
  UNIQUE (practice_id, id),
  CHECK (kept BETWEEN 0 AND alike),
  CHECK ((state = 'kept') = (kept = alike)),
  CHECK (chart_reference IS NULL OR alike = 1), -- a chart stands for one patient
  CHECK ((state = 'dropped') = (dropped_at IS NOT NULL)),
  CHECK ((dropped_at IS NULL) = (dropped_by IS NULL)),
  CHECK ((dropped_at IS NULL) = (dropped_note IS NULL)),
  FOREIGN KEY (practice_id, dentist_id) REFERENCES people (practice_id, id),
  FOREIGN KEY (practice_id, location_id) REFERENCES locations (practice_id, id),
  FOREIGN KEY (practice_id, booked_by) REFERENCES people (practice_id, id),
  FOREIGN KEY (practice_id, dropped_by) REFERENCES people (practice_id, id)
);
-- The same list read in twice books nobody twice.
CREATE UNIQUE INDEX booked_visits_external ON booked_visits (practice_id, external_reference);
CREATE INDEX booked_visits_day ON booked_visits (practice_id, day, id);
CREATE INDEX booked_visits_open ON booked_visits (practice_id, day) WHERE state = 'booked';

-- What is planned for such a visit; NULL: not said, and planned as the template was recorded lately.
CREATE TABLE booked_restorations (
  practice_id uuid NOT NULL REFERENCES practices,
  booked_visit_id uuid NOT NULL,
  position smallint NOT NULL CHECK (position BETWEEN 1 AND 32),
  template_id uuid NOT NULL,
  tooth smallint,
  surfaces text,
  cavity_class text CHECK (cavity_class IN ('I', 'II', 'III', 'IV', 'V', 'VI')),
  size text CHECK (size IN ('small', 'medium', 'large')),
  reason text CHECK (reason IN ('decay', 'fracture', 'wear', 'cosmetic')),
  shades uuid[] NOT NULL,
  PRIMARY KEY (booked_visit_id, position),
  CHECK (surfaces IS NULL OR tooth IS NOT NULL),
  CHECK (cavity_class IS NULL OR surfaces IS NOT NULL),
  FOREIGN KEY (practice_id, booked_visit_id) REFERENCES booked_visits (practice_id, id),
  FOREIGN KEY (practice_id, template_id) REFERENCES procedure_templates (practice_id, id)
);

-- The booking that a visit kept. A visit recorded wrongly keeps it, and counts no longer.
ALTER TABLE visits ADD COLUMN booked_visit_id uuid;
ALTER TABLE visits ADD FOREIGN KEY (practice_id, booked_visit_id)
  REFERENCES booked_visits (practice_id, id);
CREATE INDEX visits_booked ON visits (booked_visit_id) WHERE booked_visit_id IS NOT NULL;

-- Whether every visit of the practice is booked here before it takes place, and for how many days from
-- today on the diary is as full as it will get.
CREATE TABLE booked_planning (
  practice_id uuid PRIMARY KEY REFERENCES practices,
  whole_day boolean NOT NULL,
  full_days smallint NOT NULL CHECK (full_days BETWEEN 0 AND 60)
);

DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['booked_visits', 'booked_restorations', 'booked_planning'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
    EXECUTE format('CREATE POLICY practice_only ON %I USING (practice_id = current_practice())', t);
    EXECUTE format('GRANT SELECT, INSERT ON %I TO traybook_app', t);
  END LOOP;
END $$;
GRANT UPDATE (day, chart_reference, dentist_id, location_id, alike, kept, state, dropped_at,
  dropped_by, dropped_note) ON booked_visits TO traybook_app;
-- A booking that is changed has its restorations written anew.
GRANT DELETE ON booked_restorations TO traybook_app;
GRANT UPDATE ON booked_planning TO traybook_app;
