# Sourced by start, check, lint and bench: installs what is missing from debian-packages.txt, section by section.
# Safe to run twice; the second time it asks dpkg once and does nothing.

packages_of() {  # packages_of SECTION…: the names listed under "# SECTION:"
  local list section
  list="$(dirname "${BASH_SOURCE[0]}")/debian-packages.txt"
  for section in "$@"; do
    awk -v section="$section" '/^# [a-z]+:/ { inside = ($2 == section ":") ; next } inside && NF && !/^#/ { print $1 }' "$list"
  done
}

missing_of() {  # the names among the arguments that are not installed; dpkg-query exits 1 on names it never heard of
  local installed
  installed="$(dpkg-query -W -f='${db:Status-Status} ${Package}\n' "$@" 2>/dev/null | awk '$1 == "installed" { print $2 }' || true)"
  LC_ALL=C comm -23 <(printf '%s\n' "$@" | LC_ALL=C sort -u) <(LC_ALL=C sort -u <<<"$installed")
}

install_packages() {  # install_packages SECTION…
  local wanted missing as_root=() log
  mapfile -t wanted < <(packages_of "$@")
  if ! command -v apt-get >/dev/null || ! command -v dpkg-query >/dev/null; then
    echo "This is no Debian or Ubuntu, so nothing is installed here. What is needed, by its Debian name: ${wanted[*]}" >&2
    return 0
  fi
  mapfile -t missing < <(missing_of "${wanted[@]}")
  if [ "${#missing[@]}" -eq 0 ]; then return 0; fi
  echo "Installing ${#missing[@]} packages and what they need: ${missing[*]}"
  if [ "$(id -u)" -ne 0 ]; then
    if ! command -v sudo >/dev/null; then
      echo "There is no sudo here; as root: apt-get install ${missing[*]}" >&2
      return 1
    fi
    as_root=(sudo)
  fi
  log="$(mktemp)"
  if ! "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive sh -c \
      'apt-get update -q && apt-get install -y -q --no-install-recommends "$@"' sh "${missing[@]}" >"$log" 2>&1; then
    tail -n 25 "$log" >&2
    echo "The packages could not be installed; the whole log: $log" >&2
    return 1
  fi
  rm -f "$log"
}

run_ninja() {  # run_ninja FOLDER [TARGET…]: one line that counts on a terminal, nothing but complaints elsewhere
  local folder="$1" quiet=()
  shift
  if [ ! -t 1 ]; then quiet=(--quiet); fi
  NINJA_STATUS="  %f of %t, %e s  " ninja -C "$folder" "${quiet[@]}" "$@"
}
