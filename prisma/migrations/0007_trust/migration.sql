-- Trust: wrong tries to sign in are counted by where they come from too, so that one password cannot be tried at many accounts.
-- Every change here adds: the program of before runs on this database as well (see docs/operate.md).

-- Wrong tries of one sender within a while. There is no operator yet when somebody knocks, so this is nobody's row; the sender is
-- a keyed hash, made by the program. The web account sees and changes nothing here but through the two functions.
CREATE TABLE sign_in_knock (
  sender_hmac text NOT NULL,
  began_at timestamptz(3) NOT NULL,
  tries integer NOT NULL,
  CONSTRAINT sign_in_knock_pkey PRIMARY KEY (sender_hmac),
  CONSTRAINT sign_in_knock_hashed CHECK (sender_hmac ~ '^[0-9a-f]{64}$'),
  CONSTRAINT sign_in_knock_counted CHECK (tries >= 0)
);
ALTER TABLE sign_in_knock ENABLE ROW LEVEL SECURITY;
ALTER TABLE sign_in_knock FORCE ROW LEVEL SECURITY;
CREATE POLICY owner ON sign_in_knock TO CURRENT_USER USING (true) WITH CHECK (true);

-- Counts one try before it is judged, so that many at once cannot all see an open door, and gives how many there were. By the
-- database's clock, which all servers share. Rows of others whose while is over go; one that is held at the moment waits for the next.
CREATE FUNCTION count_knock(whose text, minutes integer) RETURNS integer
  LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
DECLARE
  over timestamptz := now() - make_interval(mins => minutes);
  counted integer;
BEGIN
  INSERT INTO sign_in_knock AS k (sender_hmac, began_at, tries) VALUES (whose, now(), 1)
    ON CONFLICT (sender_hmac) DO UPDATE SET
      began_at = CASE WHEN k.began_at <= over THEN now() ELSE k.began_at END,
      tries = CASE WHEN k.began_at <= over THEN 1 ELSE k.tries + 1 END
    RETURNING k.tries INTO counted;
  DELETE FROM sign_in_knock WHERE sender_hmac IN
    (SELECT sender_hmac FROM sign_in_knock WHERE began_at <= over LIMIT 100 FOR UPDATE SKIP LOCKED);
  RETURN counted;
END $$;
REVOKE ALL ON FUNCTION count_knock(text, integer) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION count_knock(text, integer) TO wheelchock_app;

-- A try that was right is none: a school behind one address signs in all morning.
CREATE FUNCTION forget_knock(whose text) RETURNS void
  LANGUAGE sql SECURITY DEFINER SET search_path = public, pg_temp AS
  $$ UPDATE sign_in_knock SET tries = tries - 1 WHERE sender_hmac = whose AND tries > 0 $$;
REVOKE ALL ON FUNCTION forget_knock(text) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION forget_knock(text) TO wheelchock_app;
