#!/usr/bin/env bash
# Installs the programs that the files are checked with (Debian, as root) and runs the checks.
#   bash tests/clients/run.sh [--all] [NAME ...]
# --all reads every generated household with every program; NAME runs the test files whose path contains it.
set -euo pipefail
cd "$(dirname "$0")/../.."

wanted=$(grep -v '^#' tests/clients/debian-packages.txt | grep . || true)
missing=$(for package in $wanted; do dpkg -s "$package" >/dev/null 2>&1 || echo "$package"; done)
if [ -n "$missing" ]; then
  apt-get update -qq
  # shellcheck disable=SC2086
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $missing >/dev/null
fi

names=()
for argument in "$@"; do
  if [ "$argument" = --all ]; then export CLIENTS_ALL=1; else names+=("$argument"); fi
done
exec npx vitest run --config tests/clients/vitest.config.ts "${names[@]}"
