#!/usr/bin/env bash
# One backup: the database as a custom-format dump, photos as a mirror, old dumps thinned out. One line of JSON says how it
# went; ends with another status than 0 when it failed, and then nothing old was thrown away.
#   PGHOST PGPORT PGUSER PGDATABASE   the database, as its owner;  PGPASSWORD or PGPASSWORD_FILE
#   BACKUP_DIR                        where to; best on another disk
#   PHOTO_DIR                         left out where photos lie in a bucket, which has to be kept by its own means
set -Eeuo pipefail
umask 077

said() { # level, message, more fields
  printf '{"level":"%s","time":"%s","msg":"%s"%s}\n' "$1" "$(date -u +%Y-%m-%dT%H:%M:%SZ)" "$2" "${3:-}"
}
step=settings
trap 'said error "backup failed" ",\"about\":\"$step\""; rm -f "${part:-}"; exit 1' ERR

: "${BACKUP_DIR:?Set BACKUP_DIR to the folder backups go to.}"
if [ -n "${PGPASSWORD_FILE:-}" ]; then
  PGPASSWORD=$(cat "$PGPASSWORD_FILE")
  export PGPASSWORD
fi
began=$(date +%s)
mkdir -p "$BACKUP_DIR"
name=wheelchock-$(date -u +%Y-%m-%dT%H%M%SZ).dump

step=dump
part=$BACKUP_DIR/.$name.part
pg_dump --format=custom --no-password --file="$part"

# A dump that cannot be read is none.
step=verify
listed=$(pg_restore --list "$part" | grep -c ' TABLE DATA public ')
[ "$listed" -gt 0 ]
sync "$part"
mv "$part" "$BACKUP_DIR/$name"

# After the dump, so that every row in it has its bytes. Photos never change: what is there in full stays.
step=photos
photos=0
if [ -n "${PHOTO_DIR:-}" ] && [ -d "$PHOTO_DIR" ]; then
  while IFS= read -r -d '' photo; do
    kept=$BACKUP_DIR/photos/$photo
    if [ -f "$kept" ] && [ "$(stat -c %s "$kept")" = "$(stat -c %s "$PHOTO_DIR/$photo")" ]; then continue; fi
    mkdir -p "$(dirname "$kept")"
    cp "$PHOTO_DIR/$photo" "$kept.part"
    mv "$kept.part" "$kept"
    photos=$((photos + 1))
  done < <(cd "$PHOTO_DIR" && find . -type f ! -name '.*' -printf '%P\0')
fi

step=thinning
gone=$(bash "$(dirname "${BASH_SOURCE[0]}")/thin-backups.sh" "$BACKUP_DIR")

bytes=$(stat -c %s "$BACKUP_DIR/$name")
said info backup ",\"file\":\"$name\",\"bytes\":$bytes,\"tables\":$listed,\"photos\":$photos,\"thinned\":$gone,\"seconds\":$(($(date +%s) - began))"
