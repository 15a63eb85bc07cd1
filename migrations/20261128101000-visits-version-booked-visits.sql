-- Two people may change one booked visit: who changes it names the version that was seen, so that nobody
-- undoes unseen what another has just said. Recording a visit that keeps it is no change of what it says.
ALTER TABLE booked_visits ADD COLUMN version integer NOT NULL DEFAULT 1 CHECK (version > 0);
GRANT UPDATE (version) ON booked_visits TO traybook_app;
