# Everything by name. On a fresh Debian 12: `make run`, `make test`.
PREFIX ?= /usr/local
JOBS ?= $(shell nproc)
EXAMPLE := data/invented-wear.csv

.PHONY: run test build install package format format-check check-all bench fuzz clean

build:
	@scripts/install-packages build
	@scripts/build release tracewright tracewright_demo_command description

run: build
	@build/tracewright review $(EXAMPLE) --zone Europe/Berlin --as-of 2026-03-17T09:00 --out out/review
	@echo
	@scripts/demo-practice build out/practice
	@echo "The invented practice is in out/practice, its reviews in out/practice/reviews."
	@echo
	@echo "To look at a client: build/tracewright --practice out/practice/practice --passphrase-file out/practice/passphrase client list"
	@echo "For your own files: build/tracewright review FILE... --diary FILE --zone ZONE --out DIR"
	@echo "To see first what is in them: build/tracewright look FILE..."
	@scripts/serve-demo build out/practice

test:
	@scripts/install-packages test
	@scripts/build release
	@scripts/run-tests build

install: build
	cmake --install build --prefix $(PREFIX)

# A Debian package and a folder that runs without installing, in out/package.
package: build
	@scripts/install-packages package
	@scripts/package build out/package

format:
	@scripts/install-packages check
	@git ls-files '*.cpp' '*.hpp' | xargs clang-format-16 -i

format-check:
	@scripts/install-packages check
	@git ls-files '*.cpp' '*.hpp' | xargs clang-format-16 --dry-run --Werror

check-all:
	@scripts/install-packages check
	@scripts/check-all

bench:
	@scripts/install-packages bench
	@bench/run
	@bench/serve

fuzz:
	@scripts/install-packages check
	@scripts/fuzz $(or $(SECONDS_EACH),60)

clean:
	rm -rf build build-* out
