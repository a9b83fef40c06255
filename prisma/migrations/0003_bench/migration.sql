-- The bench: visits, planned flights, entries with parts and hours, inspections, directives and life limits, extensions of
-- a minimum equipment list, special flight permits, corrections of signed entries.

-- Flights somebody plans; they say how soon an aircraft is wanted and release nothing -------------------------------------

CREATE TABLE planned_flight (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  aircraft_id uuid NOT NULL,
  pilot_id uuid,
  depart_at timestamptz(3) NOT NULL,
  arrive_at timestamptz(3) NOT NULL,
  planned_tenths integer,
  words text NOT NULL,
  planned_by_id uuid NOT NULL,
  planned_at timestamptz(3) NOT NULL,
  cancelled_at timestamptz(3),
  cancelled_by_id uuid,
  CONSTRAINT planned_flight_pkey PRIMARY KEY (id),
  CONSTRAINT planned_flight_operator_key UNIQUE (operator_id, id),
  CONSTRAINT planned_flight_lasts CHECK (arrive_at > depart_at),
  CONSTRAINT planned_flight_cancel_whole CHECK ((cancelled_at IS NULL) = (cancelled_by_id IS NULL))
);
ALTER TABLE planned_flight ADD CONSTRAINT planned_flight_aircraft_fkey FOREIGN KEY (operator_id, aircraft_id) REFERENCES aircraft (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE planned_flight ADD CONSTRAINT planned_flight_pilot_fkey FOREIGN KEY (operator_id, pilot_id) REFERENCES person (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
CREATE INDEX planned_flight_aircraft_idx ON planned_flight (operator_id, aircraft_id, depart_at);

-- Visits: write-ups and what recurs, taken together in one stay at the shop ------------------------------------------------

CREATE TABLE visit (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  aircraft_id uuid NOT NULL,
  title text NOT NULL,
  words text NOT NULL,
  planned_on date,
  opened_by_id uuid NOT NULL,
  opened_at timestamptz(3) NOT NULL,
  closed_at timestamptz(3),
  closed_by_id uuid,
  CONSTRAINT visit_pkey PRIMARY KEY (id),
  CONSTRAINT visit_operator_key UNIQUE (operator_id, id),
  CONSTRAINT visit_closed_whole CHECK ((closed_at IS NULL) = (closed_by_id IS NULL))
);
ALTER TABLE visit ADD CONSTRAINT visit_aircraft_fkey FOREIGN KEY (operator_id, aircraft_id) REFERENCES aircraft (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
CREATE INDEX visit_aircraft_idx ON visit (operator_id, aircraft_id);

CREATE TABLE visit_item (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  visit_id uuid NOT NULL,
  discrepancy_id uuid,
  requirement_id uuid,
  added_by_id uuid NOT NULL,
  added_at timestamptz(3) NOT NULL,
  removed_at timestamptz(3),
  removed_by_id uuid,
  CONSTRAINT visit_item_pkey PRIMARY KEY (id),
  CONSTRAINT visit_item_operator_key UNIQUE (operator_id, id),
  CONSTRAINT visit_item_is_one_thing CHECK (num_nonnulls(discrepancy_id, requirement_id) = 1),
  CONSTRAINT visit_item_removed_whole CHECK ((removed_at IS NULL) = (removed_by_id IS NULL))
);
ALTER TABLE visit_item ADD CONSTRAINT visit_item_visit_fkey FOREIGN KEY (operator_id, visit_id) REFERENCES visit (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE visit_item ADD CONSTRAINT visit_item_discrepancy_fkey FOREIGN KEY (operator_id, discrepancy_id) REFERENCES discrepancy (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE visit_item ADD CONSTRAINT visit_item_requirement_fkey FOREIGN KEY (operator_id, requirement_id) REFERENCES requirement (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
CREATE UNIQUE INDEX visit_item_discrepancy_key ON visit_item (operator_id, visit_id, discrepancy_id) WHERE removed_at IS NULL AND discrepancy_id IS NOT NULL;
CREATE UNIQUE INDEX visit_item_requirement_key ON visit_item (operator_id, visit_id, requirement_id) WHERE removed_at IS NULL AND requirement_id IS NOT NULL;

-- What recurs can be added and can end; a paper can be renewed ---------------------------------------------------------------

ALTER TABLE requirement ADD COLUMN added_by_id uuid;
ALTER TABLE requirement ADD COLUMN added_at timestamptz(3);
ALTER TABLE requirement ADD COLUMN ended_on date;
ALTER TABLE requirement ADD COLUMN ended_why text;
ALTER TABLE requirement ADD COLUMN ended_by_id uuid;
ALTER TABLE requirement ADD CONSTRAINT requirement_end_whole
  CHECK ((ended_on IS NULL) = (ended_why IS NULL) AND (ended_on IS NULL) = (ended_by_id IS NULL));

-- Inspections (43.11): one run through annual or 100-hour, signed part by part ------------------------------------------------

CREATE TABLE inspection (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  aircraft_id uuid NOT NULL,
  visit_id uuid,
  kind text NOT NULL,
  -- The requirements it answers, all of this aircraft.
  requirement_ids uuid[] NOT NULL,
  begun_by_id uuid NOT NULL,
  begun_at timestamptz(3) NOT NULL,
  -- begun, entered, complete, given-up.
  state text NOT NULL,
  extent text,
  checklist text,
  run_up jsonb,
  ttis_tenths integer,
  completed_on date,
  entered_by_id uuid,
  entered_at timestamptz(3),
  completed_at timestamptz(3),
  given_up_why text,
  CONSTRAINT inspection_pkey PRIMARY KEY (id),
  CONSTRAINT inspection_operator_key UNIQUE (operator_id, id),
  CONSTRAINT inspection_kind_known CHECK (kind IN ('annual', 'hundred-hour')),
  CONSTRAINT inspection_state_known CHECK (state IN ('begun', 'entered', 'complete', 'given-up')),
  CONSTRAINT inspection_complete_whole CHECK ((state = 'complete') = (completed_at IS NOT NULL))
);
ALTER TABLE inspection ADD CONSTRAINT inspection_aircraft_fkey FOREIGN KEY (operator_id, aircraft_id) REFERENCES aircraft (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE inspection ADD CONSTRAINT inspection_visit_fkey FOREIGN KEY (operator_id, visit_id) REFERENCES visit (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
CREATE UNIQUE INDEX inspection_open_per_aircraft_key ON inspection (operator_id, aircraft_id) WHERE state IN ('begun', 'entered');
CREATE INDEX inspection_aircraft_idx ON inspection (operator_id, aircraft_id);

CREATE FUNCTION freeze_complete_inspection() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'DELETE' OR OLD.state IN ('complete', 'given-up') OR NEW.aircraft_id <> OLD.aircraft_id THEN
    RAISE EXCEPTION 'inspection % is closed or its identity would change', OLD.id USING ERRCODE = 'restrict_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER inspection_frozen BEFORE UPDATE OR DELETE ON inspection
  FOR EACH ROW EXECUTE FUNCTION freeze_complete_inspection();
CREATE TRIGGER inspection_no_truncate BEFORE TRUNCATE ON inspection FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

-- The signed, dated list of 43.11(b).
CREATE TABLE discrepancy_list (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  inspection_id uuid NOT NULL,
  dated date NOT NULL,
  items jsonb NOT NULL,
  person_id uuid NOT NULL,
  person_name text NOT NULL,
  certificate_kind text NOT NULL,
  certificate_number text NOT NULL,
  content jsonb NOT NULL,
  hash text NOT NULL,
  signed_at timestamptz(3) NOT NULL,
  signed_on date NOT NULL,
  supersedes_id uuid,
  CONSTRAINT discrepancy_list_pkey PRIMARY KEY (id),
  CONSTRAINT discrepancy_list_operator_key UNIQUE (operator_id, id),
  CONSTRAINT discrepancy_list_supersedes_key UNIQUE (operator_id, supersedes_id)
);
ALTER TABLE discrepancy_list ADD CONSTRAINT discrepancy_list_inspection_fkey FOREIGN KEY (operator_id, inspection_id) REFERENCES inspection (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE discrepancy_list ADD CONSTRAINT discrepancy_list_supersedes_fkey FOREIGN KEY (operator_id, supersedes_id) REFERENCES discrepancy_list (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

-- The entry of 43.9(a), with what a bench writes beside it --------------------------------------------------------------------

-- Parts fitted and taken out: [{ did, name, number, serial, batch, quantity, release }].
ALTER TABLE maintenance_action ADD COLUMN parts jsonb;
-- Hours of work, whole tenths.
ALTER TABLE maintenance_action ADD COLUMN labor_tenths integer;
-- Answers to the questions of part 43 Appendix A(b), by question.
ALTER TABLE maintenance_action ADD COLUMN major_answers jsonb;
-- Tests of 91.411(a)(2), (a)(3) and 91.413(b) owed after it. Null: the entry is older than the question.
ALTER TABLE maintenance_action ADD COLUMN tests_owed text[];
-- The work whose owed tests this work is.
ALTER TABLE maintenance_action ADD COLUMN test_for_id uuid;
ALTER TABLE maintenance_action ADD COLUMN form_337 text;
ALTER TABLE maintenance_action ADD COLUMN approved_data text;
-- 43.5(c): the work changed operating limits or flight data; and how the manual was revised.
ALTER TABLE maintenance_action ADD COLUMN limits_changed boolean;
ALTER TABLE maintenance_action ADD COLUMN limits_revised text;
-- 43.3(d): the signer watched the one who did the work and was available in person. Null: not asked.
ALTER TABLE maintenance_action ADD COLUMN supervised boolean;
ALTER TABLE maintenance_action ADD COLUMN outcome text;
ALTER TABLE maintenance_action ADD COLUMN supersedes_id uuid;
ALTER TABLE maintenance_action ADD COLUMN supersede_why text;
ALTER TABLE maintenance_action ADD COLUMN inspection_id uuid;
-- What work on a requirement records beyond the entry: tested altitude, new expiry, method, revision.
ALTER TABLE maintenance_action ADD COLUMN details jsonb;
ALTER TABLE maintenance_action ADD CONSTRAINT maintenance_action_outcome_known CHECK (outcome IN ('repaired', 'could-not-duplicate'));
ALTER TABLE maintenance_action ADD CONSTRAINT maintenance_action_supersede_whole
  CHECK ((supersedes_id IS NULL) = (supersede_why IS NULL) AND supersede_why <> '');
ALTER TABLE maintenance_action ADD CONSTRAINT maintenance_action_test_for_fkey FOREIGN KEY (operator_id, test_for_id) REFERENCES maintenance_action (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE maintenance_action ADD CONSTRAINT maintenance_action_supersedes_fkey FOREIGN KEY (operator_id, supersedes_id) REFERENCES maintenance_action (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE maintenance_action ADD CONSTRAINT maintenance_action_inspection_fkey FOREIGN KEY (operator_id, inspection_id) REFERENCES inspection (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE maintenance_action ADD CONSTRAINT maintenance_action_requirement_fkey FOREIGN KEY (operator_id, requirement_id) REFERENCES requirement (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
-- One correction of an entry stands or is under way at a time; one given up makes room for another.
CREATE UNIQUE INDEX maintenance_action_supersedes_key ON maintenance_action (operator_id, supersedes_id)
  WHERE supersedes_id IS NOT NULL AND state <> 'abandoned';
CREATE UNIQUE INDEX maintenance_action_open_per_requirement_key ON maintenance_action (operator_id, requirement_id)
  WHERE state IN ('started', 'entered') AND requirement_id IS NOT NULL AND inspection_id IS NULL;

ALTER TABLE sign_off ADD COLUMN airworthy boolean;
ALTER TABLE sign_off ADD COLUMN list_id uuid;
ALTER TABLE sign_off ADD CONSTRAINT sign_off_list_fkey FOREIGN KEY (operator_id, list_id) REFERENCES discrepancy_list (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

-- A requirement answered by an inspection, by work, or by a signed record of its own --------------------------------------------

ALTER TABLE compliance ADD COLUMN inspection_id uuid;
ALTER TABLE compliance ADD COLUMN work_id uuid;
ALTER TABLE compliance ADD COLUMN details jsonb;
ALTER TABLE compliance ADD COLUMN new_expiry date;
ALTER TABLE compliance ADD COLUMN content jsonb;
ALTER TABLE compliance ADD COLUMN hash text;
-- A record is corrected once; the correction is what is corrected next.
ALTER TABLE compliance ADD CONSTRAINT compliance_supersedes_key UNIQUE (operator_id, supersedes_id);
ALTER TABLE compliance ADD CONSTRAINT compliance_signed_whole CHECK ((content IS NULL) = (hash IS NULL));
ALTER TABLE compliance ADD CONSTRAINT compliance_inspection_fkey FOREIGN KEY (operator_id, inspection_id) REFERENCES inspection (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE compliance ADD CONSTRAINT compliance_work_fkey FOREIGN KEY (operator_id, work_id) REFERENCES maintenance_action (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

-- Use of the emergency locator transmitter, for the hour of 91.207(c)(1).
CREATE TABLE elt_use (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  aircraft_id uuid NOT NULL,
  used_on date NOT NULL,
  minutes integer NOT NULL,
  words text NOT NULL,
  recorded_by_id uuid NOT NULL,
  recorded_at timestamptz(3) NOT NULL,
  CONSTRAINT elt_use_pkey PRIMARY KEY (id),
  CONSTRAINT elt_use_operator_key UNIQUE (operator_id, id),
  CONSTRAINT elt_use_minutes_count CHECK (minutes > 0)
);
ALTER TABLE elt_use ADD CONSTRAINT elt_use_aircraft_fkey FOREIGN KEY (operator_id, aircraft_id) REFERENCES aircraft (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
CREATE INDEX elt_use_aircraft_idx ON elt_use (operator_id, aircraft_id, used_on);

-- Determinations that name their measurement and limit, or the inspection they were made at ------------------------------------

ALTER TABLE determination ADD COLUMN measurement text;
ALTER TABLE determination ADD COLUMN measured_value integer;
ALTER TABLE determination ADD COLUMN limit_id uuid;
ALTER TABLE determination ADD COLUMN deferral_id uuid;
ALTER TABLE determination ADD COLUMN inspection_id uuid;
ALTER TABLE determination ADD COLUMN compliance_id uuid;
ALTER TABLE determination ADD CONSTRAINT determination_limit_fkey FOREIGN KEY (operator_id, limit_id) REFERENCES stored_limit (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE determination ADD CONSTRAINT determination_of_deferral_fkey FOREIGN KEY (operator_id, deferral_id) REFERENCES deferral (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE determination ADD CONSTRAINT determination_inspection_fkey FOREIGN KEY (operator_id, inspection_id) REFERENCES inspection (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE determination ADD CONSTRAINT determination_compliance_fkey FOREIGN KEY (operator_id, compliance_id) REFERENCES compliance (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

-- Extension of a repair interval, where the letter of authorization gives the authority ----------------------------------------

ALTER TABLE mel ADD COLUMN extension_categories text[];
ALTER TABLE mel ADD COLUMN extension_reference text;

CREATE TABLE mel_extension (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  deferral_id uuid NOT NULL,
  until_on date NOT NULL,
  reason text NOT NULL,
  authority text NOT NULL,
  person_id uuid NOT NULL,
  person_name text NOT NULL,
  content jsonb NOT NULL,
  hash text NOT NULL,
  signed_at timestamptz(3) NOT NULL,
  signed_on date NOT NULL,
  CONSTRAINT mel_extension_pkey PRIMARY KEY (id),
  CONSTRAINT mel_extension_operator_key UNIQUE (operator_id, id),
  CONSTRAINT mel_extension_once_key UNIQUE (operator_id, deferral_id)
);
ALTER TABLE mel_extension ADD CONSTRAINT mel_extension_deferral_fkey FOREIGN KEY (operator_id, deferral_id) REFERENCES deferral (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

-- Special flight permits (21.197): what the paper says, for one flight -----------------------------------------------------------

CREATE TABLE special_flight_permit (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  aircraft_id uuid NOT NULL,
  reference text NOT NULL,
  purpose text NOT NULL,
  issued_by text NOT NULL,
  issued_on date NOT NULL,
  good_from date NOT NULL,
  good_through date NOT NULL,
  from_base_id uuid NOT NULL,
  to_base_id uuid NOT NULL,
  crew text NOT NULL,
  limits jsonb NOT NULL,
  -- The ways in which the aircraft does not comply, as the permit names them: [{ kind, id, label }].
  covers jsonb NOT NULL,
  -- The permit asks for an inspection before the flight.
  asks_inspection boolean NOT NULL,
  recorded_by_id uuid NOT NULL,
  content jsonb NOT NULL,
  hash text NOT NULL,
  signed_at timestamptz(3) NOT NULL,
  signed_on date NOT NULL,
  CONSTRAINT special_flight_permit_pkey PRIMARY KEY (id),
  CONSTRAINT special_flight_permit_operator_key UNIQUE (operator_id, id),
  CONSTRAINT special_flight_permit_days CHECK (good_through >= good_from)
);
ALTER TABLE special_flight_permit ADD CONSTRAINT special_flight_permit_aircraft_fkey FOREIGN KEY (operator_id, aircraft_id) REFERENCES aircraft (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE special_flight_permit ADD CONSTRAINT special_flight_permit_from_fkey FOREIGN KEY (operator_id, from_base_id) REFERENCES base (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE special_flight_permit ADD CONSTRAINT special_flight_permit_to_fkey FOREIGN KEY (operator_id, to_base_id) REFERENCES base (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
CREATE INDEX special_flight_permit_aircraft_idx ON special_flight_permit (operator_id, aircraft_id);

CREATE TABLE permit_inspection (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  permit_id uuid NOT NULL,
  person_id uuid NOT NULL,
  person_name text NOT NULL,
  certificate_kind text NOT NULL,
  certificate_number text NOT NULL,
  statement text NOT NULL,
  content jsonb NOT NULL,
  hash text NOT NULL,
  signed_at timestamptz(3) NOT NULL,
  signed_on date NOT NULL,
  CONSTRAINT permit_inspection_pkey PRIMARY KEY (id),
  CONSTRAINT permit_inspection_operator_key UNIQUE (operator_id, id),
  CONSTRAINT permit_inspection_permit_key UNIQUE (operator_id, permit_id)
);
ALTER TABLE permit_inspection ADD CONSTRAINT permit_inspection_permit_fkey FOREIGN KEY (operator_id, permit_id) REFERENCES special_flight_permit (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

-- One flight a permit: the second release under it is refused here too.
ALTER TABLE release ADD COLUMN permit_id uuid;
ALTER TABLE release ADD CONSTRAINT release_permit_fkey FOREIGN KEY (operator_id, permit_id) REFERENCES special_flight_permit (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE release ADD CONSTRAINT release_permit_key UNIQUE (operator_id, permit_id);

-- Append-only, tenancy and grants as in the migrations before --------------------------------------------------------------------

DO $$
DECLARE
  signed text;
BEGIN
  FOREACH signed IN ARRAY ARRAY['discrepancy_list', 'elt_use', 'mel_extension', 'special_flight_permit', 'permit_inspection']
  LOOP
    EXECUTE format('CREATE TRIGGER %I BEFORE UPDATE OR DELETE ON %I FOR EACH ROW EXECUTE FUNCTION refuse_change()',
      signed || '_append_only', signed);
    EXECUTE format('CREATE TRIGGER %I BEFORE TRUNCATE ON %I FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()',
      signed || '_no_truncate', signed);
  END LOOP;
END $$;

DO $$
DECLARE
  owned text;
BEGIN
  FOREACH owned IN ARRAY ARRAY['planned_flight', 'visit', 'visit_item', 'inspection', 'discrepancy_list', 'elt_use',
    'mel_extension', 'special_flight_permit', 'permit_inspection']
  LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', owned);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', owned);
    EXECUTE format('CREATE POLICY tenant ON %I TO wheelchock_app USING (operator_id = (SELECT current_operator()))
      WITH CHECK (operator_id = (SELECT current_operator()))', owned);
    EXECUTE format('CREATE POLICY owner ON %I TO CURRENT_USER USING (true) WITH CHECK (true)', owned);
    EXECUTE format('GRANT SELECT, INSERT ON %I TO wheelchock_app', owned);
  END LOOP;
END $$;
GRANT UPDATE (cancelled_at, cancelled_by_id) ON planned_flight TO wheelchock_app;
GRANT UPDATE (title, words, planned_on, closed_at, closed_by_id) ON visit TO wheelchock_app;
GRANT UPDATE (removed_at, removed_by_id) ON visit_item TO wheelchock_app;
GRANT UPDATE (state, extent, checklist, run_up, ttis_tenths, completed_on, entered_by_id, entered_at, completed_at, given_up_why)
  ON inspection TO wheelchock_app;
GRANT UPDATE (ended_on, ended_why, ended_by_id) ON requirement TO wheelchock_app;
GRANT UPDATE (valid_through, reference, aboard, expires) ON paper TO wheelchock_app;
-- A unit taken out for good is no longer installed.
GRANT UPDATE (installed) ON equipment TO wheelchock_app;
