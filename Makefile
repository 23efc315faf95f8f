# sillet. Read from top to bottom: what is built, from what, and how it is tried.
#
#   make            the program build/sillet and the library build/libsillet.a
#   make anywhere   build/sillet.html: the bench page with the program in it, one file for any browser
#   make demo       installs what is missing, builds, and runs the main job on a sheet of examples/
#   make check      installs what tests need, builds with sanitizers, runs every test
#   make unit       the tests of tests/test_*.c alone: half a minute on two processors, once built
#   make mutants    changes the sources token by token and tells which change no test notices
#   make bench      speed and memory as ratios to yardsticks measured in the same run; a simulated shop
#   make thorough   every allocation failed in turn, every sheet under valgrind, hundreds of packs made
#                   by their figures: longer than a check
#   make elsewhere  the arithmetic, sheets and plans on other processors, by musl, by gcc and clang from
#                   -O0 to -O3 and linked as one; every figure as here
#   make coverage   how much of src/ the tests go through, room by room
#   make fuzz       feeds the readers, the page and the drawings with SECONDS of nonsense each (clang)
#   make lint       format, clang's warnings, clang-tidy, cppcheck, gcc's analyzer
#   make install    into PREFIX (DESTDIR before it), the library into LIBDIR
#   make package    Debian packages in build/package, looked over by lintian
#
# A new room is a folder under src/, a new command a file in src/cli, a new test a file
# tests/test_NAME.c or an executable tests/ROOM/check_NAME: each is found.

CC ?= cc
CFLAGS ?= -O2 -g
PREFIX ?= /usr/local
LIBDIR ?= $(PREFIX)/lib
SECONDS ?= 1800
CORES := $(shell nproc)

# --- Debian packages that each command needs, and installs ------------------------------------------

PACKAGES_build = gcc libc6-dev pkg-config libyaml-dev libcjson-dev libhpdf-dev \
                 libfreetype-dev fonts-osifont fonts-dejavu-core libmicrohttpd-dev
PACKAGES_unit = $(PACKAGES_build) libcmocka-dev python3
PACKAGES_check = $(PACKAGES_unit) g++ binutils valgrind python3-yaml python3-numpy python3-scipy \
                 python3-ezdxf admesh poppler-utils qpdf librsvg2-bin locales groff-base chromium firefox-esr \
                 $(NODE)
# Where there is an npm already, however it came, it is taken as it is.
NODE := $(if $(shell command -v npm),,nodejs npm)
PACKAGES_anywhere = $(PACKAGES_build) clang lld wasi-libc libclang-rt-14-dev-wasm32 zlib1g dpkg-dev \
                    python3
PACKAGES_bench = $(PACKAGES_build) valgrind python3 python3-yaml python3-numpy qpdf time
PACKAGES_lint = $(PACKAGES_build) clang clang-tidy clang-format cppcheck
PACKAGES_elsewhere = $(PACKAGES_build) clang lld llvm qemu-user gcc-aarch64-linux-gnu libc6-dev-arm64-cross \
                     gcc-s390x-linux-gnu libc6-dev-s390x-cross musl-tools dpkg-dev python3
PACKAGES_package = $(PACKAGES_build) build-essential debhelper dpkg-dev fakeroot lintian
TOOLS = $(addprefix tools-,build unit check anywhere bench elsewhere lint package)

# --- what is made of which sources ------------------------------------------------------------------

SOURCES := $(sort $(shell find src -name '*.c'))
HEADERS := $(sort $(shell find include -name '*.h'))
# The library is every room but the command line and the page.
LIBRARY := $(filter-out src/cli/% src/page/%,$(SOURCES))
SILLET := $(filter-out src/cli/draw/%,$(filter src/cli/%,$(SOURCES)))
COMMON := $(addprefix src/cli/,cli.c commands.c arguments.c help.c)
DRAW := $(COMMON) $(filter src/cli/draw/%,$(SOURCES))
SERVE := $(COMMON) $(filter src/page/serve/%,$(SOURCES))
PAGE := $(filter-out src/page/serve/% src/page/anywhere/%,$(filter src/page/%,$(SOURCES)))
# Within a page there is no folder to read or to write, and no program beside it.
MODULE := $(filter-out src/drawing/write/file.c src/sheet/program.c,$(LIBRARY)) \
          $(addprefix src/page/,bench.c compute.c draw.c fields.c profiles.c reply.c sheet.c) \
          $(filter src/page/anywhere/%,$(SOURCES))
UNIT := $(patsubst tests/%.c,build/check/%,$(wildcard tests/test_*.c))
SCRIPTS := $(wildcard tests/*/check_*)
EXAMPLE = examples/low-first-slot.yaml

WARNINGS = -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wdouble-promotion \
           -Wstrict-prototypes -Wmissing-prototypes -Wformat=2
# Asked of the system once; nothing where it is not there yet, before `demo` has installed it.
FREETYPE := $(shell pkg-config --cflags freetype2 2>/dev/null)
STANDARD = -std=c17 -D_XOPEN_SOURCE=700 -Iinclude $(FREETYPE)
LIBRARIES = -lyaml -lcjson -lm
DRAW_LIBRARIES = -lhpdf -lfreetype $(LIBRARIES)
SERVE_LIBRARIES = -lmicrohttpd -pthread $(DRAW_LIBRARIES)

.PHONY: all anywhere demo pictures check unit mutants thorough elsewhere coverage bench fuzz lint install package \
        clean FORCE $(TOOLS)
.DELETE_ON_ERROR:
.SECONDARY:

all: build/sillet build/sillet-draw build/sillet-serve build/libsillet.a

$(TOOLS): tools-%:
	@.ci/install $(PACKAGES_$*)

# --- the kinds of build -----------------------------------------------------------------------------

# plain is what is installed; check has the sanitizers and is what the tests run; race has the
# sanitizer of threads; fuzz is clang's, for the fuzzer.
HARDENING = -fstack-protector-strong -fstack-clash-protection -D_FORTIFY_SOURCE=2 -fPIE
SANITIZED = -O1 -g -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer
RACING = -O1 -g -fsanitize=thread -pthread
FUZZED = -O1 -g -fsanitize=address,undefined -fno-sanitize-recover=all

CC_plain = $(CC)
CC_check = $(CC)
CC_race = $(CC)
CC_fuzz = clang

FLAGS_plain = $(STANDARD) $(WARNINGS) $(HARDENING) $(CFLAGS)
FLAGS_check = $(STANDARD) $(WARNINGS) -Werror $(SANITIZED)
FLAGS_race = $(STANDARD) $(WARNINGS) -Werror $(RACING)
FLAGS_fuzz = $(STANDARD) $(FUZZED) -fsanitize=fuzzer-no-link

LINK_plain = -pie -Wl,-z,relro,-z,now -Wl,--as-needed $(LDFLAGS)
LINK_check = $(SANITIZED)
LINK_race = $(RACING)
LINK_fuzz = $(FUZZED) -fsanitize=fuzzer

# The library for others, from the objects $(1): one object, from which nothing is seen but what a
# header declares.
define one_object
$(LD) -r -o $(@:.a=.o) $(1)
objcopy --keep-global-symbols=build/public-names $(@:.a=.o)
rm -f $@ && ar rcs $@ $(@:.a=.o)
endef

# The rules of one kind: $(1) is its name, $(2) the folder it is built in.
define kind
$(2)/flags: TEXT = $$(CC_$(1)) $$(FLAGS_$(1)) $$(LINK_$(1))

$(2)/objects/%.o: src/%.c $(2)/flags
	@mkdir -p $$(@D)
	$$(CC_$(1)) $$(FLAGS_$(1)) -MMD -MP -c -o $$@ $$<

# The page's files stand within the program.
$(2)/objects/page/assets.o: $(wildcard src/page/assets/*)

# The rooms as they are, for our own programs and tests.
$(2)/rooms.a: $(LIBRARY:src/%.c=$(2)/objects/%.o) build/sources
$(2)/page.a: $(PAGE:src/%.c=$(2)/objects/%.o) build/sources
$(2)/rooms.a $(2)/page.a:
	rm -f $$@ && ar rcs $$@ $$(filter %.o,$$^)

$(2)/libsillet.a: $(LIBRARY:src/%.c=$(2)/objects/%.o) build/sources build/public-names
	$$(call one_object,$$(filter %.o,$$^))

$(2)/sillet: $(SILLET:src/%.c=$(2)/objects/%.o) $(2)/rooms.a
	$$(CC_$(1)) $$(LINK_$(1)) -o $$@ $$^ $$(LIBRARIES)

# The program that draws stands alone: its libraries cost more to load than a plan costs to make.
$(2)/sillet-draw: $(DRAW:src/%.c=$(2)/objects/%.o) $(2)/rooms.a
	$$(CC_$(1)) $$(LINK_$(1)) -o $$@ $$^ $$(DRAW_LIBRARIES)

$(2)/sillet-serve: $(SERVE:src/%.c=$(2)/objects/%.o) $(2)/page.a $(2)/rooms.a
	$$(CC_$(1)) $$(LINK_$(1)) -o $$@ $$^ $$(SERVE_LIBRARIES)

# Which headers each object was made from, so that a changed one makes it again.
-include $(SOURCES:src/%.c=$(2)/objects/%.d)
endef

$(eval $(call kind,plain,build))
$(eval $(call kind,check,build/check))
$(eval $(call kind,race,build/race))
$(eval $(call kind,fuzz,build/fuzz))

# What is made anew when a text changes depends on a file of that text, which is written when it does.
build/sources: TEXT = $(SOURCES)
build/flags build/check/flags build/race/flags build/fuzz/flags build/installed/flags \
build/anywhere/flags build/sources: FORCE
	@mkdir -p $(@D)
	@printf '%s\n' '$(subst ','\'',$(TEXT))' >$@.now
	@if cmp -s $@.now $@; then rm $@.now; else mv $@.now $@; fi

# The names that headers declare: read through the compiler, which takes the comments out, then
# without what stands in braces; a declaration goes up to its semicolon, and the name is what stands
# before the first bracket.
build/public-names: $(HEADERS)
	@mkdir -p $(@D)
	printf '#include "%s"\n' $(HEADERS) | $(CC) $(STANDARD) -E -P -x c - | tr '\n' ' ' | \
	    sed -E ':again; s/\{[^{}]*\}/;/g; t again; s/;/;\n/g' | \
	    sed -nE -e '/typedef|static/d' -e 's/^[^(]*[ *](sil_[a-z0-9_]+) *\(.*/\1/p' \
	        -e 's/^ *extern [^(]*[ *](sil_[a-z0-9_]+)[^(]*;/\1/p' | sort -u >$@

# --- the page as one file: the program as WebAssembly ------------------------------------------------

FETCHED = build/anywhere/sources
NAMES_libyaml = src/api src/reader src/scanner src/parser
NAMES_cjson = cJSON
NAMES_zlib = adler32 crc32 deflate trees zutil compress
NAMES_freetype = $(addprefix src/,base/ftbase base/ftinit base/ftsystem base/ftdebug sfnt/sfnt \
                 truetype/truetype psnames/psnames)
# Known once it is fetched.
NAMES_libharu = $(patsubst $(FETCHED)/libharu/%.c,%,$(wildcard $(FETCHED)/libharu/src/*.c))
CARRIED = libyaml cjson libharu freetype zlib

# A stack as deep as the program was tried with (64 KB unless told), and an end to its memory. All is
# compiled small, because it travels.
PORTED = --target=wasm32-wasi -Os -Isrc/page/anywhere/port
SEEN = $(addprefix -I$(FETCHED)/,libyaml/include libharu/include zlib freetype/include include)
OWN_libyaml = -DYAML_VERSION_MAJOR=0 -DYAML_VERSION_MINOR=2 -DYAML_VERSION_PATCH=5 \
              '-DYAML_VERSION_STRING="0.2.5"'
OWN_freetype = -DFT2_BUILD_LIBRARY '-DFT_CONFIG_MODULES_H=<freetype_modules.h>' \
               '-DFT_CONFIG_OPTIONS_H=<freetype_options.h>'
LINK_module = --target=wasm32-wasi -mexec-model=reactor -Wl,-z,stack-size=1048576 -Wl,--stack-first \
              -Wl,--max-memory=134217728 -Wl,--gc-sections -Wl,--strip-all \
              $(addprefix -Wl$(comma)--export=module_,room ask type bytes size)
comma := ,

build/anywhere/flags: TEXT = $(PORTED) $(SEEN) $(WARNINGS) $(LINK_module)

anywhere: tools-anywhere
	@$(MAKE) --no-print-directory --silent $(FETCHED)/fetched
	@$(MAKE) --no-print-directory --silent -j$(CORES) build/sillet.html
	@echo $(CURDIR)/build/sillet.html

$(FETCHED)/fetched: src/page/anywhere/fetch
	$< $(FETCHED)
	mkdir -p $(FETCHED)/include/cjson && cp $(FETCHED)/cjson/cJSON.h $(FETCHED)/include/cjson
	touch $@

# The objects of one library.
define carried
build/anywhere/$(1)/%.o: $(FETCHED)/fetched build/anywhere/flags $(wildcard src/page/anywhere/port/*)
	@mkdir -p $$(@D)
	clang $(PORTED) $(SEEN) $$(OWN_$(1)) -w -c -o $$@ $(FETCHED)/$(1)/$$*.c
endef

$(foreach library,$(CARRIED),$(eval $(call carried,$(library))))

build/anywhere/objects/%.o: src/%.c $(FETCHED)/fetched build/anywhere/flags
	@mkdir -p $(@D)
	clang $(PORTED) $(SEEN) -std=c17 -D_XOPEN_SOURCE=700 -Iinclude $(WARNINGS) -Werror -MMD -MP -c -o $@ $<

build/anywhere/sillet.wasm: $(MODULE:src/%.c=build/anywhere/objects/%.o) build/sources \
    $(foreach library,$(CARRIED),$(patsubst %,build/anywhere/$(library)/%.o,$(NAMES_$(library))))
	clang $(LINK_module) -o $@ $(filter %.o,$^)

build/sillet.html: src/page/anywhere/join build/anywhere/sillet.wasm include/sillet/version.h \
                   docs/licence.txt $(wildcard src/page/anywhere/*.js src/page/assets/* profiles/*.yaml)
	$< build/anywhere/sillet.wasm $(FETCHED) $(VERSION) $@

-include $(MODULE:src/%.c=build/anywhere/objects/%.d)

# --- the demo ---------------------------------------------------------------------------------------

demo: tools-build
	@$(MAKE) --no-print-directory --silent -j$(CORES) all
	build/sillet plan $(EXAMPLE)
	@build/sillet draw $(EXAMPLE) -o build/demo.pdf
	@echo $(CURDIR)/build/demo.pdf

# --- tests: the same sources, sanitized, warnings as errors -----------------------------------------

PROGRAMS = all $(addprefix build/check/,sillet sillet-draw sillet-serve libsillet.a)
REPLAYED = $(addprefix build/check/,replay replay_length replay_page read_lines under)

# The one file is tried wherever what it is made of can be had.
check: tools-check build/page/node_modules/.package-lock.json
	@echo building everything that is tried
	@$(MAKE) --no-print-directory --silent -j$(CORES) $(PROGRAMS) $(UNIT) $(REPLAYED) \
	    build/check/faults build/race/race
	@echo building the page as one file
	@if $(MAKE) --no-print-directory --silent tools-anywhere $(FETCHED)/fetched; then \
	    $(MAKE) --no-print-directory --silent -j$(CORES) build/sillet.html; \
	else echo "what makes the page one file cannot be had: it is not tried"; fi
	@tests/run $(UNIT) $(SCRIPTS)

unit: tools-unit
	@$(MAKE) --no-print-directory --silent -j$(CORES) $(UNIT)
	@tests/run $(UNIT)

mutants: tools-check
	@$(MAKE) --no-print-directory --silent -j$(CORES) $(PROGRAMS) $(UNIT) $(REPLAYED)
	tests/mutants/mutants.py

# What drives the browser, as locked; with it there already, no network is needed.
build/page/node_modules/.package-lock.json: tests/page/package.json tests/page/package-lock.json | tools-check
	@mkdir -p build/page
	@if ! cmp -s tests/page/package-lock.json build/page/package-lock.json || [ ! -f $@ ]; then \
	    cp tests/page/package.json tests/page/package-lock.json build/page && \
	    npm ci --prefix build/page --prefer-offline --silent --no-audit --no-fund; \
	fi && touch $@ || echo "npm fetched nothing: the page is not tried in a browser"

$(UNIT): build/check/%: tests/%.c
build/check/replay: tests/fuzz/fuzz_sheet.c tests/fuzz/replay_main.c
build/check/replay_length: tests/fuzz/fuzz_length.c tests/fuzz/replay_main.c
build/check/replay_page: tests/fuzz/fuzz_page.c tests/fuzz/replay_main.c
build/check/read_lines: tests/lengths/read_lines.c
build/check/under: tests/under/under.c tests/under/mutate.c
$(UNIT) $(REPLAYED): build/check/page.a build/check/rooms.a
	$(CC) $(FLAGS_check) -MMD -MP -o $@ $(filter %.c,$^) $(filter %.a,$^) $(DRAW_LIBRARIES) -lcmocka

# The programs in one that fails their allocations and system calls in turn. The heap stands
# before the sanitizer's; our own system calls are wrapped.
WRAPPED = read write open close fsync fchmod fchown stat access linkat rename readlink
FAULTS = $(addprefix tests/fault/,faults.c programs.c page.c calls.c)

build/check/faults: $(FAULTS) $(addprefix build/check/fault/,heap.o sillet.o draw.o) \
                    $(filter-out %/main.o,$(SILLET:src/%.c=build/check/objects/%.o)) \
                    build/check/page.a build/check/rooms.a $(wildcard tests/fault/*.h)
	$(CC) $(FLAGS_check) $(WRAPPED:%=-Wl,--wrap=%) -o $@ $(filter-out %.h,$^) $(DRAW_LIBRARIES)

# Not sanitized: it is at work before the sanitizer is.
build/check/fault/heap.o: tests/fault/heap.c tests/fault/heap.h build/check/flags
	@mkdir -p $(@D)
	$(CC) $(STANDARD) $(WARNINGS) -Werror -O1 -g -fno-builtin -fno-omit-frame-pointer -c -o $@ $<

build/check/fault/sillet.o: build/check/objects/cli/main.o
	@mkdir -p $(@D)
	objcopy --redefine-sym main=sillet_main $< $@

build/check/fault/draw.o: build/check/objects/cli/draw/main.o
	@mkdir -p $(@D)
	objcopy --redefine-sym main=sillet_draw_main $< $@

# Several threads at once, under the thread sanitizer.
build/race/race: tests/race/race.c build/race/page.a build/race/rooms.a
	$(CC) $(FLAGS_race) -MMD -MP -o $@ $(filter %.c %.a,$^) $(DRAW_LIBRARIES)

thorough: tools-check
	@$(MAKE) --no-print-directory --silent -j$(CORES) all build/check/faults build/check/under build/check/sillet
	SENSE_EVERY=1 tests/sense/check_sense
	UNDER_TIMES=1000 UNDER_SEED=2 tests/under/check_under
	build/check/faults all
	tests/valgrind/check_valgrind all
	@$(MAKE) --no-print-directory --silent -j$(CORES) build/check/sillet build/check/sillet-draw
	tests/drawing/check_maker 1000 160 1
	tests/drawing/check_figures 200
	tests/drawing/check_rounding 400
	@$(MAKE) --no-print-directory --silent elsewhere

# Debian has no library for another processor beside its own: those that sheets need are built along,
# from the sources, and so is what the tests are written with.
ELSEWHERE = build/elsewhere/sources

elsewhere: tools-elsewhere $(ELSEWHERE)/fetched
	tests/elsewhere/elsewhere.py $(ELSEWHERE)

$(ELSEWHERE)/fetched: src/page/anywhere/fetch
	$< $(ELSEWHERE) libyaml=0.2.5 cjson=1.7.15 cmocka=1.1.5
	mkdir -p $(ELSEWHERE)/include/cjson && cp $(ELSEWHERE)/cjson/cJSON.h $(ELSEWHERE)/include/cjson
	touch $@

# A tree of its own, whose programs count what they run, through all tests that do not sanitize.
coverage: tools-check
	@rm -rf build/coverage && mkdir -p build/coverage
	@cp -r .ci .debian Makefile README.md DEVELOPERS.md docs examples include profiles src tests build/coverage
	@$(MAKE) -C build/coverage --no-print-directory --silent -j$(CORES) SANITIZED='-O0 --coverage' \
	    $(PROGRAMS) $(UNIT) $(REPLAYED)
	-@cd build/coverage && MORE_LIBRARIES=-lgcov tests/run $(UNIT) \
	    $(filter-out tests/fault/% tests/race/% tests/valgrind/%,$(SCRIPTS))
	@/usr/bin/python3 tests/coverage/told.py build/coverage

# --- benchmark, fuzzer, lint ------------------------------------------------------------------------

BENCHES = $(addprefix build/bench/,bare_yaml bare_pdf bare_http load arithmetic)

bench: tools-bench
	@$(MAKE) --no-print-directory --silent -j$(CORES) all $(BENCHES)
	@SILLET_PROFILES=profiles tests/bench/bench.py
	@echo
	@SILLET_PROFILES=profiles tests/shop/shop.py --count 1000

# Each loads only the libraries it uses (--as-needed).
$(BENCHES): build/bench/%: tests/bench/%.c build/rooms.a
	@mkdir -p $(@D)
	$(CC) $(FLAGS_plain) $(LINK_plain) -o $@ $^ $(SERVE_LIBRARIES)

FUZZERS = $(addprefix build/fuzz/fuzz_,length sheet page draw)
FUZZING = -max_total_time=$(SECONDS) -print_final_stats=1 -artifact_prefix=build/fuzz/
CORPUS = build/fuzz/corpus

fuzz: tools-lint
	@$(MAKE) --no-print-directory --silent -j$(CORES) $(FUZZERS)
	@mkdir -p $(CORPUS)/length $(CORPUS)/sheet $(CORPUS)/page $(CORPUS)/draw
	build/fuzz/fuzz_length $(FUZZING) -max_len=64 -timeout=5 $(CORPUS)/length tests/fuzz/corpus/length
	build/fuzz/fuzz_sheet $(FUZZING) -max_len=8192 -timeout=5 -close_fd_mask=1 \
	    $(CORPUS)/sheet tests/fuzz/corpus/sheet
	build/fuzz/fuzz_page $(FUZZING) -max_len=8192 -timeout=5 -close_fd_mask=1 \
	    $(CORPUS)/page tests/fuzz/corpus/page
	build/fuzz/fuzz_draw $(FUZZING) -max_len=8192 -timeout=20 -close_fd_mask=1 \
	    $(CORPUS)/draw tests/fuzz/corpus/sheet examples

$(FUZZERS): build/fuzz/%: tests/fuzz/%.c build/fuzz/page.a build/fuzz/rooms.a
	clang $(FLAGS_fuzz) $(LINK_fuzz) -o $@ $^ $(DRAW_LIBRARIES)

# cppcheck does not see that snprintf fills a text, which valgrind and -fanalyzer do; and where a
# variable stands is the reader's affair.
UNSAID = uninitvar variableScope

lint: tools-lint
	clang-format --dry-run -Werror $(HEADERS) $(shell find src tests -name '*.[ch]')
	for source in $(SOURCES); do \
	    clang $(STANDARD) $(WARNINGS) -Werror -fsyntax-only $$source || exit 1; done
	clang-tidy --quiet $(SOURCES) -- $(STANDARD)
	cppcheck --quiet --error-exitcode=1 --std=c11 --enable=warning,style,performance,portability \
	    $(UNSAID:%=--suppress=%) -D_XOPEN_SOURCE=700 -Iinclude src
	for source in $(SOURCES); do \
	    gcc $(STANDARD) -O2 -fanalyzer -Werror -c -o /dev/null $$source || exit 1; done

# --- the pictures of the README and the documents ---------------------------------------------------

pictures: tools-check all build/page/node_modules/.package-lock.json
	@mkdir -p docs/pictures
	@for picture in card:high-saddle nut:bass-nut saddle:high-saddle templates:high-saddle clearance:low-first-slot; do \
	    sheet=$${picture%:*}; \
	    build/sillet draw examples/$${picture#*:}.yaml --sheet $$sheet -o build/$$sheet.svg && \
	    rsvg-convert -b white -d 75 -p 75 build/$$sheet.svg -o docs/pictures/$$sheet.png || exit 1; \
	done
	@for picture in card:2-rod-turned saddle:2-rod-turned owner:4-done; do \
	    sheet=$${picture%:*}; \
	    build/sillet draw examples/first-job/$${picture#*:}.yaml --sheet $$sheet -o build/first-job.svg && \
	    rsvg-convert -b white -d 60 -p 60 build/first-job.svg -o docs/pictures/first-job-$$sheet.png || exit 1; \
	done
	build/sillet sheet steel-string-acoustic -o build/blank.pdf
	pdftoppm -r 60 -png -singlefile build/blank.pdf docs/pictures/first-job-blank
	node tests/page/glossary.mjs docs/pictures/readings
	node tests/page/picture.mjs docs/pictures/page.png

# --- into the system --------------------------------------------------------------------------------

VERSION = $(shell sed -n 's/.*SILLET_VERSION "\(.*\)"/\1/p' include/sillet/version.h)

# The page as one file goes along where it has been built; in a copy to be packaged it lies on top.
PAGE_BUILT = $(firstword $(wildcard build/sillet.html sillet.html))

# The installed library knows where its profiles are.
build/installed/flags: TEXT = $(abspath $(PREFIX))
build/installed/installed.o: src/sheet/installed.c build/installed/flags build/flags
	$(CC) $(FLAGS_plain) -c -o $@ -DINSTALLED_PROFILES='"$(abspath $(PREFIX))/share/sillet/profiles"' $<
build/installed/libsillet.a: $(filter-out %/sheet/installed.o,$(LIBRARY:src/%.c=build/objects/%.o)) \
                             build/installed/installed.o build/public-names
	$(call one_object,$(filter %.o,$^))

install: all build/installed/libsillet.a
	install -d $(DESTDIR)$(PREFIX)/bin $(DESTDIR)$(PREFIX)/libexec/sillet $(DESTDIR)$(LIBDIR)/pkgconfig \
	    $(DESTDIR)$(PREFIX)/share/sillet/profiles \
	    $(DESTDIR)$(PREFIX)/share/man/man1 $(DESTDIR)$(PREFIX)/share/bash-completion/completions
	install -m 755 build/sillet $(DESTDIR)$(PREFIX)/bin
	install -m 755 build/sillet-draw build/sillet-serve $(DESTDIR)$(PREFIX)/libexec/sillet
	install -m 644 build/installed/libsillet.a $(DESTDIR)$(LIBDIR)
	for header in $(HEADERS); do \
	    install -D -m 644 $$header $(DESTDIR)$(PREFIX)/$$header || exit 1; done
	install -m 644 profiles/*.yaml $(DESTDIR)$(PREFIX)/share/sillet/profiles
	for page in $(PAGE_BUILT); do \
	    if [ -n "$$(find src include profiles -type f -newer $$page | head -n 1)" ]; then \
	        echo "$$page is older than the sources and stays behind; make anywhere makes it again" >&2; \
	    else install -m 644 $$page $(DESTDIR)$(PREFIX)/share/sillet || exit 1; fi; done
	install -m 644 docs/sillet.1 $(DESTDIR)$(PREFIX)/share/man/man1
	install -m 644 src/cli/completion.bash $(DESTDIR)$(PREFIX)/share/bash-completion/completions/sillet
	printf '%s\n' 'prefix=$(PREFIX)' 'libdir=$(LIBDIR)' \
	    'profilesdir=$${prefix}/share/sillet/profiles' 'Name: sillet' \
	    'Description: what to cut at nut and saddle, in which order and how much' \
	    'Version: $(VERSION)' 'Cflags: -I$${prefix}/include' \
	    'Libs: -L$${libdir} -lsillet $(DRAW_LIBRARIES)' \
	    > $(DESTDIR)$(LIBDIR)/pkgconfig/sillet.pc

# --- Debian packages: .debian/ beside a copy of the tree --------------------------------------------

PACKAGED = build/package/sillet-$(VERSION)

package: tools-package
	rm -rf build/package
	mkdir -p $(PACKAGED)
	cp -r Makefile README.md DEVELOPERS.md src include tests profiles examples docs $(PACKAGED)
	cp -r .debian $(PACKAGED)/debian
	for page in $(PAGE_BUILT); do cp $$page $(PACKAGED) || exit 1; done
	test "$$(dpkg-parsechangelog -l .debian/changelog -S Version)" = $(VERSION)
	cd $(PACKAGED) && env -u MAKEFLAGS -u MAKELEVEL dpkg-buildpackage -b -uc -us > ../build.log 2>&1 || \
	    { tail -n 30 ../build.log; exit 1; }
	lintian --allow-root --display-info --fail-on warning build/package/*.changes
	@ls build/package/*.deb

clean:
	rm -rf build

-include $(UNIT:=.d)
