# Sourced by start and check: installs what is missing from debian-packages.txt, section by section.
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
  comm -23 <(printf '%s\n' "$@" | sort -u) <(sort -u <<<"$installed")
}

install_packages() {  # install_packages SECTION…
  local wanted missing as_root=()
  mapfile -t wanted < <(packages_of "$@")
  mapfile -t missing < <(missing_of "${wanted[@]}")
  if [ "${#missing[@]}" -eq 0 ]; then return 0; fi
  if ! command -v apt-get >/dev/null; then
    echo "These packages are missing and this is no Debian or Ubuntu: ${missing[*]}" >&2
    return 1
  fi
  if [ "$(id -u)" -ne 0 ]; then as_root=(sudo); fi
  echo "Installing ${#missing[@]} packages: ${missing[*]}"
  "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get update -qq
  "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null
}
