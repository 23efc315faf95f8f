# sillet. Read from top to bottom: what is built, from what, and how it is tried.
#
#   make            the program build/sillet and the library build/libsillet.a
#   make demo       installs what is missing, builds, and runs the main job on a sheet of examples/
#   make check      installs what tests need, builds with sanitizers, runs every test
#   make bench      speed and memory as ratios to yardsticks measured in the same run; a simulated shop
#   make thorough   every allocation failed in turn, every sheet under valgrind: longer than a check
#   make coverage   how much of src/ the tests go through, room by room
#   make fuzz       feeds the readers, the page and the drawings with SECONDS of nonsense each (clang)
#   make lint       format, clang's warnings, clang-tidy, cppcheck, gcc's analyzer
#   make install    into PREFIX (DESTDIR before it), the library into LIBDIR
#   make package    Debian packages in build/package, looked over by lintian
#
# A new room is a folder under src/: add it to ROOMS. A new command is a file in src/cli.

CC ?= cc
CFLAGS ?= -O2 -g
PREFIX ?= /usr/local
LIBDIR ?= $(PREFIX)/lib
SECONDS ?= 1800

BUILD_PACKAGES = gcc libc6-dev pkg-config libyaml-dev libcjson-dev libhpdf-dev \
                 libfreetype-dev fonts-osifont fonts-dejavu-core libmicrohttpd-dev
CHECK_PACKAGES = $(BUILD_PACKAGES) g++ binutils valgrind libcmocka-dev python3 python3-yaml python3-numpy python3-scipy \
                 python3-ezdxf poppler-utils qpdf librsvg2-bin locales groff-base chromium $(NODE_PACKAGES)
# Where there is an npm already, however it came, it is taken as it is.
NODE_PACKAGES := $(if $(shell command -v npm),,nodejs npm)
BENCH_PACKAGES = $(BUILD_PACKAGES) valgrind python3 python3-yaml python3-numpy qpdf time
LINT_PACKAGES = $(BUILD_PACKAGES) clang clang-tidy clang-format cppcheck
PACKAGE_PACKAGES = $(BUILD_PACKAGES) debhelper dpkg-dev fakeroot lintian

ROOMS = core text job sheet plan part brief report drawing drawing/board drawing/views drawing/papers drawing/write
SOURCES = $(foreach room,$(ROOMS),$(wildcard src/$(room)/*.c))
CLI_SOURCES = $(wildcard src/cli/*.c)
CLI_SHARED = $(addprefix src/cli/,cli.c commands.c arguments.c help.c)
DRAW_SOURCES = src/cli/draw/main.c $(CLI_SHARED)
PAGE_SOURCES = $(wildcard src/page/*.c)
SERVE_SOURCES = $(wildcard src/page/serve/*.c) $(CLI_SHARED)
TESTS = $(basename $(notdir $(wildcard tests/test_*.c)))
EXAMPLE = examples/low-first-slot.yaml

WARNINGS = -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wdouble-promotion \
           -Wstrict-prototypes -Wmissing-prototypes -Wformat=2
# Asked of the system once; nothing where it is not there yet, before `demo` has installed it.
FREETYPE := $(shell pkg-config --cflags freetype2 2>/dev/null)
STANDARD = -std=c17 -D_XOPEN_SOURCE=700 -Iinclude $(FREETYPE)
LIBRARIES = -lyaml -lcjson -lm
DRAW_LIBRARIES = -lhpdf -lfreetype $(LIBRARIES)
SERVE_LIBRARIES = -lmicrohttpd -pthread $(DRAW_LIBRARIES)
HARDENING = -fstack-protector-strong -fstack-clash-protection -D_FORTIFY_SOURCE=2 -fPIE
HARDENED_LINK = -pie -Wl,-z,relro,-z,now -Wl,--as-needed
RACING = -O1 -g -fsanitize=thread
SANITIZED = -O1 -g -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer

# Where objects of each kind of build go.
OBJECTS = $(SOURCES:src/%.c=build/objects/%.o)
CLI_OBJECTS = $(CLI_SOURCES:src/%.c=build/objects/%.o)
DRAW_OBJECTS = $(DRAW_SOURCES:src/%.c=build/objects/%.o)
PAGE_OBJECTS = $(PAGE_SOURCES:src/%.c=build/objects/%.o)
SERVE_OBJECTS = $(SERVE_SOURCES:src/%.c=build/objects/%.o)
CHECKED = $(SOURCES:src/%.c=build/check/objects/%.o)
CHECKED_CLI = $(CLI_SOURCES:src/%.c=build/check/objects/%.o)
CHECKED_DRAW = $(DRAW_SOURCES:src/%.c=build/check/objects/%.o)
RACED = $(SOURCES:src/%.c=build/race/objects/%.o)
RACED_PAGE = $(PAGE_SOURCES:src/%.c=build/race/objects/%.o)
CHECKED_PAGE = $(PAGE_SOURCES:src/%.c=build/check/objects/%.o)
CHECKED_SERVE = $(SERVE_SOURCES:src/%.c=build/check/objects/%.o)
CHECKED_TESTS = $(TESTS:%=build/check/%)

.PHONY: all demo pictures check thorough coverage bench fuzz lint install package clean tools-build tools-check \
        tools-bench tools-lint tools-package
.DELETE_ON_ERROR:
.SECONDARY:

all: build/sillet build/sillet-draw build/sillet-serve build/libsillet.a

build/sillet: $(CLI_OBJECTS) build/libsillet.a
	$(CC) $(HARDENED_LINK) $(LDFLAGS) -o $@ $^ $(LIBRARIES)

# The program that draws stands alone: its libraries cost more to load than a plan costs to make.
build/sillet-draw: $(DRAW_OBJECTS) build/libsillet.a
	$(CC) $(HARDENED_LINK) $(LDFLAGS) -o $@ $^ $(DRAW_LIBRARIES)

build/sillet-serve: $(SERVE_OBJECTS) $(PAGE_OBJECTS) build/libsillet.a
	$(CC) $(HARDENED_LINK) $(LDFLAGS) -o $@ $^ $(SERVE_LIBRARIES)

# The page's files stand within the program.
build/objects/page/assets.o build/check/objects/page/assets.o build/race/objects/page/assets.o: $(wildcard src/page/assets/*)

build/libsillet.a: $(OBJECTS) Makefile
	rm -f $@ && ar rcs $@ $(OBJECTS)

build/objects/%.o: src/%.c
	@mkdir -p $(@D)
	$(CC) $(STANDARD) $(WARNINGS) $(HARDENING) $(CFLAGS) -MMD -MP -c -o $@ $<

# --- the demo -------------------------------------------------------------------------------------

demo: tools-build
	@$(MAKE) --no-print-directory --silent all
	build/sillet plan $(EXAMPLE)
	@build/sillet draw $(EXAMPLE) -o build/demo.pdf
	@echo $(CURDIR)/build/demo.pdf

tools-build:
	@.ci/install $(BUILD_PACKAGES)
tools-check:
	@.ci/install $(CHECK_PACKAGES)
tools-bench:
	@.ci/install $(BENCH_PACKAGES)
tools-lint:
	@.ci/install $(LINT_PACKAGES)
tools-package:
	@.ci/install $(PACKAGE_PACKAGES)

# --- tests: the same sources, sanitized, warnings as errors ---------------------------------------

check: tools-check build/page/node_modules/.package-lock.json
	@$(MAKE) --no-print-directory --silent -j2 all build/check/sillet build/check/sillet-draw \
	    build/check/sillet-serve $(CHECKED_TESTS) build/check/replay build/check/replay_length \
	    build/check/replay_page build/check/read_lines build/check/faults build/race/race
	@tests/run $(CHECKED_TESTS)

# What drives the browser, as locked; with it there already, no network is needed.
build/page/node_modules/.package-lock.json: tests/page/package.json tests/page/package-lock.json | tools-check
	@mkdir -p build/page
	@if ! cmp -s tests/page/package-lock.json build/page/package-lock.json || [ ! -f $@ ]; then \
	    cp tests/page/package.json tests/page/package-lock.json build/page && \
	    npm ci --prefix build/page --prefer-offline --silent --no-audit --no-fund; \
	fi && touch $@ || echo "npm fetched nothing: the page is not tried in a browser"

build/check/sillet: $(CHECKED_CLI) build/check/libsillet.a
	$(CC) $(SANITIZED) -o $@ $^ $(LIBRARIES)

build/check/sillet-draw: $(CHECKED_DRAW) build/check/libsillet.a
	$(CC) $(SANITIZED) -o $@ $^ $(DRAW_LIBRARIES)

build/check/sillet-serve: $(CHECKED_SERVE) build/check/libpage.a build/check/libsillet.a
	$(CC) $(SANITIZED) -o $@ $^ $(SERVE_LIBRARIES)

build/check/libpage.a: $(CHECKED_PAGE) Makefile
	rm -f $@ && ar rcs $@ $(CHECKED_PAGE)

build/check/libsillet.a: $(CHECKED) Makefile
	rm -f $@ && ar rcs $@ $(CHECKED)

build/check/objects/%.o: src/%.c
	@mkdir -p $(@D)
	$(CC) $(STANDARD) $(WARNINGS) -Werror $(SANITIZED) -MMD -MP -c -o $@ $<

build/check/test_%: tests/test_%.c build/check/libpage.a build/check/libsillet.a
	@mkdir -p $(@D)
	$(CC) $(STANDARD) $(WARNINGS) -Werror $(SANITIZED) -MMD -MP -o $@ $< build/check/libpage.a \
	    build/check/libsillet.a $(DRAW_LIBRARIES) -lcmocka

build/check/replay_page: tests/fuzz/fuzz_page.c tests/fuzz/replay_main.c build/check/libpage.a build/check/libsillet.a
	@mkdir -p $(@D)
	$(CC) $(STANDARD) $(WARNINGS) -Werror $(SANITIZED) -o $@ $^ $(DRAW_LIBRARIES)

build/check/replay: tests/fuzz/fuzz_sheet.c tests/fuzz/replay_main.c build/check/libsillet.a
build/check/replay_length: tests/fuzz/fuzz_length.c tests/fuzz/replay_main.c build/check/libsillet.a
build/check/read_lines: tests/lengths/read_lines.c build/check/libsillet.a
build/check/replay build/check/replay_length build/check/read_lines:
	@mkdir -p $(@D)
	$(CC) $(STANDARD) $(WARNINGS) -Werror $(SANITIZED) -o $@ $^ $(LIBRARIES)

# The programs in one that fails their allocations and system calls in turn. The heap stands
# before the sanitizer's; our own system calls are wrapped.
WRAPPED = read write open close fsync fchmod fchown stat access linkat rename readlink
FAULT_OBJECTS = build/check/fault/sillet.o build/check/fault/draw.o \
                $(filter-out %/main.o,$(CHECKED_CLI))

build/check/faults: $(addprefix tests/fault/,faults.c programs.c page.c calls.c) build/check/fault/heap.o \
                    $(FAULT_OBJECTS) build/check/libpage.a build/check/libsillet.a $(wildcard tests/fault/*.h)
	$(CC) $(STANDARD) $(WARNINGS) -Werror $(SANITIZED) $(WRAPPED:%=-Wl,--wrap=%) -o $@ \
	    $(filter-out %.h,$^) $(DRAW_LIBRARIES)

# Not sanitized: it is at work before the sanitizer is.
build/check/fault/heap.o: tests/fault/heap.c tests/fault/heap.h
	@mkdir -p $(@D)
	$(CC) $(STANDARD) $(WARNINGS) -Werror -O1 -g -fno-builtin -fno-omit-frame-pointer -c -o $@ $<

build/check/fault/sillet.o: build/check/objects/cli/main.o
	@mkdir -p $(@D)
	objcopy --redefine-sym main=sillet_main $< $@

build/check/fault/draw.o: build/check/objects/cli/draw/main.o
	@mkdir -p $(@D)
	objcopy --redefine-sym main=sillet_draw_main $< $@

# Several threads at once, under the thread sanitizer.
build/race/race: tests/race/race.c $(RACED) $(RACED_PAGE)
	$(CC) $(STANDARD) $(WARNINGS) -Werror $(RACING) -pthread -o $@ $^ $(DRAW_LIBRARIES)

build/race/objects/%.o: src/%.c
	@mkdir -p $(@D)
	$(CC) $(STANDARD) $(WARNINGS) -Werror $(RACING) -MMD -c -o $@ $<

thorough: tools-check
	@$(MAKE) --no-print-directory --silent -j2 all build/check/faults
	build/check/faults all
	tests/valgrind/check_valgrind all

# A tree of its own, whose programs count what they run, through all tests that do not sanitize.
coverage: tools-check
	@rm -rf build/coverage && mkdir -p build/coverage
	@cp -r .ci .debian Makefile README.md DEVELOPERS.md docs examples include profiles src tests build/coverage
	@rm -rf build/coverage/tests/fault build/coverage/tests/race build/coverage/tests/valgrind
	@$(MAKE) -C build/coverage --no-print-directory --silent -j2 SANITIZED='-O0 --coverage' all \
	    build/check/sillet build/check/sillet-draw build/check/sillet-serve $(CHECKED_TESTS) \
	    build/check/replay build/check/replay_length build/check/replay_page build/check/read_lines
	-@cd build/coverage && LDFLAGS=-lgcov tests/run $(CHECKED_TESTS)
	@/usr/bin/python3 tests/coverage/told.py build/coverage

# --- benchmark, fuzzer, lint ----------------------------------------------------------------------

bench: tools-bench
	@$(MAKE) --no-print-directory --silent all build/bench/bare_yaml build/bench/arithmetic \
	    build/bench/bare_pdf build/bench/bare_http build/bench/load
	@SILLET_PROFILES=profiles tests/bench/bench.py
	@echo
	@SILLET_PROFILES=profiles tests/shop/shop.py --count 1000

build/bench/bare_yaml: tests/bench/bare_yaml.c
	@mkdir -p $(@D)
	$(CC) $(STANDARD) $(WARNINGS) $(HARDENING) $(CFLAGS) $(HARDENED_LINK) -o $@ $< -lyaml

build/bench/bare_pdf: tests/bench/bare_pdf.c
	@mkdir -p $(@D)
	$(CC) $(STANDARD) $(WARNINGS) $(HARDENING) $(CFLAGS) $(HARDENED_LINK) -o $@ $< -lhpdf

build/bench/bare_http: tests/bench/bare_http.c
	@mkdir -p $(@D)
	$(CC) $(STANDARD) $(WARNINGS) $(HARDENING) $(CFLAGS) $(HARDENED_LINK) -o $@ $< -lmicrohttpd

build/bench/load: tests/bench/load.c
	@mkdir -p $(@D)
	$(CC) $(STANDARD) $(WARNINGS) $(HARDENING) $(CFLAGS) $(HARDENED_LINK) -o $@ $<

build/bench/arithmetic: tests/bench/arithmetic.c build/libsillet.a
	@mkdir -p $(@D)
	$(CC) $(STANDARD) $(WARNINGS) $(HARDENING) $(CFLAGS) $(HARDENED_LINK) -o $@ $^ $(LIBRARIES)

fuzz: build/fuzz/fuzz_sheet build/fuzz/fuzz_length build/fuzz/fuzz_page build/fuzz/fuzz_draw
	@mkdir -p build/fuzz/corpus/sheet build/fuzz/corpus/length build/fuzz/corpus/page build/fuzz/corpus/draw
	build/fuzz/fuzz_length -max_total_time=$(SECONDS) -max_len=64 -timeout=5 -print_final_stats=1 \
	    -artifact_prefix=build/fuzz/ build/fuzz/corpus/length tests/fuzz/corpus/length
	build/fuzz/fuzz_sheet -max_total_time=$(SECONDS) -max_len=8192 -timeout=5 -print_final_stats=1 \
	    -close_fd_mask=1 -artifact_prefix=build/fuzz/ build/fuzz/corpus/sheet tests/fuzz/corpus/sheet
	build/fuzz/fuzz_page -max_total_time=$(SECONDS) -max_len=8192 -timeout=5 -print_final_stats=1 \
	    -close_fd_mask=1 -artifact_prefix=build/fuzz/ build/fuzz/corpus/page tests/fuzz/corpus/page
	build/fuzz/fuzz_draw -max_total_time=$(SECONDS) -max_len=8192 -timeout=20 -print_final_stats=1 \
	    -close_fd_mask=1 -artifact_prefix=build/fuzz/ build/fuzz/corpus/draw tests/fuzz/corpus/sheet examples

build/fuzz/fuzz_%: tests/fuzz/fuzz_%.c $(SOURCES) $(PAGE_SOURCES) | tools-lint
	@mkdir -p $(@D)
	clang $(STANDARD) -O1 -g -fsanitize=fuzzer,address,undefined -fno-sanitize-recover=all \
	    -o $@ $< $(SOURCES) $(PAGE_SOURCES) $(DRAW_LIBRARIES)

# cppcheck does not see that snprintf fills a text, which valgrind and -fanalyzer do; and where a
# variable stands is the reader's affair.
UNSAID = uninitvar variableScope

LINTED = $(sort $(SOURCES) $(CLI_SOURCES) $(DRAW_SOURCES) $(PAGE_SOURCES) $(SERVE_SOURCES))

lint: tools-lint
	clang-format --dry-run -Werror $(wildcard include/sillet/*.h src/*/*.[ch] src/*/*/*.[ch] \
	    tests/*.[ch] tests/*/*.[ch])
	for source in $(LINTED); do \
	    clang $(STANDARD) $(WARNINGS) -Werror -fsyntax-only $$source || exit 1; done
	clang-tidy --quiet $(LINTED) -- $(STANDARD)
	cppcheck --quiet --error-exitcode=1 --std=c11 --enable=warning,style,performance,portability \
	    $(UNSAID:%=--suppress=%) -D_XOPEN_SOURCE=700 -Iinclude src
	for source in $(LINTED); do \
	    gcc $(STANDARD) -O2 -fanalyzer -Werror -c -o /dev/null $$source || exit 1; done

# --- the pictures of the README -------------------------------------------------------------------

pictures: tools-check all build/page/node_modules/.package-lock.json
	@mkdir -p docs/pictures
	@for picture in nut:bass-nut saddle:high-saddle templates:high-saddle clearance:low-first-slot; do \
	    sheet=$${picture%:*}; \
	    build/sillet draw examples/$${picture#*:}.yaml --sheet $$sheet -o build/$$sheet.svg && \
	    rsvg-convert -b white -d 75 -p 75 build/$$sheet.svg -o docs/pictures/$$sheet.png || exit 1; \
	done
	node tests/page/picture.mjs docs/pictures/page.png

# --- into the system ------------------------------------------------------------------------------

install: all
	install -d $(DESTDIR)$(PREFIX)/bin $(DESTDIR)$(PREFIX)/libexec/sillet $(DESTDIR)$(LIBDIR)/pkgconfig \
	    $(DESTDIR)$(PREFIX)/include/sillet $(DESTDIR)$(PREFIX)/share/sillet/profiles \
	    $(DESTDIR)$(PREFIX)/share/man/man1 $(DESTDIR)$(PREFIX)/share/bash-completion/completions
	install -m 755 build/sillet $(DESTDIR)$(PREFIX)/bin
	install -m 755 build/sillet-draw build/sillet-serve $(DESTDIR)$(PREFIX)/libexec/sillet
	@mkdir -p build/installed # the installed library knows where its profiles are
	$(CC) $(STANDARD) $(WARNINGS) $(HARDENING) $(CFLAGS) -c -o build/installed/installed.o \
	    -DINSTALLED_PROFILES='"$(abspath $(PREFIX))/share/sillet/profiles"' src/sheet/installed.c
	install -m 644 build/libsillet.a $(DESTDIR)$(LIBDIR)
	ar rs $(DESTDIR)$(LIBDIR)/libsillet.a build/installed/installed.o
	install -m 644 include/sillet/*.h $(DESTDIR)$(PREFIX)/include/sillet
	install -d $(DESTDIR)$(PREFIX)/include/sillet/core
	install -m 644 include/sillet/core/*.h $(DESTDIR)$(PREFIX)/include/sillet/core
	install -m 644 profiles/*.yaml $(DESTDIR)$(PREFIX)/share/sillet/profiles
	install -m 644 docs/sillet.1 $(DESTDIR)$(PREFIX)/share/man/man1
	install -m 644 src/cli/completion.bash $(DESTDIR)$(PREFIX)/share/bash-completion/completions/sillet
	printf '%s\n' 'prefix=$(PREFIX)' 'libdir=$(LIBDIR)' \
	    'profilesdir=$${prefix}/share/sillet/profiles' 'Name: sillet' \
	    'Description: what to cut at nut and saddle, in which order and how much' \
	    'Version: $(VERSION)' 'Cflags: -I$${prefix}/include' \
	    'Libs: -L$${libdir} -lsillet $(DRAW_LIBRARIES)' \
	    > $(DESTDIR)$(LIBDIR)/pkgconfig/sillet.pc

VERSION = $(shell sed -n 's/.*SILLET_VERSION "\(.*\)"/\1/p' include/sillet/version.h)

# --- Debian packages: .debian/ beside a copy of the tree ------------------------------------------

PACKAGED = build/package/sillet-$(VERSION)

package: tools-package
	rm -rf build/package
	mkdir -p $(PACKAGED)
	cp -r Makefile README.md DEVELOPERS.md src include tests profiles examples docs $(PACKAGED)
	cp -r .debian $(PACKAGED)/debian
	test "$$(dpkg-parsechangelog -l .debian/changelog -S Version)" = $(VERSION)
	cd $(PACKAGED) && env -u MAKEFLAGS -u MAKELEVEL dpkg-buildpackage -b -uc -us > ../build.log 2>&1 || \
	    { tail -n 30 ../build.log; exit 1; }
	lintian --allow-root --display-info --fail-on warning build/package/*.changes
	@ls build/package/*.deb

clean:
	rm -rf build

# Which headers each object was made from, so that a changed one makes it again.
BUILT = $(OBJECTS) $(CLI_OBJECTS) $(DRAW_OBJECTS) $(PAGE_OBJECTS) $(SERVE_OBJECTS) \
        $(CHECKED) $(CHECKED_CLI) $(CHECKED_DRAW) $(CHECKED_PAGE) $(CHECKED_SERVE) $(RACED) $(RACED_PAGE)
-include $(BUILT:.o=.d) $(CHECKED_TESTS:=.d)
