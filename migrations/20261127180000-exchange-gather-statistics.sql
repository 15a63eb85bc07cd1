-- After thousands of rows came in at once the database plans as if its tables were still small, until it
-- looks at them by itself a minute or more later. An import of that size has it look at once.
CREATE FUNCTION look_at_what_came_in() RETURNS void
LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  ANALYZE suppliers, locations, consumables, presentations, lots, deliveries, layers, holdings,
    movements, imported_rows, booked_visits, booked_restorations;
END $$;
REVOKE ALL ON FUNCTION look_at_what_came_in() FROM PUBLIC;
GRANT EXECUTE ON FUNCTION look_at_what_came_in() TO traybook_app;
