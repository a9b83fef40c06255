#!/usr/bin/env bash
# Makes a backup every day at BACKUP_AT (UTC, like 02:30), and at once when there is none of the last 24 hours. One that
# failed is tried again in fifteen minutes.
set -uo pipefail
here=$(dirname "${BASH_SOURCE[0]}")
at=${BACKUP_AT:-02:30}
if ! [[ $at =~ ^([01][0-9]|2[0-3]):[0-5][0-9]$ ]]; then
  echo "BACKUP_AT=$at is no time of day; it looks like 02:30." >&2
  exit 1
fi
trap 'exit 0' TERM INT
# In the background, so that a signal is not kept waiting.
rest() { sleep "$1" & wait $!; }
fresh() { find "$BACKUP_DIR" -maxdepth 1 -name '*.dump' -mmin -1440 | grep -q .; }

while :; do
  if ! fresh; then
    until bash "$here/backup.sh"; do rest 900; done
  fi
  next=$(date -u -d "today $at" +%s)
  now=$(date +%s)
  [ "$next" -le "$now" ] && next=$((next + 86400))
  rest $((next - now))
  until bash "$here/backup.sh"; do rest 900; done
done
