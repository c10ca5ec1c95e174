#!/bin/sh
# Times the light engine on one core and writes docs/speed-light.md.
set -eu
cd "$(dirname "$0")/.."
out=$(mktemp)
raw=$(mktemp)
trap 'rm -f "$out" "$raw"' EXIT
cpu=$(sed -n 's/^model name[^:]*: //p' /proc/cpuinfo 2> /dev/null | head -1)
cell() { # file, benchmark, unit: the least of its runs
	awk -v want="$2" -v unit="$3" '{sub(/-[0-9]+$/, "", $1)} $1 == want {for (i = 2; i < NF; i++) if ($(i + 1) == unit && (best == "" || $i + 0 < best + 0)) best = $i} END {print best}' "$1"
}
ms() { awk -v x="$1" 'BEGIN {printf "%.1f", x / 1e6}'; }
go test -c -o "$raw.test" ./light
trap 'rm -f "$out" "$raw" "$raw.test"' EXIT
run() { (cd light && "$raw.test" -test.run '^$' -test.cpu 1 "$@"); }
{
	echo "# How fast the light is"
	echo
	echo "Written by \`bench/light.sh\`. ${cpu:-Processor not known}; $(go version | cut -d' ' -f3,4); one core; load average before the run $(cut -d' ' -f1 /proc/loadavg 2> /dev/null || echo not known)."
	echo
	echo "## A full plan, everything new"
	echo
	echo "Four lamps, an area of 33 x 33 points, 8 marks (dome, mean sphere, vector); without a room, and with the exchange of a room of 14 x 12 x 8 m. Every turn edits trim, aim and one cloth value. Cold is the first turn of a new process, warm the best of three means over half a second, ms."
	echo
	echo "| plan | without a room, cold | warm | with a room, cold | warm |"
	echo "| --- | --- | --- | --- | --- |"
	run -test.bench '^BenchmarkWholePlan$' -test.benchtime 0.5s -test.count 3 > "$raw"
	for name in diffuse diffuse-white-sides lobe lobe-white-sides beam-8-deg; do
		row="| $name"
		for indoors in false true; do
			bench="BenchmarkWholePlan/indoors=$indoors/$name"
			cold=$(run -test.bench "^BenchmarkWholePlan\$/^indoors=$indoors\$/^$name\$" -test.benchtime 1x | awk -v want="$bench" '{sub(/-[0-9]+$/, "", $1)} $1 == want {print $3}')
			row="$row | $(ms "$cold") | $(ms "$(cell "$raw" "$bench" ns/op)")"
		done
		echo "$row |"
	done
	echo
	echo "## The gather against a plain C loop of the same sum"
	echo
	bench/yardstick
	echo
	echo "## How the cost grows"
	echo
	run -test.bench '^Benchmark(Receivers|Exchange)$' -test.benchtime 0.5s -test.count 3 > "$raw"
	echo "| receivers | ms | ns per receiver |"
	echo "| --- | --- | --- |"
	for n in 81 289 1089 4225; do
		echo "| $n | $(ms "$(cell "$raw" BenchmarkReceivers/receivers$n ns/op)") | $(cell "$raw" BenchmarkReceivers/receivers$n ns/receiver) |"
	done
	echo
	echo "| patches N of the exchange in the box | ms | ns per N x N |"
	echo "| --- | --- | --- |"
	for n in $(awk -F'[s\t -]' '/^BenchmarkExchange/ {sub(/^.*patches/, ""); print $1}' "$raw" | awk '{print $1}' | sort -n -u); do
		echo "| $n | $(ms "$(cell "$raw" BenchmarkExchange/patches$n ns/op)") | $(cell "$raw" BenchmarkExchange/patches$n ns/N2) |"
	done
} > "$out"
cp "$out" docs/speed-light.md
cat docs/speed-light.md
