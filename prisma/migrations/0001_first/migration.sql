-- The first state of Wheelchock's database.
-- Run by lib/operate/migrate.ts as the owner; the NOLOGIN role wheelchock_app exists by then and owns nothing.

CREATE TABLE operator (
  id uuid NOT NULL,
  name text NOT NULL,
  part141 boolean,
  next_write_up_number integer NOT NULL DEFAULT 1,
  created_at timestamptz(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  CONSTRAINT operator_pkey PRIMARY KEY (id)
);

CREATE TABLE base (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  ident text NOT NULL,
  name text NOT NULL,
  latitude_deg double precision NOT NULL,
  longitude_deg double precision NOT NULL,
  zone text NOT NULL,
  repair_available boolean,
  transponder_airspace boolean,
  adsb_airspace boolean,
  controlled_airspace boolean,
  CONSTRAINT base_pkey PRIMARY KEY (id),
  CONSTRAINT base_operator_key UNIQUE (operator_id, id)
);

CREATE TABLE person (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  name text NOT NULL,
  email text NOT NULL,
  password_hash text NOT NULL,
  session_version integer NOT NULL DEFAULT 1,
  roles text[] NOT NULL,
  home_base_id uuid,
  left_on date,
  failed_sign_ins integer NOT NULL DEFAULT 0,
  locked_until timestamptz(3),
  created_at timestamptz(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  CONSTRAINT person_pkey PRIMARY KEY (id),
  CONSTRAINT person_operator_key UNIQUE (operator_id, id),
  CONSTRAINT person_email_key UNIQUE (email)
);

CREATE TABLE certificate (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  person_id uuid NOT NULL,
  kind text NOT NULL,
  number text NOT NULL,
  grade text,
  ratings text[] NOT NULL,
  issued_on date,
  expires_on date,
  recent_experience_through date,
  first_year_activity_met boolean,
  authorised_to_sign boolean,
  revoked_on date,
  CONSTRAINT certificate_pkey PRIMARY KEY (id),
  CONSTRAINT certificate_operator_key UNIQUE (operator_id, id)
);

CREATE TABLE preventive_authorization (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  person_id uuid NOT NULL,
  granted_by_id uuid NOT NULL,
  granted_at timestamptz(3) NOT NULL,
  words text NOT NULL,
  CONSTRAINT preventive_authorization_pkey PRIMARY KEY (id),
  CONSTRAINT preventive_authorization_operator_key UNIQUE (operator_id, id)
);

CREATE TABLE aircraft_type (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  name text NOT NULL,
  category text NOT NULL,
  rating text NOT NULL,
  turbine boolean,
  max_takeoff_weight_lb integer,
  mmel_published boolean,
  certificated_on date,
  certificated_under_part23 boolean,
  engines integer NOT NULL,
  cooling text,
  altitude_engine boolean,
  retractable_gear boolean,
  fuel_tanks integer,
  seats integer,
  front_seats integer,
  uses_fuses boolean,
  equipment_list_source text,
  CONSTRAINT aircraft_type_pkey PRIMARY KEY (id),
  CONSTRAINT aircraft_type_operator_key UNIQUE (operator_id, id)
);

CREATE TABLE aircraft (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  type_id uuid NOT NULL,
  base_id uuid NOT NULL,
  registration text NOT NULL,
  serial text NOT NULL,
  for_hire boolean NOT NULL,
  standard_category boolean,
  manufactured_on date,
  hobbs_tenths integer,
  tach_tenths integer,
  ttis_tenths integer,
  directives_reviewed_on date,
  without_mel boolean,
  facts_version integer NOT NULL DEFAULT 1,
  retired_on date,
  CONSTRAINT aircraft_pkey PRIMARY KEY (id),
  CONSTRAINT aircraft_registration_key UNIQUE (operator_id, registration),
  CONSTRAINT aircraft_operator_key UNIQUE (operator_id, id)
);

CREATE TABLE equipment (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  aircraft_id uuid NOT NULL,
  name text NOT NULL,
  function text NOT NULL,
  jasc text NOT NULL,
  installed integer NOT NULL,
  vfr_day_type_design boolean,
  required_day_vfr integer,
  required_night_vfr integer,
  required_day_ifr integer,
  required_night_ifr integer,
  CONSTRAINT equipment_pkey PRIMARY KEY (id),
  CONSTRAINT equipment_operator_key UNIQUE (operator_id, id)
);

CREATE TABLE mel (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  aircraft_id uuid NOT NULL,
  reference text NOT NULL,
  letter_aboard boolean,
  letter_reference text,
  enforce_categories boolean NOT NULL,
  CONSTRAINT mel_pkey PRIMARY KEY (id),
  CONSTRAINT mel_operator_key UNIQUE (operator_id, id)
);

CREATE TABLE mel_item (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  mel_id uuid NOT NULL,
  equipment_id uuid NOT NULL,
  title text NOT NULL,
  category text NOT NULL,
  category_adays integer,
  installed integer NOT NULL,
  required_for_dispatch integer NOT NULL,
  allowed_night boolean NOT NULL,
  allowed_ifr boolean NOT NULL,
  allowed_hire boolean NOT NULL,
  proviso text NOT NULL,
  operating_procedure text,
  maintenance_procedure text,
  CONSTRAINT mel_item_pkey PRIMARY KEY (id),
  CONSTRAINT mel_item_operator_key UNIQUE (operator_id, id)
);

CREATE TABLE paper (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  aircraft_id uuid NOT NULL,
  kind text NOT NULL,
  reference text,
  aboard boolean,
  expires boolean,
  valid_through date,
  CONSTRAINT paper_pkey PRIMARY KEY (id),
  CONSTRAINT paper_operator_key UNIQUE (operator_id, id)
);

CREATE TABLE requirement (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  aircraft_id uuid NOT NULL,
  kind text NOT NULL,
  name text NOT NULL,
  reference text,
  binding boolean NOT NULL,
  interval_months integer,
  interval_days integer,
  interval_tenths integer,
  fixed_expiry date,
  CONSTRAINT requirement_pkey PRIMARY KEY (id),
  CONSTRAINT requirement_operator_key UNIQUE (operator_id, id)
);

CREATE TABLE compliance (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  requirement_id uuid NOT NULL,
  done_on date NOT NULL,
  ttis_tenths integer NOT NULL,
  was_due_tenths integer,
  tested_to_ft integer,
  approved_by_authorised boolean,
  approved_by text NOT NULL,
  sign_off_id uuid,
  recorded_by_id uuid NOT NULL,
  recorded_at timestamptz(3) NOT NULL,
  supersedes_id uuid,
  CONSTRAINT compliance_pkey PRIMARY KEY (id),
  CONSTRAINT compliance_operator_key UNIQUE (operator_id, id)
);

CREATE TABLE directive (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  aircraft_id uuid NOT NULL,
  number text NOT NULL,
  title text NOT NULL,
  equipment_id uuid,
  requires_operable boolean NOT NULL,
  CONSTRAINT directive_pkey PRIMARY KEY (id),
  CONSTRAINT directive_operator_key UNIQUE (operator_id, id)
);

CREATE TABLE stored_limit (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  aircraft_id uuid NOT NULL,
  finding_key text NOT NULL,
  measurement text NOT NULL,
  unit text NOT NULL,
  min integer,
  max integer,
  source text NOT NULL,
  source_date date,
  CONSTRAINT stored_limit_pkey PRIMARY KEY (id),
  CONSTRAINT stored_limit_operator_key UNIQUE (operator_id, id)
);

CREATE TABLE meter_reading (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  aircraft_id uuid NOT NULL,
  "at" timestamptz(3) NOT NULL,
  hobbs_tenths integer NOT NULL,
  tach_tenths integer NOT NULL,
  ttis_tenths integer NOT NULL,
  read_by_id uuid NOT NULL,
  CONSTRAINT meter_reading_pkey PRIMARY KEY (id),
  CONSTRAINT meter_reading_operator_key UNIQUE (operator_id, id)
);

CREATE TABLE walkaround (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  aircraft_id uuid NOT NULL,
  person_id uuid NOT NULL,
  started_at timestamptz(3) NOT NULL,
  finished_at timestamptz(3),
  stations jsonb NOT NULL,
  CONSTRAINT walkaround_pkey PRIMARY KEY (id),
  CONSTRAINT walkaround_operator_key UNIQUE (operator_id, id)
);

CREATE TABLE finding (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  aircraft_id uuid NOT NULL,
  walkaround_id uuid,
  person_id uuid NOT NULL,
  station text NOT NULL,
  finding_key text,
  kind text,
  place text NOT NULL,
  words text NOT NULL,
  measurements jsonb NOT NULL,
  found_at timestamptz(3) NOT NULL,
  received_at timestamptz(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  CONSTRAINT finding_pkey PRIMARY KEY (id),
  CONSTRAINT finding_operator_key UNIQUE (operator_id, id)
);

CREATE TABLE photo (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  finding_id uuid NOT NULL,
  mime text NOT NULL,
  width integer NOT NULL,
  height integer NOT NULL,
  sha256 text NOT NULL,
  bytes bytea NOT NULL,
  taken_by_id uuid NOT NULL,
  received_at timestamptz(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  CONSTRAINT photo_pkey PRIMARY KEY (id),
  CONSTRAINT photo_operator_key UNIQUE (operator_id, id)
);

CREATE TABLE discrepancy (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  aircraft_id uuid NOT NULL,
  finding_id uuid NOT NULL,
  number text NOT NULL,
  title text NOT NULL,
  jasc text NOT NULL,
  kind text NOT NULL,
  finding_key text,
  equipment_id uuid,
  inoperative_count integer,
  state text NOT NULL,
  proposed_severity text,
  severity text,
  reasons jsonb NOT NULL,
  opened_at timestamptz(3) NOT NULL,
  closed_at timestamptz(3),
  closed_how text,
  CONSTRAINT discrepancy_pkey PRIMARY KEY (id),
  CONSTRAINT discrepancy_finding_key UNIQUE (operator_id, finding_id),
  CONSTRAINT discrepancy_number_key UNIQUE (operator_id, number),
  CONSTRAINT discrepancy_operator_key UNIQUE (operator_id, id)
);

CREATE TABLE determination (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  discrepancy_id uuid NOT NULL,
  kind text NOT NULL,
  person_id uuid NOT NULL,
  person_name text NOT NULL,
  certificate_kind text NOT NULL,
  certificate_number text NOT NULL,
  statement text NOT NULL,
  severity text,
  measured text,
  limit_text text,
  limit_source text,
  lines jsonb NOT NULL,
  content jsonb NOT NULL,
  hash text NOT NULL,
  signed_at timestamptz(3) NOT NULL,
  signed_on date NOT NULL,
  supersedes_id uuid,
  CONSTRAINT determination_pkey PRIMARY KEY (id),
  CONSTRAINT determination_operator_key UNIQUE (operator_id, id)
);

CREATE TABLE deferral (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  discrepancy_id uuid NOT NULL,
  determination_id uuid NOT NULL,
  basis text NOT NULL,
  method text NOT NULL,
  method_words text NOT NULL,
  deactivation_is_maintenance boolean NOT NULL,
  mel_item_id uuid,
  mel_procedures_done boolean NOT NULL,
  recorded_on date NOT NULL,
  elt_first_removed_on date,
  elt_record_complete boolean,
  eligibility jsonb NOT NULL,
  begun_at timestamptz(3) NOT NULL,
  CONSTRAINT deferral_pkey PRIMARY KEY (id),
  CONSTRAINT deferral_operator_key UNIQUE (operator_id, id)
);

CREATE TABLE deferral_end (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  deferral_id uuid NOT NULL,
  how text NOT NULL,
  words text NOT NULL,
  ended_by_id uuid NOT NULL,
  ended_at timestamptz(3) NOT NULL,
  CONSTRAINT deferral_end_pkey PRIMARY KEY (id),
  CONSTRAINT deferral_end_deferral_key UNIQUE (operator_id, deferral_id),
  CONSTRAINT deferral_end_operator_key UNIQUE (operator_id, id)
);

CREATE TABLE placard (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  deferral_id uuid NOT NULL,
  wording text NOT NULL,
  location text NOT NULL,
  placed_at timestamptz(3),
  placed_by_id uuid,
  removed_at timestamptz(3),
  removed_by_id uuid,
  CONSTRAINT placard_pkey PRIMARY KEY (id),
  CONSTRAINT placard_operator_key UNIQUE (operator_id, id)
);

CREATE TABLE maintenance_action (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  aircraft_id uuid NOT NULL,
  discrepancy_id uuid,
  deferral_id uuid,
  requirement_id uuid,
  title text NOT NULL,
  part text NOT NULL,
  jasc text NOT NULL,
  work_kind text NOT NULL,
  preventive_item integer,
  swap_only boolean NOT NULL,
  state text NOT NULL,
  started_by_id uuid NOT NULL,
  started_at timestamptz(3) NOT NULL,
  description text,
  "references" text,
  parts_used text,
  completed_on date,
  performed_by text,
  ttis_tenths integer,
  check_flight_needed boolean,
  check_flight_reason text,
  entered_by_id uuid,
  entered_at timestamptz(3),
  CONSTRAINT maintenance_action_pkey PRIMARY KEY (id),
  CONSTRAINT maintenance_action_operator_key UNIQUE (operator_id, id)
);

CREATE TABLE sign_off (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  work_id uuid NOT NULL,
  person_id uuid NOT NULL,
  person_name text NOT NULL,
  certificate_kind text NOT NULL,
  certificate_number text NOT NULL,
  statement text NOT NULL,
  lines jsonb NOT NULL,
  content jsonb NOT NULL,
  hash text NOT NULL,
  signed_at timestamptz(3) NOT NULL,
  signed_on date NOT NULL,
  CONSTRAINT sign_off_pkey PRIMARY KEY (id),
  CONSTRAINT sign_off_work_key UNIQUE (operator_id, work_id),
  CONSTRAINT sign_off_operator_key UNIQUE (operator_id, id)
);

CREATE TABLE check_flight (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  work_id uuid NOT NULL,
  person_id uuid NOT NULL,
  person_name text NOT NULL,
  certificate_number text NOT NULL,
  words text NOT NULL,
  flown_on date NOT NULL,
  signed_at timestamptz(3) NOT NULL,
  content jsonb NOT NULL,
  hash text NOT NULL,
  CONSTRAINT check_flight_pkey PRIMARY KEY (id),
  CONSTRAINT check_flight_work_key UNIQUE (operator_id, work_id),
  CONSTRAINT check_flight_operator_key UNIQUE (operator_id, id)
);

CREATE TABLE release (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  aircraft_id uuid NOT NULL,
  dispatcher_id uuid NOT NULL,
  pilot_id uuid,
  depart_at timestamptz(3) NOT NULL,
  arrive_at timestamptz(3) NOT NULL,
  flight jsonb NOT NULL,
  facts jsonb NOT NULL,
  facts_version integer NOT NULL,
  outcome text NOT NULL,
  answer jsonb NOT NULL,
  rules_version text NOT NULL,
  limits_passed_on boolean NOT NULL,
  hash text NOT NULL,
  released_at timestamptz(3) NOT NULL,
  CONSTRAINT release_pkey PRIMARY KEY (id),
  CONSTRAINT release_operator_key UNIQUE (operator_id, id)
);

CREATE TABLE request (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  person_id uuid NOT NULL,
  verb text NOT NULL,
  input_hash text NOT NULL,
  result jsonb NOT NULL,
  "at" timestamptz(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  CONSTRAINT request_pkey PRIMARY KEY (id),
  CONSTRAINT request_operator_key UNIQUE (operator_id, id)
);

CREATE TABLE audit_row (
  operator_id uuid NOT NULL,
  seq integer NOT NULL,
  "at" timestamptz(3) NOT NULL,
  person_id uuid NOT NULL,
  verb text NOT NULL,
  subject_kind text NOT NULL,
  subject_id text NOT NULL,
  request_id uuid NOT NULL,
  detail jsonb NOT NULL,
  previous_hash text NOT NULL,
  hash text NOT NULL,
  CONSTRAINT audit_row_pkey PRIMARY KEY (operator_id, seq)
);

CREATE TABLE audit_head (
  operator_id uuid NOT NULL,
  seq integer NOT NULL,
  hash text NOT NULL,
  CONSTRAINT audit_head_pkey PRIMARY KEY (operator_id)
);

ALTER TABLE base ADD CONSTRAINT base_operator_fkey FOREIGN KEY (operator_id) REFERENCES operator (id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE person ADD CONSTRAINT person_operator_fkey FOREIGN KEY (operator_id) REFERENCES operator (id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE person ADD CONSTRAINT person_home_base_fkey FOREIGN KEY (operator_id, home_base_id) REFERENCES base (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE certificate ADD CONSTRAINT certificate_person_fkey FOREIGN KEY (operator_id, person_id) REFERENCES person (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE preventive_authorization ADD CONSTRAINT preventive_authorization_person_fkey FOREIGN KEY (operator_id, person_id) REFERENCES person (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE aircraft ADD CONSTRAINT aircraft_operator_fkey FOREIGN KEY (operator_id) REFERENCES operator (id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE aircraft ADD CONSTRAINT aircraft_type_fkey FOREIGN KEY (operator_id, type_id) REFERENCES aircraft_type (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE aircraft ADD CONSTRAINT aircraft_base_fkey FOREIGN KEY (operator_id, base_id) REFERENCES base (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE equipment ADD CONSTRAINT equipment_aircraft_fkey FOREIGN KEY (operator_id, aircraft_id) REFERENCES aircraft (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE mel ADD CONSTRAINT mel_aircraft_fkey FOREIGN KEY (operator_id, aircraft_id) REFERENCES aircraft (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE mel_item ADD CONSTRAINT mel_item_mel_fkey FOREIGN KEY (operator_id, mel_id) REFERENCES mel (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE mel_item ADD CONSTRAINT mel_item_equipment_fkey FOREIGN KEY (operator_id, equipment_id) REFERENCES equipment (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE paper ADD CONSTRAINT paper_aircraft_fkey FOREIGN KEY (operator_id, aircraft_id) REFERENCES aircraft (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE requirement ADD CONSTRAINT requirement_aircraft_fkey FOREIGN KEY (operator_id, aircraft_id) REFERENCES aircraft (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE compliance ADD CONSTRAINT compliance_requirement_fkey FOREIGN KEY (operator_id, requirement_id) REFERENCES requirement (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE directive ADD CONSTRAINT directive_aircraft_fkey FOREIGN KEY (operator_id, aircraft_id) REFERENCES aircraft (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE stored_limit ADD CONSTRAINT stored_limit_aircraft_fkey FOREIGN KEY (operator_id, aircraft_id) REFERENCES aircraft (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE meter_reading ADD CONSTRAINT meter_reading_aircraft_fkey FOREIGN KEY (operator_id, aircraft_id) REFERENCES aircraft (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE walkaround ADD CONSTRAINT walkaround_aircraft_fkey FOREIGN KEY (operator_id, aircraft_id) REFERENCES aircraft (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE finding ADD CONSTRAINT finding_aircraft_fkey FOREIGN KEY (operator_id, aircraft_id) REFERENCES aircraft (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE finding ADD CONSTRAINT finding_walkaround_fkey FOREIGN KEY (operator_id, walkaround_id) REFERENCES walkaround (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE photo ADD CONSTRAINT photo_finding_fkey FOREIGN KEY (operator_id, finding_id) REFERENCES finding (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE discrepancy ADD CONSTRAINT discrepancy_aircraft_fkey FOREIGN KEY (operator_id, aircraft_id) REFERENCES aircraft (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE discrepancy ADD CONSTRAINT discrepancy_finding_fkey FOREIGN KEY (operator_id, finding_id) REFERENCES finding (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE determination ADD CONSTRAINT determination_discrepancy_fkey FOREIGN KEY (operator_id, discrepancy_id) REFERENCES discrepancy (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE deferral ADD CONSTRAINT deferral_discrepancy_fkey FOREIGN KEY (operator_id, discrepancy_id) REFERENCES discrepancy (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE deferral ADD CONSTRAINT deferral_determination_fkey FOREIGN KEY (operator_id, determination_id) REFERENCES determination (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE deferral_end ADD CONSTRAINT deferral_end_deferral_fkey FOREIGN KEY (operator_id, deferral_id) REFERENCES deferral (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE placard ADD CONSTRAINT placard_deferral_fkey FOREIGN KEY (operator_id, deferral_id) REFERENCES deferral (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE maintenance_action ADD CONSTRAINT maintenance_action_aircraft_fkey FOREIGN KEY (operator_id, aircraft_id) REFERENCES aircraft (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE maintenance_action ADD CONSTRAINT maintenance_action_discrepancy_fkey FOREIGN KEY (operator_id, discrepancy_id) REFERENCES discrepancy (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE maintenance_action ADD CONSTRAINT maintenance_action_deferral_fkey FOREIGN KEY (operator_id, deferral_id) REFERENCES deferral (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE sign_off ADD CONSTRAINT sign_off_work_fkey FOREIGN KEY (operator_id, work_id) REFERENCES maintenance_action (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE check_flight ADD CONSTRAINT check_flight_work_fkey FOREIGN KEY (operator_id, work_id) REFERENCES maintenance_action (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE release ADD CONSTRAINT release_aircraft_fkey FOREIGN KEY (operator_id, aircraft_id) REFERENCES aircraft (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

-- Indexes for the reads that screens make ------------------------------------------------------------------------

CREATE INDEX aircraft_base_idx ON aircraft (operator_id, base_id);
CREATE INDEX certificate_person_idx ON certificate (operator_id, person_id);
CREATE INDEX equipment_aircraft_idx ON equipment (operator_id, aircraft_id);
CREATE INDEX mel_aircraft_idx ON mel (operator_id, aircraft_id);
CREATE INDEX mel_item_mel_idx ON mel_item (operator_id, mel_id);
CREATE INDEX paper_aircraft_idx ON paper (operator_id, aircraft_id);
CREATE INDEX requirement_aircraft_idx ON requirement (operator_id, aircraft_id);
CREATE INDEX compliance_requirement_idx ON compliance (operator_id, requirement_id, recorded_at);
CREATE INDEX directive_aircraft_idx ON directive (operator_id, aircraft_id);
CREATE INDEX stored_limit_aircraft_idx ON stored_limit (operator_id, aircraft_id);
CREATE INDEX meter_reading_aircraft_idx ON meter_reading (operator_id, aircraft_id, at);
CREATE INDEX walkaround_aircraft_idx ON walkaround (operator_id, aircraft_id, started_at);
CREATE INDEX finding_aircraft_idx ON finding (operator_id, aircraft_id, received_at);
CREATE INDEX finding_person_idx ON finding (operator_id, person_id, received_at);
CREATE INDEX photo_finding_idx ON photo (operator_id, finding_id);
CREATE INDEX discrepancy_open_idx ON discrepancy (operator_id, aircraft_id) WHERE state <> 'closed';
CREATE INDEX discrepancy_aircraft_idx ON discrepancy (operator_id, aircraft_id, opened_at);
CREATE INDEX determination_discrepancy_idx ON determination (operator_id, discrepancy_id);
CREATE INDEX deferral_discrepancy_idx ON deferral (operator_id, discrepancy_id);
CREATE INDEX placard_deferral_idx ON placard (operator_id, deferral_id);
CREATE INDEX maintenance_action_aircraft_idx ON maintenance_action (operator_id, aircraft_id);
CREATE INDEX maintenance_action_discrepancy_idx ON maintenance_action (operator_id, discrepancy_id);
CREATE INDEX release_aircraft_idx ON release (operator_id, aircraft_id, depart_at);

-- One live thing at a time: two mechanics, two taps, two tabs ---------------------------------------------------------

CREATE UNIQUE INDEX maintenance_action_open_per_discrepancy_key ON maintenance_action (operator_id, discrepancy_id)
  WHERE state IN ('started', 'entered') AND discrepancy_id IS NOT NULL AND deferral_id IS NULL;
CREATE UNIQUE INDEX mel_one_per_aircraft_key ON mel (operator_id, aircraft_id);

-- Words the code knows; anything else is a mistake and is refused here too -------------------------------------------

ALTER TABLE person ADD CONSTRAINT person_email_lower CHECK (email = lower(email));
ALTER TABLE person ADD CONSTRAINT person_roles_known
  CHECK (roles <@ ARRAY['pilot', 'mechanic', 'dispatcher', 'manager']::text[]);
ALTER TABLE discrepancy ADD CONSTRAINT discrepancy_state_known CHECK (state IN ('open', 'deferred', 'closed'));
ALTER TABLE discrepancy ADD CONSTRAINT discrepancy_severity_known
  CHECK (severity IS NULL OR severity IN ('grounding', 'limiting', 'watch', 'note'));
ALTER TABLE discrepancy ADD CONSTRAINT discrepancy_closed_whole
  CHECK ((state = 'closed') = (closed_at IS NOT NULL) AND (state = 'closed') = (closed_how IS NOT NULL));
ALTER TABLE maintenance_action ADD CONSTRAINT maintenance_action_state_known
  CHECK (state IN ('started', 'entered', 'signed', 'abandoned'));
ALTER TABLE release ADD CONSTRAINT release_never_no_go CHECK (outcome IN ('go', 'go-with-limits'));
ALTER TABLE deferral ADD CONSTRAINT deferral_basis_known CHECK (basis IN ('91.213(d)', 'mel'));
ALTER TABLE deferral ADD CONSTRAINT deferral_method_known CHECK (method IN ('removed', 'deactivated'));
ALTER TABLE aircraft ADD CONSTRAINT aircraft_hours_whole
  CHECK (hobbs_tenths >= 0 AND tach_tenths >= 0 AND ttis_tenths >= 0);
ALTER TABLE equipment ADD CONSTRAINT equipment_required_all_or_none
  CHECK (num_nulls(required_day_vfr, required_night_vfr, required_day_ifr, required_night_ifr) IN (0, 4));

-- Append-only: what was signed stays as it was signed ------------------------------------------------------------------

CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'a row of % is never changed or deleted; supersede it with a new signed entry', TG_TABLE_NAME
    USING ERRCODE = 'restrict_violation';
END $$;

DO $$
DECLARE
  signed text;
BEGIN
  FOREACH signed IN ARRAY ARRAY['preventive_authorization', 'compliance', 'meter_reading', 'finding', 'photo',
    'determination', 'deferral', 'deferral_end', 'sign_off', 'check_flight', 'release', 'request', 'audit_row']
  LOOP
    EXECUTE format('CREATE TRIGGER %I BEFORE UPDATE OR DELETE ON %I FOR EACH ROW EXECUTE FUNCTION refuse_change()',
      signed || '_append_only', signed);
    EXECUTE format('CREATE TRIGGER %I BEFORE TRUNCATE ON %I FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()',
      signed || '_no_truncate', signed);
  END LOOP;
END $$;

-- A signed entry freezes the work it signs.
CREATE FUNCTION freeze_signed_work() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'DELETE' OR OLD.state IN ('signed', 'abandoned') THEN
    RAISE EXCEPTION 'work % is closed and is never changed or deleted', OLD.id USING ERRCODE = 'restrict_violation';
  END IF;
  IF NEW.state = 'signed' AND NOT EXISTS (
    SELECT 1 FROM sign_off WHERE operator_id = NEW.operator_id AND work_id = NEW.id) THEN
    RAISE EXCEPTION 'work % cannot be signed without its sign-off', OLD.id USING ERRCODE = 'restrict_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER maintenance_action_frozen BEFORE UPDATE OR DELETE ON maintenance_action
  FOR EACH ROW EXECUTE FUNCTION freeze_signed_work();

-- A placard that was placed stays placed until somebody removes it, and both stay on record.
CREATE FUNCTION keep_placard_history() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'DELETE' OR (OLD.placed_at IS NOT NULL AND NEW.placed_at IS DISTINCT FROM OLD.placed_at)
    OR (OLD.removed_at IS NOT NULL AND NEW.removed_at IS DISTINCT FROM OLD.removed_at)
    OR NEW.wording <> OLD.wording THEN
    RAISE EXCEPTION 'the history of placard % is never changed', OLD.id USING ERRCODE = 'restrict_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER placard_history BEFORE UPDATE OR DELETE ON placard FOR EACH ROW EXECUTE FUNCTION keep_placard_history();

-- A closed write-up stays closed; the same trouble again is a new write-up.
CREATE FUNCTION keep_discrepancy_closed() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'DELETE' OR OLD.state = 'closed' OR NEW.number <> OLD.number OR NEW.finding_id <> OLD.finding_id THEN
    RAISE EXCEPTION 'write-up % is closed or its identity would change', OLD.number USING ERRCODE = 'restrict_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER discrepancy_closed BEFORE UPDATE OR DELETE ON discrepancy
  FOR EACH ROW EXECUTE FUNCTION keep_discrepancy_closed();

-- The head of an audit chain only ever moves one step on.
CREATE FUNCTION step_audit_head() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'DELETE' OR NEW.seq <> OLD.seq + 1 THEN
    RAISE EXCEPTION 'the audit chain only grows' USING ERRCODE = 'restrict_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER audit_head_steps BEFORE UPDATE OR DELETE ON audit_head FOR EACH ROW EXECUTE FUNCTION step_audit_head();

-- Tenancy: the operator is a setting of the transaction; without it there are no rows ----------------------------------

CREATE FUNCTION current_operator() RETURNS uuid LANGUAGE sql STABLE AS
  $$ SELECT nullif(current_setting('app.operator_id', true), '')::uuid $$;

DO $$
DECLARE
  owned record;
BEGIN
  FOR owned IN
    SELECT c.relname FROM pg_class c JOIN pg_attribute a ON a.attrelid = c.oid
    WHERE c.relnamespace = current_schema()::regnamespace AND c.relkind = 'r' AND a.attname = 'operator_id'
  LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', owned.relname);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', owned.relname);
    EXECUTE format('CREATE POLICY tenant ON %I TO wheelchock_app USING (operator_id = (SELECT current_operator()))
      WITH CHECK (operator_id = (SELECT current_operator()))', owned.relname);
    EXECUTE format('CREATE POLICY owner ON %I TO CURRENT_USER USING (true) WITH CHECK (true)', owned.relname);
  END LOOP;
END $$;

ALTER TABLE operator ENABLE ROW LEVEL SECURITY;
ALTER TABLE operator FORCE ROW LEVEL SECURITY;
CREATE POLICY tenant ON operator TO wheelchock_app USING (id = (SELECT current_operator()))
  WITH CHECK (id = (SELECT current_operator()));
CREATE POLICY owner ON operator TO CURRENT_USER USING (true) WITH CHECK (true);

-- Before an operator is known there is one question only: whose is this address?
CREATE POLICY sign_in ON person FOR SELECT TO wheelchock_app
  USING (email = nullif(current_setting('app.sign_in_email', true), ''));

-- Grants: the app reads everything of its operator, inserts, and updates only what is not signed. It deletes nothing.

GRANT USAGE ON SCHEMA public TO wheelchock_app;
GRANT SELECT, INSERT ON ALL TABLES IN SCHEMA public TO wheelchock_app;
REVOKE ALL ON applied_migration FROM wheelchock_app;
GRANT SELECT ON applied_migration TO wheelchock_app;
GRANT UPDATE (next_write_up_number) ON operator TO wheelchock_app;
GRANT UPDATE ON person, aircraft, walkaround, discrepancy, placard, maintenance_action, audit_head TO wheelchock_app;
GRANT EXECUTE ON FUNCTION current_operator() TO wheelchock_app;
