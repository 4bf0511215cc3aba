#!/usr/bin/env bash
# Installs what the tests need beside Node: a browser, readers of PDF that know nothing of this project, and a database server. Does nothing where they are there.
set -euo pipefail
missing=()
command -v chromium >/dev/null || missing+=(chromium)
command -v pdftoppm >/dev/null || missing+=(poppler-utils)
command -v qpdf >/dev/null || missing+=(qpdf)
[ -d /usr/lib/postgresql ] || command -v postgres >/dev/null || missing+=(postgresql)
[ ${#missing[@]} -eq 0 ] && exit 0
if ! command -v apt-get >/dev/null; then
  echo "The tests need ${missing[*]}: install them with your system's package manager." >&2
  exit 1
fi
root=()
[ "$(id -u)" -eq 0 ] || root=(sudo)
"${root[@]}" apt-get update -qq
DEBIAN_FRONTEND=noninteractive "${root[@]}" apt-get install -y -qq "${missing[@]}" >/dev/null
