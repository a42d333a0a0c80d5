# Batten. `make` builds the program as build/batten; `make help` lists the targets.
# Settings first; below the line nothing needs a change to build.

PREFIX ?= /usr/local
LIBDIR ?= $(PREFIX)/lib
ZSHDIR ?= $(PREFIX)/share/zsh/site-functions
DESTDIR ?=
CFLAGS ?= -O2 -g
BUILD ?= build
JOBS ?= $(shell nproc 2>/dev/null || echo 2)
# WERROR=-Werror for `make lint`; SANITIZE=... for the second build of `make test`.
WERROR ?=
SANITIZE ?=
# V=1 shows the commands in full.
V ?=

# ---------------------------------------------------------------------------------------------

# Debian packages: to build, for the tests besides, for lint besides.
BUILD_PACKAGES := gcc libc6-dev make pkg-config libgsl-dev libyaml-dev
TEST_PACKAGES := libcriterion-dev liblapacke-dev diffutils libxml2-utils
BROWSER_PACKAGES := chromium python3
LINT_PACKAGES := clang clang-format cppcheck
DEB_PACKAGES := dpkg-dev debhelper fakeroot lintian man-db zsh fish

LIBRARIES := gsl yaml-0.1
TEST_LIBRARIES := criterion lapacke
pkg-config = $(shell pkg-config $(1) 2>/dev/null)

WARNINGS := -Wall -Wextra -Wshadow -Wconversion -Wno-sign-conversion -Wstrict-prototypes \
	-Wmissing-prototypes -Wvla -Wundef -Wpointer-arith -Wcast-qual -Wwrite-strings $(WERROR)
ALL_CPPFLAGS = -Isrc -I$(BUILD) -D_POSIX_C_SOURCE=200809L $(LIBRARY_CPPFLAGS) $(CPPFLAGS)
# Without fused multiplication every compiler rounds alike: the same text from all of them.
ALL_CFLAGS = -std=c17 -ffp-contract=off $(WARNINGS) $(SANITIZE) $(CFLAGS)
ALL_LDFLAGS = -Wl,-O1,--as-needed $(SANITIZE) $(LDFLAGS)
LIBRARY_CPPFLAGS := $(call pkg-config,--cflags $(LIBRARIES))
ALL_LDLIBS = $(or $(call pkg-config,--libs $(LIBRARIES)),-lgsl -lgslcblas -lyaml) -lm $(LDLIBS)
TEST_LDLIBS = $(or $(call pkg-config,--libs $(TEST_LIBRARIES)),-lcriterion -llapacke)

LIBRARY_SOURCES := $(filter-out src/cli/% src/shell/%,$(wildcard src/*/*.c))
SHELL_SOURCES := $(wildcard src/shell/*.c)
CLI_SOURCES := $(wildcard src/cli/*.c)
UNIT_SOURCES := $(wildcard tests/unit/*.c)
TOOL_SOURCES := tests/tools/json_compare.c tests/tools/expect_lines.c tests/tools/json.c
TABLES := $(sort $(wildcard tables/*.tsv))
STARTERS := $(sort $(wildcard examples/starters/*.yaml))
LIBRARY_OBJECTS := $(LIBRARY_SOURCES:src/%.c=$(BUILD)/obj/%.o) $(BUILD)/obj/tables_data.o \
	$(BUILD)/obj/starters_data.o $(BUILD)/obj/page_assets_data.o
CLI_OBJECTS := $(CLI_SOURCES:src/%.c=$(BUILD)/obj/%.o)
SHELL_OBJECTS := $(SHELL_SOURCES:src/%.c=$(BUILD)/obj/%.o)
UNIT_OBJECTS := $(UNIT_SOURCES:tests/unit/%.c=$(BUILD)/obj/unit/%.o)

.DELETE_ON_ERROR:
say = $(if $(V),,@echo '  $(1)';)

.PHONY: all
all: $(BUILD)/batten ## build build/batten (the default)

$(BUILD)/batten: $(CLI_OBJECTS) $(BUILD)/libbatten.a
	$(call say,link $@)$(CC) $(ALL_LDFLAGS) -o $@ $(CLI_OBJECTS) $(BUILD)/libbatten.a $(ALL_LDLIBS)

$(BUILD)/libbatten.a: $(LIBRARY_OBJECTS)
	@rm -f $@
	$(call say,library $@)$(AR) rcs $@ $^

$(BUILD)/obj/%.o: src/%.c | needs
	@mkdir -p $(@D)
	$(call say,$(CC) $<)$(CC) $(ALL_CPPFLAGS) $(ALL_CFLAGS) -MMD -MP -c -o $@ $<

# The tables of tables/ as C data, so that the program runs from anywhere.
$(BUILD)/tables_data.c: src/tables/embed.awk $(TABLES)
	@mkdir -p $(@D)
	$(call say,tables $@)LC_ALL=C awk -f src/tables/embed.awk $(TABLES) > $@.part
	@mv $@.part $@

# The starter files of examples/starters/, likewise.
$(BUILD)/starters_data.c: src/start/embed.awk $(STARTERS)
	@mkdir -p $(@D)
	$(call say,starters $@)LC_ALL=C awk -f src/start/embed.awk $(STARTERS) > $@.part
	@mv $@.part $@

# Style and script of the page, likewise.
PAGE_ASSETS := src/page/page.css src/page/page.js
$(BUILD)/page_assets_data.c: src/page/embed.awk $(PAGE_ASSETS)
	@mkdir -p $(@D)
	$(call say,page $@)LC_ALL=C awk -f src/page/embed.awk $(PAGE_ASSETS) > $@.part
	@mv $@.part $@

$(BUILD)/obj/%_data.o: $(BUILD)/%_data.c | needs
	@mkdir -p $(@D)
	$(call say,$(CC) $<)$(CC) $(ALL_CPPFLAGS) $(ALL_CFLAGS) -MMD -MP -c -o $@ $<

# Without this the first thing to fail would be a missing header.
.PHONY: needs
needs:
	@CC='$(CC)' .ci/check-needs $(LIBRARIES) -- $(BUILD_PACKAGES)

# ---- tests: softer warnings, the test macros convert freely ----

$(BUILD)/obj/unit/%.o: tests/unit/%.c | needs
	@mkdir -p $(@D)
	$(call say,$(CC) $<)$(CC) $(ALL_CPPFLAGS) -Itests/unit -std=c17 -Wall -Wextra $(WERROR) $(SANITIZE) $(CFLAGS) \
		-MMD -MP -c -o $@ $<

$(BUILD)/unit-tests: $(UNIT_OBJECTS) $(BUILD)/libbatten.a
	$(call say,link $@)$(CC) $(ALL_LDFLAGS) -o $@ $(UNIT_OBJECTS) $(BUILD)/libbatten.a $(TEST_LDLIBS) $(ALL_LDLIBS)

$(BUILD)/json_compare: $(TOOL_SOURCES) $(wildcard tests/tools/*.h) | needs
	@mkdir -p $(@D)
	$(call say,link $@)$(CC) -std=c17 -D_POSIX_C_SOURCE=200809L $(WARNINGS) $(CFLAGS) -o $@ $(TOOL_SOURCES) -lm

# Put in front of a program: its allocations, or its writing, go wrong (Linux with glibc).
$(BUILD)/fail_%.so: tests/tools/fail_%.c | needs
	@mkdir -p $(@D)
	$(call say,link $@)$(CC) -std=c17 $(WARNINGS) -O1 -shared -fPIC -o $@ $< -ldl

.PHONY: test-programs
test-programs: $(BUILD)/batten $(BUILD)/unit-tests $(BUILD)/json_compare

SANITIZERS := -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer

.PHONY: test
test: ## install what the tests need (Debian), build twice, run every test
	.ci/install-packages $(BUILD_PACKAGES) $(TEST_PACKAGES)
	@$(MAKE) --no-print-directory -j$(JOBS) test-programs installable $(BUILD)/fail_memory.so $(BUILD)/fail_write.so
	@$(MAKE) --no-print-directory -j$(JOBS) test-programs $(FUZZ_TARGETS:%=$(BUILD)/san/replay-%) BUILD=$(BUILD)/san \
		CFLAGS='-O1 -g' SANITIZE='$(SANITIZERS)'
	@tests/tools/run-all $(BUILD) $(BUILD)/san

# ---- fuzzing ----

FUZZ_TARGETS := quantity read check
FUZZ_PACKAGES := clang libclang-rt-14-dev
FUZZ_SECONDS ?= 60
FUZZ_SANITIZERS := -fsanitize=address,undefined -fno-sanitize-recover=all

# The corpus once through a target, without libFuzzer.
$(BUILD)/replay-%: tests/fuzz/%.c tests/fuzz/replay.c tests/fuzz/fuzz.h $(BUILD)/libbatten.a
	$(call say,link $@)$(CC) $(ALL_CPPFLAGS) -std=c17 -Wall -Wextra $(SANITIZE) $(CFLAGS) $(ALL_LDFLAGS) -o $@ \
		tests/fuzz/$*.c tests/fuzz/replay.c $(BUILD)/libbatten.a $(ALL_LDLIBS)

$(BUILD)/fuzz/hunt-%: tests/fuzz/%.c tests/fuzz/fuzz.h $(BUILD)/fuzz/libbatten.a
	$(call say,link $@)clang $(ALL_CPPFLAGS) -std=c17 -Wall -Wextra -O1 -g -fsanitize=fuzzer $(FUZZ_SANITIZERS) -o $@ \
		tests/fuzz/$*.c $(BUILD)/fuzz/libbatten.a $(ALL_LDLIBS)

.PHONY: fuzz
fuzz: ## hunt for faults with libFuzzer: FUZZ_SECONDS (60) for each of FUZZ_TARGETS (quantity read check)
	.ci/install-packages $(BUILD_PACKAGES) $(FUZZ_PACKAGES)
	@$(MAKE) --no-print-directory -j$(JOBS) $(BUILD)/fuzz/libbatten.a BUILD=$(BUILD)/fuzz CC=clang CFLAGS='-O1 -g' \
		SANITIZE='-fsanitize=fuzzer-no-link $(FUZZ_SANITIZERS)'
	@$(MAKE) --no-print-directory $(FUZZ_TARGETS:%=$(BUILD)/fuzz/hunt-%)
	@tests/tools/run-fuzz $(BUILD)/fuzz $(FUZZ_SECONDS) $(FUZZ_TARGETS)

# ---- long tests ----

.PHONY: test-memory
test-memory: $(BUILD)/batten $(BUILD)/fail_memory.so ## make every allocation fail, every command on every example
	@tests/tools/run-memory $(BUILD) $(BUILD)/test-memory all

# Other compilers, other optimisation; fused multiplication where the machine has it.
.PHONY: test-same
test-same: $(BUILD)/batten ## the same text from gcc and clang at four levels of optimisation
	@.ci/check-tools gcc clang -- $(LINT_PACKAGES)
	@$(MAKE) --no-print-directory -j$(JOBS) all CC=gcc BUILD=$(BUILD)/same-gcc-O0 CFLAGS=-O0
	@$(MAKE) --no-print-directory -j$(JOBS) all CC=gcc BUILD=$(BUILD)/same-gcc-O3 CFLAGS='-O3 -march=native'
	@$(MAKE) --no-print-directory -j$(JOBS) all CC=clang BUILD=$(BUILD)/same-clang-O1 CFLAGS=-O1
	@$(MAKE) --no-print-directory -j$(JOBS) all CC=clang BUILD=$(BUILD)/same-clang-O3 CFLAGS='-O3 -march=native'
	@tests/tools/run-same $(BUILD)/test-same $(BUILD)/batten $(foreach each,gcc-O0 gcc-O3 clang-O1 clang-O3,$(BUILD)/same-$(each)/batten)

# Which lines and branches the tests of one run reach; what is left of the checks and loads is named.
COVERAGE_PACKAGES := gcovr
.PHONY: coverage
coverage: ## which lines the tests run, folder by folder (installs gcovr)
	.ci/install-packages $(BUILD_PACKAGES) $(TEST_PACKAGES) $(COVERAGE_PACKAGES)
	@$(MAKE) --no-print-directory -j$(JOBS) test-programs BUILD=$(BUILD)/coverage CFLAGS='-O0 -g --coverage -fprofile-update=atomic' \
		LDFLAGS=--coverage
	@tests/tools/run-coverage $(BUILD)/coverage

.PHONY: test-shapes
test-shapes: $(BUILD)/batten ## 250 random shapes check as what expand prints of them (Python)
	@tests/tools/random_shapes.py $(BUILD)/batten $(BUILD)/test-shapes

.PHONY: test-mutants
test-mutants: ## change 80 signs and factors of the checks and loads, one at a time: each must turn a test red (Python)
	@tests/tools/mutate.py $(BUILD)/test-mutants

.PHONY: test-large
test-large: $(BUILD)/batten $(BUILD)/json_compare ## rows of up to 1 000 sections and cubes of 12, from end to end
	@tests/tools/run-large $(BUILD)/batten $(BUILD)/json_compare $(BUILD)/test-large all

.PHONY: test-all
test-all: test ## make test, and the long ones
	@$(MAKE) --no-print-directory test-large
	@$(MAKE) --no-print-directory test-shapes
	@$(MAKE) --no-print-directory test-memory
	@$(MAKE) --no-print-directory test-same

.PHONY: test-update
test-update: test-programs ## write what the program prints into tests/cases, README.md and examples/*.svg
	tests/tools/run-cases --write $(BUILD)/batten $(BUILD)/json_compare $(BUILD)/test/update
	tests/tools/check-readme --write $(BUILD)/batten $(BUILD)/test/update-readme
	tests/tools/run-pictures --write $(BUILD)/batten $(BUILD)/test/update-pictures
	@echo "Now read the change: git diff tests/cases README.md; and look at examples/*.svg"

.PHONY: test-browser
test-browser: ## install Chromium (Debian), look at every example's report in it, at 360 and 1280 px
	.ci/install-packages $(BUILD_PACKAGES) $(BROWSER_PACKAGES)
	@$(MAKE) --no-print-directory -j$(JOBS) $(BUILD)/batten
	@tests/tools/run-browser $(BUILD)/batten $(BUILD)/test-browser

# ---- speed: ratios in one run, never part of the tests ----

BENCH_SOURCES := tests/bench/bench.c tests/bench/cutting.c tests/bench/fixing.c tests/bench/solving.c \
	tests/bench/spreading.c tests/bench/whole.c

$(BUILD)/bench: $(BENCH_SOURCES) $(wildcard tests/bench/*.h) $(BUILD)/libbatten.a
	$(call say,link $@)$(CC) $(ALL_CPPFLAGS) -D_DEFAULT_SOURCE -std=c17 -Wall -Wextra $(CFLAGS) -o $@ \
		$(BENCH_SOURCES) -Wl,--wrap=sparse_factor $(BUILD)/libbatten.a -lcholmod -llapacke -llapack $(ALL_LDLIBS)

$(BUILD)/trivial: tests/bench/trivial.c
	$(call say,link $@)$(CC) $(ALL_CPPFLAGS) -std=c17 -Wall -Wextra $(CFLAGS) $(ALL_LDFLAGS) -o $@ $< $(ALL_LDLIBS)

.PHONY: bench
bench: ## measure speed as ratios (says what it needs, installs nothing)
	@MAKE='$(MAKE)' tests/bench/run $(BUILD)

# ---- lint ----

.PHONY: lint
lint: ## compile with gcc and clang, warnings as errors; cppcheck; clang-format
	@.ci/check-tools gcc clang cppcheck clang-format -- $(LINT_PACKAGES)
	@$(MAKE) --no-print-directory -j$(JOBS) objects CC=gcc WERROR=-Werror BUILD=$(BUILD)/lint-gcc
	@$(MAKE) --no-print-directory -j$(JOBS) objects CC=clang WERROR=-Werror BUILD=$(BUILD)/lint-clang
	@mkdir -p $(BUILD)/lint-cppcheck
	$(call say,cppcheck src)cppcheck --quiet --std=c11 --enable=warning,performance,portability --inline-suppr \
		--error-exitcode=1 -j $(JOBS) --cppcheck-build-dir=$(BUILD)/lint-cppcheck -Isrc src
	$(call say,clang-format src tests)clang-format --dry-run -Werror $(wildcard src/*/*.[ch] tests/unit/*.[ch] tests/tools/*.[ch])
	@echo "Nothing to complain about."

.PHONY: format
format: ## lay out the code as lint wants it
	clang-format -i $(wildcard src/*/*.[ch] tests/unit/*.[ch] tests/tools/*.[ch])

.PHONY: objects
objects: $(LIBRARY_OBJECTS) $(CLI_OBJECTS) $(SHELL_OBJECTS)

.PHONY: lint-deps
lint-deps: ## install what lint needs (Debian)
	.ci/install-packages $(BUILD_PACKAGES) $(LINT_PACKAGES)

# ---- for people ----

.PHONY: demo
demo: ## install what the build needs (Debian), build, check an example
	.ci/install-packages $(BUILD_PACKAGES)
	@$(MAKE) --no-print-directory -j$(JOBS) all
	@echo; echo '$$ $(BUILD)/batten check examples/seedling-stand.yaml'; echo; \
	$(BUILD)/batten check examples/seedling-stand.yaml; status=$$?; echo; \
	case $$status in \
	0) echo "(Exit status 0: every check of this stand passes.)" ;; \
	1) echo "(Exit status 1: this stand does not pass every check; the program itself works.)" ;; \
	*) echo "(Exit status $$status.)"; exit $$status ;; \
	esac

# ---- what is installed ----

VERSION := $(shell sed -n 's/^.define BATTEN_VERSION "\(.*\)"/\1/p' src/base/version.h)
SHELL_PAGES := $(addprefix $(BUILD)/shell/batten.,1 bash zsh fish)

$(BUILD)/make-shell: $(SHELL_OBJECTS) $(filter-out %/main.o,$(CLI_OBJECTS)) $(BUILD)/libbatten.a
	$(call say,link $@)$(CC) $(ALL_LDFLAGS) -o $@ $^ $(ALL_LDLIBS)

$(BUILD)/shell/batten.%: $(BUILD)/make-shell
	@mkdir -p $(@D)
	$(call say,write $@)$(BUILD)/make-shell $(patsubst 1,manual,$*) > $@.part
	@mv $@.part $@

# The library for others: one object in which only the names of batten.h can be seen.
$(BUILD)/install/libbatten.a: $(BUILD)/libbatten.a
	@mkdir -p $(@D)
	@rm -f $@
	$(call say,library $@)$(LD) -r -o $(@D)/batten.o --whole-archive $<
	@objcopy --wildcard --keep-global-symbol='batten_*' $(@D)/batten.o
	@$(AR) rcs $@ $(@D)/batten.o

$(BUILD)/install/batten.pc: Makefile src/base/version.h
	@mkdir -p $(@D)
	@printf '%s\n' 'Name: batten' 'Description: sanity check of light wood frames' 'Version: $(VERSION)' \
		'Requires: $(LIBRARIES)' 'Cflags: -I$(PREFIX)/include' 'Libs: -L$(LIBDIR) -lbatten -lm' > $@

.PHONY: installable
installable: $(BUILD)/batten $(SHELL_PAGES) $(BUILD)/install/libbatten.a

.PHONY: install
install: installable ## copy to DESTDIR/PREFIX (default /usr/local): program, manual page, completions, library
	@rm -f $(BUILD)/install/batten.pc
	@$(MAKE) --no-print-directory $(BUILD)/install/batten.pc
	install -d $(addprefix $(DESTDIR),$(PREFIX)/bin $(PREFIX)/include $(LIBDIR)/pkgconfig $(PREFIX)/share/man/man1 \
		$(PREFIX)/share/bash-completion/completions $(ZSHDIR) $(PREFIX)/share/fish/vendor_completions.d \
		$(PREFIX)/share/doc/batten/examples)
	install -m 755 $(BUILD)/batten $(DESTDIR)$(PREFIX)/bin/batten
	install -m 644 $(BUILD)/shell/batten.1 $(DESTDIR)$(PREFIX)/share/man/man1/batten.1
	install -m 644 $(BUILD)/shell/batten.bash $(DESTDIR)$(PREFIX)/share/bash-completion/completions/batten
	install -m 644 $(BUILD)/shell/batten.zsh $(DESTDIR)$(ZSHDIR)/_batten
	install -m 644 $(BUILD)/shell/batten.fish $(DESTDIR)$(PREFIX)/share/fish/vendor_completions.d/batten.fish
	install -m 644 src/library/batten.h $(DESTDIR)$(PREFIX)/include/batten.h
	install -m 644 $(BUILD)/install/libbatten.a $(DESTDIR)$(LIBDIR)/libbatten.a
	install -m 644 $(BUILD)/install/batten.pc $(DESTDIR)$(LIBDIR)/pkgconfig/batten.pc
	install -m 644 README.md SAFETY.md LICENSE $(DESTDIR)$(PREFIX)/share/doc/batten
	install -m 644 examples/*.yaml examples/*.svg examples/*.c $(DESTDIR)$(PREFIX)/share/doc/batten/examples

# Both from the last commit, so that nothing of the work folder slips in.
.PHONY: dist
dist: ## build/batten-VERSION.tar.gz of the last commit
	@mkdir -p $(BUILD)
	git archive --format=tar --prefix=batten-$(VERSION)/ HEAD | gzip -9n > $(BUILD)/batten-$(VERSION).tar.gz.part
	@mv $(BUILD)/batten-$(VERSION).tar.gz.part $(BUILD)/batten-$(VERSION).tar.gz
	@echo '$(BUILD)/batten-$(VERSION).tar.gz'

.PHONY: deb
deb: dist ## Debian packages of the last commit into build/deb; lintian and the shells look at them
	.ci/install-packages $(BUILD_PACKAGES) $(DEB_PACKAGES)
	.ci/make-deb $(BUILD)/batten-$(VERSION).tar.gz $(BUILD)/deb

.PHONY: clean
clean: ## remove the build folder
	rm -rf $(BUILD)

.PHONY: help
help: ## list the targets
	@sed -n 's/^\([a-z-]*\):.*## \(.*\)/make \1|\2/p' Makefile | \
		while IFS='|' read -r target what; do printf '  %-17s %s\n' "$$target" "$$what"; done

-include $(LIBRARY_OBJECTS:.o=.d) $(CLI_OBJECTS:.o=.d) $(SHELL_OBJECTS:.o=.d) $(UNIT_OBJECTS:.o=.d)
