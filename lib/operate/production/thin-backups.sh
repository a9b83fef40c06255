#!/usr/bin/env bash
# Keeps the newest dump of each of the newest 7 days, 4 weeks (ISO 8601) and 12 months that have one, deletes the others in the
# folder, and prints how many those were. Goes by the names, as backup.sh gives them.
set -Eeuo pipefail
folder=${1:?Give the folder of the dumps.}
declare -A days=() weeks=() months=()
gone=0
while IFS= read -r dump; do
  day=${dump#wheelchock-}
  day=${day%%T*}
  week=$(date -u -d "$day" +%G-%V)
  month=${day%-*}
  keep=no
  if [ -z "${days[$day]:-}" ] && [ "${#days[@]}" -lt 7 ]; then days[$day]=1 keep=yes; fi
  if [ -z "${weeks[$week]:-}" ] && [ "${#weeks[@]}" -lt 4 ]; then weeks[$week]=1 keep=yes; fi
  if [ -z "${months[$month]:-}" ] && [ "${#months[@]}" -lt 12 ]; then months[$month]=1 keep=yes; fi
  if [ "$keep" = no ]; then
    rm "$folder/$dump"
    gone=$((gone + 1))
  fi
done < <(cd "$folder" && find . -maxdepth 1 -name 'wheelchock-????-??-??T??????Z.dump' -printf '%P\n' | sort -r)
echo "$gone"
